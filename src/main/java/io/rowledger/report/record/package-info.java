/**
 * The nitrogen record, for the landlord or farm manager: what was applied where, and what is not known.
 *
 * <p>Nitrogen of a product: volume × density × N fraction ({@link io.rowledger.rate.Nutrients}); the products add up. Per area
 * means per covered area, each place counted once. Shares of the ground are shares of the covered ground, on every line of
 * the page.
 *
 * <p>By hand: 764.8 L × 1.325 kg/L × 32 % = 324.3 kg N; in US units 202.0 gal × 11.06 lb/gal × 32 % = 715 lb N, over 4.70 ac
 * 152 lb N/ac. {@code NitrogenRecordPdfTest} asserts it.
 *
 * <p>For other packages: {@link NitrogenRecordReport}, {@link NitrogenRecord}, {@link NitrogenFigures},
 * {@link RecordField}, {@link RecordFieldList}, {@link RecordFields}, {@link RecordRule}.
 */
@NullMarked
package io.rowledger.report.record;

import org.jspecify.annotations.NullMarked;
