package io.rowledger.log.taskdata;

/**
 * A file as it was read.
 *
 * @param name as a message calls it
 * @param sha256 digest of its bytes, lower-case hex
 */
public record ReadFile(String name, String sha256) {
    /** The name of a file without its folders: how notes name it on a page. */
    static String shortName(String file) {
        return file.substring(Math.max(file.lastIndexOf('/'), file.lastIndexOf('\\')) + 1);
    }
}
