package io.rowledger.field;

import io.rowledger.finding.UnusableInputException;
import io.rowledger.maps.MapFeature;
import io.rowledger.maps.MapFeatures;
import io.rowledger.maps.MapProperty;
import io.rowledger.rig.PrescriptionColumns;
import io.rowledger.rig.Product;
import io.rowledger.units.Dimension;
import io.rowledger.units.Factor;
import io.rowledger.units.Quantity;
import io.rowledger.units.Reading;
import io.rowledger.units.Refusal;
import io.rowledger.units.Unit;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * The target rates of a prescription's zones, L/m² per product.
 *
 * <p>The rig file may name the attribute and its unit ({@link PrescriptionColumns}). Otherwise a rate is a volume per
 * area under {@code target} or {@code rate}, or a mass of nitrogen per area under a name with nitrogen in it: the volume
 * then follows from the product's analysis and density. With several products the name begins with the product's key and
 * a point, as in the log: {@code uan.target[gal/ac]}. The unit stands in the value ({@code "42 gal/ac"}), in the name
 * ({@code target[gal/ac]}, {@code rate_gal_ac}) or in an attribute {@code unit}.
 */
final class ZoneRates {
    private static final List<String> VOLUME = List.of(
            "target",
            "targetrate",
            "rate",
            "ratetarget",
            "setrate",
            "setpoint",
            "plannedrate",
            "prescribedrate",
            "desiredrate",
            "applicationrate");
    private static final List<String> NITROGEN = List.of(
            "nitrogen",
            "nitrogenrate",
            "nitrogentarget",
            "targetnitrogen",
            "ratenitrogen",
            "nrate",
            "ntarget",
            "targetn",
            "raten");
    private static final List<String> UNIT =
            List.of("unit", "units", "rateunit", "rateunits", "targetunit", "targetunits");

    private static final Pattern SEPARATORS = Pattern.compile("[\\s_\\-]+");
    private static final Pattern FIGURE = Pattern.compile("[+-]?(\\d+\\.?\\d*|\\.\\d+)([eE][+-]?\\d+)?");
    /** A unit of nitrogen per area: {@code lb N/ac}. */
    private static final Pattern OF_NITROGEN = Pattern.compile("(lbs?|pounds?|kg|kilograms?|g)n(/|per|ac|ha|m2).*");

    /** Largest plausible rate, 1000 gal/ac: above it a unit is wrong. */
    private static final double MAX_RATE_L_PER_M2 = 1000 * Factor.LITRES_PER_SQUARE_METRE_PER_GPA;

    private final MapFeatures source;
    private final List<Product> products;
    private final PrescriptionColumns columns;
    private final AttributeList attributes;

    /**
     * Reads the rates of one map.
     *
     * @param columns the attributes that the rig file names
     */
    ZoneRates(MapFeatures source, List<Product> products, PrescriptionColumns columns) {
        this.source = source;
        this.products = products;
        this.columns = columns;
        this.attributes = new AttributeList(source);
    }

    /** The meaning of an attribute that holds a rate: of which product, of nitrogen or liquid, in which unit. */
    private record Name(String product, boolean nitrogen, String unit) {}

    /**
     * Returns the rates of a feature in rig order, L/m²; NaN for products it does not name.
     *
     * @throws UnusableInputException if it has no rate, two for a product, or one that can't be read
     */
    double[] of(MapFeature feature) {
        double[] rates = new double[products.size()];
        Arrays.fill(rates, Double.NaN);
        if (columns.rate().isEmpty()) {
            byName(feature, rates);
        } else {
            for (int p = 0; p < rates.length; p++) {
                String attribute = columns.rate().get(products.get(p).key());
                if (attribute != null) {
                    rates[p] = named(feature, attribute, p);
                }
            }
        }
        if (Arrays.stream(rates).allMatch(Double::isNaN)) {
            throw noRate(feature);
        }
        return rates;
    }

    /** The rate in the attribute that the rig file names. */
    private double named(MapFeature feature, String attribute, int p) {
        MapProperty property = attributes.find(feature, attribute);
        if (property == null && !attributes.has(attribute)) {
            throw UnusableInputException.found("no attribute \"" + attribute + "\" among " + attributes.words())
                    .inFile(source.file())
                    .expected("the attribute that the rig file names under prescription: rate")
                    .hint("write " + attributes.lines(products) + " into the rig file");
        }
        if (property == null || property.text().isBlank()) {
            throw source.fault(feature, "a zone without a value of " + attribute)
                    .expected("a rate for each zone")
                    .hint("write the rate, or 0 if nothing is to be applied");
        }
        String unit = columns.unit().get(products.get(p).key());
        Name byName = name(property);
        boolean nitrogen = byName != null && byName.nitrogen;
        String own = !property.unit().isEmpty() ? property.unit() : byName == null ? "" : byName.unit;
        return rate(feature, property, new Name("", nitrogen && unit == null, unit == null ? own : unit), p);
    }

    private void byName(MapFeature feature, double[] rates) {
        @Nullable MapProperty[] from = new MapProperty[rates.length];
        for (MapProperty property : feature.properties()) {
            Name name = property.text().isBlank() ? null : name(property);
            if (name == null) {
                continue;
            }
            int p = product(feature, property, name.product);
            MapProperty before = from[p];
            if (before != null) {
                throw source.fault(
                                feature,
                                property,
                                "\"" + property.name() + "\" beside \"" + before.name()
                                        + "\", two rates for one product")
                        .expected("one rate for each product and zone")
                        .hint("delete one of the two, or name the right one in the rig file: prescription: {rate: "
                                + AttributeList.yaml(before.name()) + "}");
            }
            from[p] = property;
            rates[p] = rate(feature, property, name, p);
        }
    }

    private static @Nullable Name name(MapProperty property) {
        String name = property.plainName();
        int dot = name.indexOf('.');
        String product = dot > 0 ? name.substring(0, dot).strip() : "";
        String plain = plain(dot > 0 ? name.substring(dot + 1) : name);
        Name best = null;
        int longest = 0;
        for (boolean nitrogen : new boolean[] {false, true}) {
            for (String alias : nitrogen ? NITROGEN : VOLUME) {
                String rest = plain.startsWith(alias) ? plain.substring(alias.length()) : "no";
                boolean unitBehind = !rest.isEmpty()
                        && property.unit().isEmpty()
                        && (Unit.find(rest, Dimension.RATE).isPresent()
                                || Unit.find(rest, Dimension.MASS_PER_AREA).isPresent());
                if (alias.length() > longest && (rest.isEmpty() || unitBehind)) {
                    longest = alias.length();
                    best = new Name(product, nitrogen, unitBehind ? rest : property.unit());
                }
            }
        }
        return best;
    }

    private static String plain(String name) {
        return SEPARATORS.matcher(name.strip().toLowerCase(Locale.ROOT)).replaceAll("");
    }

    private int product(MapFeature feature, MapProperty property, String key) {
        if (key.isEmpty() && products.size() == 1) {
            return 0;
        }
        for (int p = 0; p < products.size(); p++) {
            if (products.get(p).key().equalsIgnoreCase(key)) {
                return p;
            }
        }
        String keys = products.stream().map(Product::key).collect(Collectors.joining(", "));
        String found = key.isEmpty() ? "a rate without a product" : "a rate of the unknown product \"" + key + "\"";
        throw source.fault(feature, property, found)
                .expected("one of the rig file's products: " + keys)
                .hint("write the product's key and a point before the name, as in "
                        + products.get(0).key() + ".target[gal/ac]");
    }

    private double rate(MapFeature feature, MapProperty property, Name name, int p) {
        String value = property.text().strip();
        boolean figure = property.isNumber() || FIGURE.matcher(value).matches();
        String unit = figure ? unit(feature, property, name, p) : value.replaceFirst("^" + FIGURE.pattern(), "");
        boolean nitrogen = name.nitrogen || saysNitrogen(unit);
        String text = figure ? value + " " + symbol(unit) : value;
        Unit weight = nitrogen ? null : Unit.find(unit, Dimension.MASS_PER_AREA).orElse(null);
        if (weight != null) {
            throw source.fault(feature, property, "\"" + text + "\", a weight per area without a nutrient")
                    .expected("a volume per area in gal/ac or L/ha, or nitrogen per area in lb N/ac or kg N/ha")
                    .hint("for nitrogen write "
                            + line(property, weight.symbol().startsWith("kg") ? "kg N/ha" : "lb N/ac", p)
                            + " into the rig file; else give the liquid's volume per area");
        }
        Reading reading = Quantity.read(text, nitrogen ? Dimension.MASS_PER_AREA : Dimension.RATE);
        if (reading instanceof Refusal refusal) {
            throw source.fault(feature, property, refusal.found())
                    .expected(refusal.expected())
                    .hint(refusal.hint());
        }
        double si = ((Quantity) reading).si();
        if (!(si >= 0) || !Double.isFinite(si)) {
            throw source.fault(feature, property, "\"" + text + "\"")
                    .expected("a rate of 0 or more")
                    .hint("write 0 where nothing is to be applied");
        }
        double rateLPerM2 = nitrogen ? ofNitrogen(feature, property, si, products.get(p)) : si;
        if (rateLPerM2 > MAX_RATE_L_PER_M2) {
            throw source.fault(feature, property, "\"" + text + "\"")
                    .expected("at most 1000 gal/ac (9400 L/ha)")
                    .hint("check the unit of the rates");
        }
        return rateLPerM2;
    }

    /** The usual spelling of a unit, or what was written. */
    private static String symbol(String unit) {
        return Unit.findAny(unit).map(Unit::symbol).orElse(unit);
    }

    private static boolean saysNitrogen(String unit) {
        return OF_NITROGEN.matcher(plain(unit)).matches();
    }

    /** The unit of a number without one: from the attribute's name, else from an attribute for units. */
    private String unit(MapFeature feature, MapProperty property, Name name, int p) {
        if (!name.unit.isEmpty()) {
            return name.unit;
        }
        for (String prefix : name.product.isEmpty() ? List.of("") : List.of(name.product + ".", "")) {
            for (String word : UNIT) {
                for (MapProperty other : feature.properties()) {
                    if (plain(other.name()).equals(plain(prefix) + word)
                            && !other.text().isBlank()) {
                        return other.text().strip();
                    }
                }
            }
        }
        String line = line(property, name.nitrogen ? "lb N/ac" : "gal/ac", p);
        throw source.fault(feature, property, property.shortText() + ", a number without a unit")
                .expected(
                        name.nitrogen
                                ? "a weight of nitrogen per area in lb N/ac or kg N/ha"
                                : "a volume per area in gal/ac or L/ha, or nitrogen per area in lb N/ac or kg N/ha")
                .hint("write " + line + " into the rig file, with the unit that it is");
    }

    /** The line of the rig file that gives an attribute its unit. */
    private String line(MapProperty property, String unit, int p) {
        String rate = AttributeList.yaml(property.name());
        return products.size() == 1
                ? "prescription: {rate: " + rate + ", unit: " + unit + "}"
                : "prescription: {rate: {" + products.get(p).key() + ": " + rate + "}, unit: {"
                        + products.get(p).key() + ": " + unit + "}}";
    }

    static boolean isFigure(String text) {
        return FIGURE.matcher(text.strip()).matches();
    }

    private double ofNitrogen(MapFeature feature, MapProperty property, double kgPerM2, Product product) {
        double kgPerL = product.nitrogenKgPerL();
        if (kgPerM2 == 0) {
            return 0;
        }
        if (!(kgPerL > 0)) {
            throw source.fault(
                            feature,
                            property,
                            "a rate of nitrogen for " + product.name()
                                    + ", which has no density or analysis in the rig file")
                    .expected("density and analysis of the product in the rig file")
                    .hint("write density and analysis under the product " + product.key()
                            + ", or give the rate as a volume per area");
        }
        return kgPerM2 / kgPerL;
    }

    private UnusableInputException noRate(MapFeature feature) {
        if (feature.properties().isEmpty() && !attributes.isEmpty()) {
            return source.fault(feature, "a zone without attributes")
                    .expected("a rate for each zone")
                    .hint("write the rate, or 0 if nothing is to be applied");
        }
        if (!attributes.hasNumbers()) {
            return UnusableInputException.found(
                            attributes.isEmpty()
                                    ? "zones without any attribute"
                                    : "no number among the attributes: " + attributes.words())
                    .inFile(source.file())
                    .expected("a target rate for each zone")
                    .hint("export the prescription with its rates; give a field's outline as --boundary");
        }
        return UnusableInputException.found("no attribute that is plainly a rate among " + attributes.words())
                .inFile(source.file())
                .expected("a target rate for each zone")
                .hint("say in the rig file which attribute is the rate and in which unit, as in "
                        + attributes.lines(products));
    }
}
