package io.rowledger.document.pdf;

/**
 * A file that travels inside a printed report: the figures of the page for a program to read.
 *
 * @param name file name a reader sees and saves it under
 * @param mediaType for instance {@code application/json} (RFC 6838)
 * @param description a few words on what it is
 * @param bytes its content; not copied
 */
public record Attachment(String name, String mediaType, String description, byte[] bytes) {}
