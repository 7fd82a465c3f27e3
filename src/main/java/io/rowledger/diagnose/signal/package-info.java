/** What the detectors look at: working samples, flow ratios, level shifts, edges, turn shares. */
@NullMarked
package io.rowledger.diagnose.signal;

import org.jspecify.annotations.NullMarked;
