package io.rowledger.log.header;

import io.rowledger.units.Dimension;
import io.rowledger.units.Unit;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * A parsed header: {@code uan.flow_03[gal/min]}, {@code Row 3 flow (L/min)}, {@code flow3_lpm}.
 *
 * @param header the header as written
 * @param role its meaning; the product is the prefix as written
 * @param unitText the unit as written, empty if there is none
 * @param unit the unit; null if none is written or needed, or if it does not fit the quantity
 * @param weak true if the name alone is ambiguous: a weak name ({@link LogQuantity#weakNames}), or only a row number and a unit
 */
public record ColumnName(
        String header, Role role, String unitText, @Nullable Unit unit, boolean weak) {
    private static final Pattern WITH_UNIT = Pattern.compile("^(.*?)\\s*[\\[(]([^\\[\\]()]*)[\\])]\\s*$");
    /** "Flow (gal/min) row 3": the unit before the number. */
    private static final Pattern UNIT_INSIDE = Pattern.compile("^(.*?)\\s*[\\[(]([^\\[\\]()]*)[\\])]\\s*(\\S.*)$");
    /** "Total gallons applied": the unit is a word of the name. */
    private static final Pattern UNIT_AS_WORD =
            Pattern.compile("(?i)^(|.*[\\s_.])(gallons?|gals?|liters?|litres?)(|[\\s_].*)$");

    /** "Row 3 [gal/min]": only the unit tells the quantity. */
    private static final Pattern ROW_ALONE =
            Pattern.compile("(?:row|outlet|knife|nozzle|section|channel|coulter|meter)0*([1-9]\\d{0,2})");

    /** "Section 3" and no more: the columns of a controller that switches sections. */
    private static final Pattern SECTION_ALONE = Pattern.compile("(?:boomsection|section|boom)0*([1-9]\\d{0,2})");

    /** A unit after the name with a separate letter for seconds: "gal_s". */
    private static final Pattern PER_SECOND = Pattern.compile("[A-Za-z0-9][ _][sS]\\s*$");

    private static final Pattern SEPARATORS = Pattern.compile("[\\s_,\\-]+");
    private static final String OUTLET =
            "(?:row|outlet|knife|nozzle|boomsection|section|boom|channel|coulter|drop|meter|line|tube|orifice|port|r)?";

    /** A name of a quantity. */
    private record Alias(LogQuantity quantity, String name, boolean weak) {}

    private static final List<Alias> ALIASES = aliases();

    private static List<Alias> aliases() {
        List<Alias> aliases = new ArrayList<>();
        for (LogQuantity quantity : LogQuantity.values()) {
            quantity.names().forEach(name -> aliases.add(new Alias(quantity, name, false)));
            quantity.weakNames().forEach(name -> aliases.add(new Alias(quantity, name, true)));
        }
        return List.copyOf(aliases);
    }

    /** Parses a header; empty if it names no known quantity. */
    public static Optional<ColumnName> of(String header) {
        String name = Headers.spaced(header);
        Optional<ColumnName> parsed = parsed(header, name);
        Matcher word = UNIT_AS_WORD.matcher(name);
        if (parsed.isPresent() || !word.matches()) {
            return parsed;
        }
        String rest = (word.group(1) + word.group(3)).strip();
        return parsed(
                header, (rest.isEmpty() || rest.endsWith(".") ? rest + "volume" : rest) + "[" + word.group(2) + "]");
    }

    private static Optional<ColumnName> parsed(String header, String spaced) {
        String name = spaced;
        String unitText = "";
        Matcher bracketed = WITH_UNIT.matcher(name);
        if (bracketed.matches()) {
            name = bracketed.group(1);
            unitText = bracketed.group(2).strip();
        } else {
            Matcher inside = UNIT_INSIDE.matcher(name);
            if (inside.matches() && Unit.findAny(inside.group(2).strip()).isPresent()) {
                name = inside.group(1) + " " + inside.group(3);
                unitText = inside.group(2).strip();
            }
        }
        while (name.endsWith(".") || name.endsWith(":")) {
            name = name.substring(0, name.length() - 1);
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
        for (Alias alias : ALIASES) {
            if (!plain.contains(alias.name)) {
                continue;
            }
            ColumnName match = match(header, plain, alias.quantity, alias.name, product, unitText);
            if (match != null && (best == null || isBetter(match, alias.name.length(), best, longest))) {
                best = alias.weak ? new ColumnName(header, match.role, match.unitText, match.unit, true) : match;
                longest = alias.name.length();
            }
        }
        return Optional.ofNullable(best == null ? rowAlone(header, plain, product, unitText) : best);
    }

    /** A name whose unit fits is better than one whose unit does not; then the longer one. */
    private static boolean isBetter(ColumnName match, int length, ColumnName best, int longest) {
        boolean fits = match.unit != null;
        boolean bestFits = best.unit != null;
        boolean alternative = isMetered(match.role.quantity()) && isMetered(best.role.quantity());
        if (alternative && fits != bestFits) {
            return fits;
        }
        return length > longest;
    }

    private static boolean isMetered(LogQuantity quantity) {
        return quantity.isFlowSource() || quantity == LogQuantity.FLOW_TOTAL;
    }

    private static @Nullable ColumnName rowAlone(String header, String plain, String product, String unitText) {
        Matcher section = SECTION_ALONE.matcher(plain);
        if (section.matches() && unitText.isEmpty() && product.isEmpty()) {
            Role on = new Role(LogQuantity.ON, "", Integer.parseInt(section.group(1)));
            return new ColumnName(header, on, "", null, true);
        }
        Matcher row = ROW_ALONE.matcher(plain);
        if (!row.matches()) {
            return null;
        }
        int number = Integer.parseInt(row.group(1));
        for (LogQuantity quantity : new LogQuantity[] {LogQuantity.FLOW, LogQuantity.VOLUME, LogQuantity.PRESSURE}) {
            Dimension dimension = quantity.dimension();
            Optional<Unit> unit = dimension == null ? Optional.empty() : Unit.find(unitText, dimension);
            if (unit.isPresent() && (product.isEmpty() || quantity.ofProduct())) {
                return new ColumnName(header, new Role(quantity, product, number), unitText, unit.get(), true);
            }
        }
        return null;
    }

    /** Normalizes a name for comparison: lower case, without spaces, underscores, commas and hyphens. */
    public static String plain(String name) {
        return SEPARATORS.matcher(name.strip().toLowerCase(Locale.ROOT)).replaceAll("");
    }

    private static @Nullable ColumnName match(
            String header, String plain, LogQuantity quantity, String alias, String product, String unitText) {
        if (!product.isEmpty() && !quantity.ofProduct()) {
            return null;
        }
        boolean numbered = quantity.per() == LogQuantity.Per.OUTLET || quantity.per() == LogQuantity.Per.LOG_OR_OUTLET;
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
            if (number == null && quantity.per() == LogQuantity.Per.OUTLET) {
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
        return suffix(header, new Role(quantity, product, row), rest, unitText);
    }

    /** Interprets the text after the name as a unit; null if it is something else. */
    private static @Nullable ColumnName suffix(String header, Role role, String rest, String unitText) {
        LogQuantity quantity = role.quantity();
        if (quantity.dimension() == null) {
            return rest.isEmpty() ? new ColumnName(header, role, unitText, null, false) : null;
        }
        String text = unitText;
        if (!rest.isEmpty()) {
            if (!unitText.isEmpty() || Unit.findAny(rest).isEmpty()) {
                return null;
            }
            // "flow_01_gal_s" is per second, "flow_01_gals" is not.
            boolean perSecond = rest.length() > 1 && PER_SECOND.matcher(header).find();
            text = perSecond ? rest.substring(0, rest.length() - 1) + "/s" : rest;
        }
        Unit unit = Unit.find(text, quantity.dimension()).orElse(null);
        if (unit == null && (quantity == LogQuantity.FLOW || quantity == LogQuantity.BAR_FLOW)) {
            // A volume under a flow's name; TotalizerFlow asks what it counts from.
            Unit volume = Unit.find(text, Dimension.VOLUME).orElse(null);
            LogQuantity counted = quantity == LogQuantity.FLOW ? LogQuantity.VOLUME : LogQuantity.BAR_VOLUME;
            if (volume != null) {
                return new ColumnName(header, new Role(counted, role.product(), role.row()), text, volume, false);
            }
        }
        if (unit == null && !rest.isEmpty() && !endsApart(header, rest)) {
            // "latt" is a name of its own, no latitude in tonnes.
            return null;
        }
        return new ColumnName(header, role, text, unit, false);
    }

    /** True if the text at the end of a header stands apart from what comes before it. */
    private static boolean endsApart(String header, String rest) {
        String name = header.strip().toLowerCase(Locale.ROOT);
        int at = name.length() - rest.length();
        return !name.endsWith(rest) || at <= 0 || !Character.isLetterOrDigit(name.charAt(at - 1));
    }
}
