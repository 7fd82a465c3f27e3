/**
 * Reports as PDF: an XHTML and CSS template filled by mustache tags, laid out on paper, with charts painted as vectors
 * and the two weights of one embedded font. Nothing is asked of the machine: no fonts, no clock, no network.
 */
@NullMarked
package io.rowledger.document.pdf;

import org.jspecify.annotations.NullMarked;
