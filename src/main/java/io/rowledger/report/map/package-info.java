/**
 * Maps and pictures of ground, rows and time that several documents print.
 *
 * <p>Classes of deviation have their bounds at {@link io.rowledger.rate.DeviationLimits}. By hand: 38 gal/ac of 42 gal/ac is
 * −9.5 %, class 2 of 0 to 6, "5 to 10% under". {@code DeviationClassesTest} asserts such classes.
 *
 * <p>For other packages: {@link ClassRaster}, {@link DayMap}, {@link DeviationClasses}, {@link DeviationPicture},
 * {@link GroundView}, {@link KeepOutMarks}, {@link MapColors}, {@link MapFrame}, {@link PlaceMap},
 * {@link RateClasses}, {@link RateMap}, {@link SkipMarks}, {@link WorkView},
 * {@link ZoomMap}.
 */
@NullMarked
package io.rowledger.report.map;

import org.jspecify.annotations.NullMarked;
