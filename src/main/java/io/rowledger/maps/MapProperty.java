package io.rowledger.maps;

import java.math.BigDecimal;
import java.math.MathContext;

/**
 * What a feature of a map file says about itself under one name.
 *
 * @param name as written, for instance {@code setback[ft]}
 * @param text the value as written; {@code true} and {@code false} are texts
 * @param number the value where the file has it as a number, else NaN
 * @param line where it stands in the file, from 1; 0 where the format has no lines
 */
public record MapProperty(String name, String text, double number, int line) {
    /** Digits that a double holds for certain: a table may write 42.15 as 42.149999999999999. */
    private static final int DIGITS = 15;

    /** True where the file has the value as a number and not as text. */
    public boolean isNumber() {
        return !Double.isNaN(number);
    }

    /** The value as a person writes it: a number without the zeros that a table pads it with, and to fifteen digits. */
    public String shortText() {
        if (!isNumber()) {
            return text.strip();
        }
        try {
            return new BigDecimal(text.strip())
                    .round(new MathContext(DIGITS))
                    .stripTrailingZeros()
                    .toPlainString();
        } catch (NumberFormatException e) {
            return text.strip();
        }
    }

    /** The name without the unit in brackets behind it. */
    public String plainName() {
        int bracket = bracket();
        return (bracket < 0 ? name : name.substring(0, bracket)).strip();
    }

    /** The unit in brackets behind the name, empty without one. */
    public String unit() {
        int bracket = bracket();
        String rest = name.strip();
        return bracket < 0 ? "" : rest.substring(bracket + 1, rest.length() - 1).strip();
    }

    /** What stands behind this name and an underscore, for instance {@code ft} in {@code setback_ft}; empty without. */
    public String unitBehind(String wanted) {
        String start = wanted + "_";
        boolean is = bracket() < 0 && name.strip().regionMatches(true, 0, start, 0, start.length());
        return is ? name.strip().substring(start.length()) : "";
    }

    private int bracket() {
        String rest = name.strip();
        return rest.endsWith("]") ? rest.lastIndexOf('[') : rest.endsWith(")") ? rest.lastIndexOf('(') : -1;
    }
}
