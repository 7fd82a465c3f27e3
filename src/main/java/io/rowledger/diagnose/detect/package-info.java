/** The detectors: one class, one kind of finding, one test. */
@NullMarked
package io.rowledger.diagnose.detect;

import org.jspecify.annotations.NullMarked;
