/**
 * Sections that several reports have: skips and overlaps, rows shut off alone, zones of a prescription, setbacks, the log's quality
 * and the sums that must agree; the words for places and causes.
 *
 * <p>For other packages: {@link CoveragePhrases}, {@link CoverageSection}, {@link CoverageSectionBuilder},
 * {@link DefectLine}, {@link DefectPhrases}, {@link PlaceEnds}, {@link QualitySection}, {@link QualitySectionBuilder},
 * {@link SetbackSection}, {@link ZoneSection}, {@link ZoneSectionBuilder}.
 */
@NullMarked
package io.rowledger.report.sections;

import org.jspecify.annotations.NullMarked;
