/**
 * The words of a document: message bundles, numbers put into words, text cut to its place. Knows nothing of farming.
 *
 * <h2>How text gets on a page</h2>
 *
 * <ol>
 *   <li>Write the words into {@code src/main/resources/io/rowledger/text/BUNDLE.properties} (UTF-8): one bundle per
 *       document ({@code review}, {@code rows}, {@code record}, {@code compare}, {@code season}) and {@code findings},
 *       {@code notes}, {@code cautions}, {@code words} (shared). Every key begins with the name of its bundle:
 *       {@code review.skips.more=And {0} {0,plural,skip|skips} more, {1} in all.}
 *   <li>In any package make {@code Message.of("review.skips.more", count, Message.area(restM2))}: a whole key as one
 *       string literal, so that a search finds it. A family of keys by an enum's constants is written
 *       {@code Message.of("findings.kind." + kind.key())} and its prefix listed in {@code MessageKeysTest.FAMILIES}.
 *   <li>A document prints it with {@code messages.text(message)}, or in one step with
 *       {@code messages.text("review.skips.more", count, Message.area(restM2))}, where {@code messages} is
 *       {@code Messages.english(unitFormat)}.
 *   <li>Words that always stand on a page go straight into the template: {@code {{t.review.rows.title}}}; with one value in
 *       the text {@code {{#t.review.rows.of}}{{name}}{{/t.review.rows.of}}}, which becomes {@code {0}}.
 * </ol>
 *
 * <h2>Patterns</h2>
 *
 * <p>{@code {0}} prints a value in its usual form. Other forms: of a physical value {@code {0,number}} and
 * {@code {0,unit}}, of one with bounds {@code {0,value}} and {@code {0,bounds}}, of a percentage {@code {0,signed}}, of a
 * time {@code {0,date}}, {@code {0,minute}} and {@code {0,clock}}, of a whole number {@code {0,plain}} (no thousands), of a
 * list {@code {0,and}}, {@code {0,or}}, {@code {0,sentences}} (spaces between) and {@code {0,ranges}} (3, 5–8), of
 * anything {@code {0,capital}} (first letter). {@code {0,plural,row|rows}} chooses by one or not,
 * {@code {0,choice,0#none|1#one row|1<{0} rows}} by limits as {@link java.text.ChoiceFormat} has them; a list counts its
 * values. Apostrophes need no care.
 *
 * <p>Worked example: {@code {0} {0,plural,place|places}, {1}} of 2 and 8093.7 m² prints "2 places, 2.00 ac", since
 * 8093.7 m² / 4046.8564 m²/ac = 2.00 ac.
 *
 * <p>For other packages: {@link Messages}, {@link TemplateText}, {@link TextTruncation}, {@link Wording}.
 */
@NullMarked
package io.rowledger.document.text;

import org.jspecify.annotations.NullMarked;
