/**
 * XHTML templates to tagged PDF/A, the same bytes for the same input on every machine; files attached inside, signatures.
 *
 * <p>A template holds tags for values and words (see {@link io.rowledger.document.text}) and names charts in
 * {@code data-chart} attributes. {@link io.rowledger.document.pdf.PdfReport} fills and lays out the template; the user's own
 * templates replace those of the jar file by file.
 *
 * <p>For other packages: {@link Attachment}, {@link Paper}, {@link PdfReport}, {@link PdfSigner},
 * {@link SigningKey}.
 */
@NullMarked
package io.rowledger.document.pdf;

import org.jspecify.annotations.NullMarked;
