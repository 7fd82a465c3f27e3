package io.rowledger.analysis;

/**
 * A file handed in beside the logs.
 *
 * @param option how the command line names it, such as {@code --rig}; without the strokes where a log brings it along
 * @param file its name as given
 * @param sha256 digest of its bytes, lower-case hex
 */
public record InputFile(String option, String file, String sha256) {
    /** What it is to a reader: {@code rig}, {@code boundary}, {@code keep out}. */
    public String role() {
        return option.replaceFirst("^-+", "").replace('-', ' ');
    }
}
