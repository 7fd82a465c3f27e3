package io.rowledger.log.source;

import java.util.regex.Pattern;

/** Numbers with their thousands set apart: {@code 1,234.5}, {@code 1.234,5}, {@code 1 234,5}, {@code 1'234.5}. */
public final class GroupedNumbers {
    /** Spaces (no-break and narrow ones too) and apostrophes divide nothing but thousands. */
    private static final String SPACES = "[ \u00a0\u202f'\u2019]";

    private static final Pattern SPACED = Pattern.compile("[-+]?\\d{1,3}(?:" + SPACES + "\\d{3})+(?:[.,]\\d*)?");

    /** Thousands set apart by commas, decimals behind a point. */
    private static final Pattern BY_COMMAS = Pattern.compile("[-+]?\\d{1,3}(?:,\\d{3})+(?:\\.\\d*)?");

    /** Thousands set apart by points, decimals behind a comma. */
    private static final Pattern BY_POINTS = Pattern.compile("[-+]?\\d{1,3}(?:\\.\\d{3})+(?:,\\d*)?");

    /** One comma or point before three digits: a thousand, or a number with three decimals. */
    private static final Pattern EITHER = Pattern.compile("[-+]?\\d{1,3}[.,]\\d{3}");

    private GroupedNumbers() {}

    /**
     * Returns the number; NaN if the text is none, or if its only mark may be that of decimals as well.
     *
     * @param mark decimal mark of the file, point or comma
     */
    public static double parse(String text, char mark) {
        String stripped = text.strip();
        char other = mark == '.' ? ',' : '.';
        if (SPACED.matcher(stripped).matches() && stripped.indexOf(other) < 0) {
            return NumberParser.parse(stripped.replaceAll(SPACES, ""), mark);
        }
        boolean grouped =
                (mark == '.' ? BY_COMMAS : BY_POINTS).matcher(stripped).matches();
        return grouped && !isAmbiguous(stripped)
                ? NumberParser.parse(stripped.replace(String.valueOf(other), ""), mark)
                : Double.NaN;
    }

    /** Returns true for a text such as 4,395: 4395, or 4.395 with a decimal comma. */
    public static boolean isAmbiguous(String text) {
        return EITHER.matcher(text.strip()).matches();
    }
}
