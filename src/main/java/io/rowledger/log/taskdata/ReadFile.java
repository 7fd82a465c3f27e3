package io.rowledger.log.taskdata;

/**
 * A file as it was read.
 *
 * @param name as a message calls it
 * @param sha256 digest of its bytes, lower-case hex
 */
public record ReadFile(String name, String sha256) {}
