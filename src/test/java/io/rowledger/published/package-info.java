/**
 * The program held against the world outside: figures that others have published or that follow from published
 * definitions, a class per subject.
 *
 * <p>Every figure carries its source and how far it was checked. <em>Seen</em>: read in the source. <em>Inputs seen</em>:
 * the source's inputs and formula were read, its printed answer was not; the answer is worked out from them.
 * <em>Derived</em>: worked out from exact definitions or from a formula that was read. <em>From memory</em>: not read
 * again, so nothing else may rest on it. Where sources contradict each other, or one is misprinted, the check says so.
 */
package io.rowledger.published;
