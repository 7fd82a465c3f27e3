/** The prescription held against what was done, zone by zone. */
@NullMarked
package io.rowledger.zones;

import org.jspecify.annotations.NullMarked;
