package io.rowledger.log;

import io.rowledger.units.Unit;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * A header taken apart: {@code uan.flow_03[gal/min]}, {@code Row 3 flow (L/min)}, {@code flow3_lpm}.
 *
 * @param header the header as written
 * @param role what it names; its product is the prefix as written
 * @param unitText the unit as written, empty where there is none
 * @param unit the unit, or null where none is written, none is needed or it is not one of this quantity
 */
record ColumnName(
        String header, Role role, String unitText, @Nullable Unit unit) {
    private static final Pattern WITH_UNIT = Pattern.compile("^(.*?)\\s*[\\[(]([^\\[\\]()]*)[\\])]\\s*$");
    private static final Pattern SEPARATORS = Pattern.compile("[\\s_\\-]+");
    private static final String OUTLET = "(?:row|outlet|knife|nozzle|section|channel|coulter|drop|meter)?";

    /** What the header names, or empty where the program knows no such quantity. */
    static Optional<ColumnName> of(String header) {
        String name = header.strip();
        String unitText = "";
        Matcher bracketed = WITH_UNIT.matcher(name);
        if (bracketed.matches()) {
            name = bracketed.group(1);
            unitText = bracketed.group(2).strip();
        }
        String product = "";
        int dot = name.indexOf('.');
        if (dot > 0) {
            product = name.substring(0, dot).strip();
            name = name.substring(dot + 1);
        }
        ColumnName best = null;
        int longest = 0;
        String plain = plain(name);
        for (Measured measured : Measured.values()) {
            for (String alias : measured.names()) {
                if (alias.length() > longest && plain.contains(alias)) {
                    ColumnName match = match(header, plain, measured, alias, product, unitText);
                    if (match != null) {
                        best = match;
                        longest = alias.length();
                    }
                }
            }
        }
        return Optional.ofNullable(best);
    }

    /** Lower case, without blanks, underscores and hyphens: what two names are compared by. */
    static String plain(String name) {
        return SEPARATORS.matcher(name.strip().toLowerCase(Locale.ROOT)).replaceAll("");
    }

    private static @Nullable ColumnName match(
            String header, String plain, Measured measured, String alias, String product, String unitText) {
        if (!product.isEmpty() && !measured.ofProduct()) {
            return null;
        }
        boolean numbered = measured.per() == Measured.Per.OUTLET || measured.per() == Measured.Per.LOG_OR_OUTLET;
        int row = 0;
        String rest;
        if (numbered) {
            Matcher m = Pattern.compile(OUTLET + "(\\d{1,3})?" + alias + OUTLET + "(\\d{1,3})?(.*)")
                    .matcher(plain);
            if (!m.matches()) {
                return null;
            }
            String before = m.group(1);
            String after = m.group(2);
            if (before != null && after != null) {
                return null;
            }
            String number = before != null ? before : after;
            if (number == null && measured.per() == Measured.Per.OUTLET) {
                return null;
            }
            row = number == null ? 0 : Integer.parseInt(number);
            if (number != null && row == 0) {
                return null;
            }
            rest = m.group(3);
        } else {
            if (!plain.startsWith(alias)) {
                return null;
            }
            rest = plain.substring(alias.length());
        }
        return suffix(header, new Role(measured, product, row), rest, unitText);
    }

    /** What is left after the name is a unit or the name is another one. */
    private static @Nullable ColumnName suffix(String header, Role role, String rest, String unitText) {
        Measured measured = role.measured();
        if (measured.dimension() == null) {
            return rest.isEmpty() ? new ColumnName(header, role, unitText, null) : null;
        }
        String text = unitText;
        if (!rest.isEmpty()) {
            if (!unitText.isEmpty() || Unit.findAny(rest).isEmpty()) {
                return null;
            }
            text = rest;
        }
        Unit unit = Unit.find(text, measured.dimension()).orElse(null);
        return new ColumnName(header, role, text, unit);
    }
}
