/** What the benchmarks share: the job they measure, the list of kernels, the stages of a whole run. */
package io.rowledger.bench;
