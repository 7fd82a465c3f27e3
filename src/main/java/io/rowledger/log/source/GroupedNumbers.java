package io.rowledger.log.source;

import java.util.regex.Pattern;

/** Numbers with their thousands set apart: {@code 1,234.5}, {@code 1.234,5}, {@code 1 234,5}, {@code 1'234.5}. */
public final class GroupedNumbers {
    /** Spaces (no-break and narrow ones too) and apostrophes divide nothing but thousands. */
    private static final String SPACES = "[ \u00a0\u202f'\u2019]";

    private static final Pattern SPACED = Pattern.compile("[-+]?\\d{1,3}(?:" + SPACES + "\\d{3})+(?:[.,]\\d*)?");

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
        int groups = stripped.split(Pattern.quote(String.valueOf(other)), -1).length - 1;
        boolean settled = groups > 1 || (groups == 1 && stripped.indexOf(mark) > stripped.indexOf(other));
        boolean grouped = stripped.matches("[-+]?\\d{1,3}(?:" + Pattern.quote(String.valueOf(other)) + "\\d{3})+(?:"
                + Pattern.quote(String.valueOf(mark)) + "\\d*)?");
        return settled && grouped ? NumberParser.parse(stripped.replace(String.valueOf(other), ""), mark) : Double.NaN;
    }

    /** Returns true for a text such as 4,395: 4395, or 4.395 with a decimal comma. */
    public static boolean isAmbiguous(String text) {
        return EITHER.matcher(text.strip()).matches();
    }
}
