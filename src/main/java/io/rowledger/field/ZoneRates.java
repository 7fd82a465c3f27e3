package io.rowledger.field;

import io.rowledger.finding.UnusableInputException;
import io.rowledger.maps.MapFeature;
import io.rowledger.maps.MapFeatures;
import io.rowledger.maps.MapProperty;
import io.rowledger.rig.Product;
import io.rowledger.units.Dimension;
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
 * The rates a zone's properties give, L/m² per product.
 *
 * <p>A rate is a volume per area under {@code target} or {@code rate}, or a weight of nitrogen per area under a name that
 * says nitrogen: then the volume follows from the product's analysis and density. With several products the name begins
 * with the product's key and a point, as in the log: {@code uan.target[gal/ac]}. The unit stands in the value
 * ({@code "42 gal/ac"}), in the name ({@code target[gal/ac]}, {@code rate_gal_ac}) or in a property {@code unit}.
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
    /** A weight whose unit says what it is of: {@code lb N/ac}. */
    private static final Pattern OF_NITROGEN = Pattern.compile("(lbs?|pounds?|kg|kilograms?|g)n(/|per|ac|ha|m2).*");

    private final MapFeatures source;
    private final MapFeature feature;
    private final List<Product> products;
    private final double[] rates;
    private final @Nullable MapProperty[] from;

    private ZoneRates(MapFeatures source, MapFeature feature, List<Product> products) {
        this.source = source;
        this.feature = feature;
        this.products = products;
        this.rates = new double[products.size()];
        this.from = new MapProperty[products.size()];
        Arrays.fill(rates, Double.NaN);
    }

    /** A property that gives a rate: whose, of what, and the unit its name carries. */
    private record Name(String product, boolean nitrogen, String unit) {}

    /**
     * The rates of a feature in rig order; NaN for products it says nothing of.
     *
     * @throws UnusableInputException where it gives no rate, two for a product, or one that can't be read
     */
    static double[] of(MapFeatures source, MapFeature feature, List<Product> products) {
        ZoneRates zone = new ZoneRates(source, feature, products);
        for (MapProperty property : feature.properties()) {
            Name name = property.text().isBlank() ? null : name(property);
            if (name != null) {
                zone.take(property, name);
            }
        }
        if (Arrays.stream(zone.rates).allMatch(Double::isNaN)) {
            throw zone.noRate();
        }
        return zone.rates;
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

    private void take(MapProperty property, Name name) {
        int p = product(property, name.product);
        MapProperty before = from[p];
        if (before != null) {
            throw fault(
                            property,
                            "\"" + property.name() + "\" beside \"" + before.name() + "\", two rates for one product")
                    .expected("one rate for each product and zone")
                    .hint("take one of the two out");
        }
        from[p] = property;
        rates[p] = rate(property, name, p);
    }

    private int product(MapProperty property, String key) {
        if (key.isEmpty() && products.size() == 1) {
            return 0;
        }
        for (int p = 0; p < products.size(); p++) {
            if (products.get(p).key().equalsIgnoreCase(key)) {
                return p;
            }
        }
        String keys = products.stream().map(Product::key).collect(Collectors.joining(", "));
        String found = key.isEmpty()
                ? "a rate that doesn't say of which product"
                : "a rate of the unknown product \"" + key + "\"";
        throw fault(property, found)
                .expected("one of the rig file's products: " + keys)
                .hint("write the product's key and a point before the name, as in "
                        + products.get(0).key() + ".target[gal/ac]");
    }

    private double rate(MapProperty property, Name name, int p) {
        String value = property.text().strip();
        boolean figure = property.isNumber() || FIGURE.matcher(value).matches();
        String unit = figure ? unit(property, name) : value.replaceFirst("^" + FIGURE.pattern(), "");
        boolean nitrogen = name.nitrogen || saysNitrogen(unit);
        String text = figure ? value + " " + symbol(unit) : value;
        Unit weight = nitrogen ? null : Unit.find(unit, Dimension.MASS_PER_AREA).orElse(null);
        if (weight != null) {
            throw fault(property, "\"" + text + "\", a weight per area that doesn't say of what")
                    .expected("a volume per area in " + Dimension.RATE.unitsToWrite()
                            + ", or a weight of nitrogen under a name that says so")
                    .hint("call the property nitrogen[" + weight.symbol()
                            + "] if it is nitrogen, else write the liquid's" + " volume per area");
        }
        Reading reading = Quantity.read(text, nitrogen ? Dimension.MASS_PER_AREA : Dimension.RATE);
        if (reading instanceof Refusal refusal) {
            throw fault(property, refusal.found()).expected(refusal.expected()).hint(refusal.hint());
        }
        double si = ((Quantity) reading).si();
        if (!(si >= 0) || !Double.isFinite(si)) {
            throw fault(property, "\"" + text + "\"")
                    .expected("a rate of 0 or more")
                    .hint("write 0 where nothing is to be put down");
        }
        return nitrogen ? ofNitrogen(property, si, products.get(p)) : si;
    }

    /** The usual spelling of a unit, or what was written. */
    private static String symbol(String unit) {
        return Unit.findAny(unit).map(Unit::symbol).orElse(unit);
    }

    private static boolean saysNitrogen(String unit) {
        return OF_NITROGEN.matcher(plain(unit)).matches();
    }

    /** The unit of a bare figure: behind the name, else of a property of its own. */
    private String unit(MapProperty property, Name name) {
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
        String dimension = name.nitrogen ? "lb/ac" : "gal/ac";
        throw fault(property, property.text() + ", a figure without a unit")
                .expected(
                        name.nitrogen
                                ? "a weight of nitrogen per area in " + Dimension.MASS_PER_AREA.unitsToWrite()
                                : "a volume per area in " + Dimension.RATE.unitsToWrite())
                .hint("write the unit, as text such as \"" + property.text() + " " + dimension
                        + "\", behind the name, as in " + property.name() + "[" + dimension
                        + "], or in a property \"unit\"");
    }

    private double ofNitrogen(MapProperty property, double kgPerM2, Product product) {
        double kgPerL = product.nitrogenKgPerL();
        if (kgPerM2 == 0) {
            return 0;
        }
        if (!(kgPerL > 0)) {
            throw fault(
                            property,
                            "a rate of nitrogen for " + product.name()
                                    + ", whose nitrogen in a volume the rig file doesn't tell")
                    .expected("density and analysis of the product in the rig file")
                    .hint("write density and analysis under the product " + product.key()
                            + ", or give the rate as a volume per area");
        }
        return kgPerM2 / kgPerL;
    }

    private UnusableInputException noRate() {
        String names = feature.properties().stream()
                .map(property -> "\"" + property.name() + "\"")
                .collect(Collectors.joining(", "));
        String key = products.size() > 1 ? products.get(0).key() + "." : "";
        return source.fault(
                        feature, names.isEmpty() ? "a zone without properties" : "a zone without a rate, only " + names)
                .expected("a rate under the name " + key + "target, " + key + "rate or " + key + "nitrogen")
                .hint("write the rate with its unit, as in \"" + key
                        + "target[gal/ac]\": 42, and 0 where nothing is to be" + " put down");
    }

    private UnusableInputException fault(MapProperty property, String found) {
        return source.fault(feature, property, found);
    }
}
