package io.rowledger.rig;

/**
 * A rig file as read.
 *
 * @param file the file as given
 * @param sha256 digest of its bytes, lower-case hex
 * @param rig what it says
 */
public record RigFile(String file, String sha256, Rig rig) {}
