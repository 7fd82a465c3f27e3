/**
 * Saved results in and out: the JSON files of a job, a season, a batch and a comparison, and the GeoJSON form of the layers.
 *
 * <p>Each file is a record ({@link io.rowledger.results.SummaryJson} and others) that Jackson writes and reads; keys, order and
 * decimals are those of its components, and {@link io.rowledger.results.ResultFile} names file, schema id and schema. SI, units
 * in the names, {@code null} where unknown; text in US English and US units.
 *
 * <p>For other packages: {@link BatchJson}, {@link BatchLedger}, {@link ComparisonJson}, {@link Decimals},
 * {@link DiagnosisJson}, {@link DiagnosisReader}, {@link GeoJson}, {@link JobKeys}, {@link JsonNumbers}, {@link NitrogenRecordJson},
 * {@link PrescriptionJson}, {@link ResultFile}, {@link SeasonJson}, {@link SetbackJson}, {@link SetupJson}, {@link SummaryJson},
 * {@link SummaryReader}.
 */
@NullMarked
package io.rowledger.results;

import org.jspecify.annotations.NullMarked;
