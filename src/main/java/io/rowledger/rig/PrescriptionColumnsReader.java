package io.rowledger.rig;

import io.rowledger.units.Dimension;
import io.rowledger.units.Unit;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Pattern;

/** The {@code prescription:} block: which attribute of the map holds the rate, in which unit, and which the zone's name. */
final class PrescriptionColumnsReader {
    /** Mass of nitrogen per area, such as {@code lb N/ac}. */
    private static final Pattern NITROGEN_UNIT = Pattern.compile("(?<mass>[a-z]+)n(?<area>(?:/|per)[a-z0-9]+)");

    private PrescriptionColumnsReader() {}

    static PrescriptionColumns read(YamlMap block, List<Product> products) {
        block.only("rate", "unit", "name");
        Map<String, String> rate = perProduct(block, "rate", products, "the attribute that holds the rate");
        Map<String, String> unit = perProduct(block, "unit", products, "the unit of the rate, such as gal/ac");
        unit.values().forEach(text -> requireUnit(block, text));
        if (rate.isEmpty() && !unit.isEmpty()) {
            throw block.fault("unit", "a unit without a rate")
                    .expected("rate, the name of the attribute that holds the rate, beside unit")
                    .hint("add a line rate: with the attribute's name");
        }
        return new PrescriptionColumns(rate, unit, block.textOr("name", "").strip());
    }

    /** One value for a rig with one product, or a block with a value for each product's key. */
    private static Map<String, String> perProduct(YamlMap block, String key, List<Product> products, String what) {
        Map<String, String> values = new TreeMap<>();
        if (!block.hasMore(key)) {
            return values;
        }
        if (block.isBlock(key)) {
            YamlMap each = block.map(key, what);
            for (String product : each.keys()) {
                values.put(
                        JobReader.product(each, product, product, products, "").key(),
                        each.text(product, what).strip());
            }
            return values;
        }
        String value = block.text(key, what).strip();
        if (products.size() > 1 && key.equals("rate")) {
            String example = products.get(0).key();
            throw block.fault(key, "one attribute for " + products.size() + " products")
                    .expected("the attribute of each product")
                    .hint("write a block, " + key + ": {" + example + ": " + value + "}");
        }
        products.forEach(product -> values.put(product.key(), value));
        return values;
    }

    private static void requireUnit(YamlMap block, String text) {
        String plain = text.toLowerCase(Locale.ROOT).replaceAll("\\s+", "");
        var nitrogen = NITROGEN_UNIT.matcher(plain);
        String massUnit = nitrogen.matches() ? nitrogen.group("mass") + nitrogen.group("area") : "";
        boolean known = Unit.find(text, Dimension.RATE).isPresent()
                || Unit.find(massUnit, Dimension.MASS_PER_AREA).isPresent();
        if (!known) {
            throw block.fault("unit", "\"" + text + "\"")
                    .expected("a unit of volume per area (" + Dimension.RATE.unitsToWrite()
                            + ") or of nitrogen per area (lb N/ac or kg N/ha)")
                    .hint("write the unit in which the map's rates are");
        }
    }
}
