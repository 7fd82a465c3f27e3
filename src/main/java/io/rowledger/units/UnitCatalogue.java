package io.rowledger.units;

import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * All units that the program reads, by dimension and spelling. Compound units (volume per time and so on) are composed
 * from the spellings of their parts: gal/min, gallons per minute and gal_min are one unit.
 */
final class UnitCatalogue {
    private static final Pattern PER = Pattern.compile("(?<![a-z])per(?![a-z])");
    /** Characters between words that a spelling may have or not. */
    private static final String NOISE = " \t\n\u000b\f\r_.\u00b7\u2212^*-";

    private static final Map<Dimension, Map<String, Unit>> BY_SPELLING = new EnumMap<>(Dimension.class);

    /** Part of a compound unit: its symbol, its size in SI (L for volume) and all its spellings. */
    private record Part(String symbol, double size, List<String> spellings) {}

    private static final List<Part> VOLUMES_L = List.of(
            part("gal", Factor.LITRES_PER_GALLON, "gals gallon gallons usgal usgals usgallon usgallons usg"),
            part("L", 1.0, "liter liters litre litres ltr"),
            part("ml", 1e-3, "milliliter milliliters millilitre millilitres cc cm3"),
            part(
                    "oz",
                    Factor.LITRES_PER_FLUID_OUNCE,
                    "floz fl.oz fluidounce fluidounces usfloz ounce ounces fluidoz ozs"),
            part("qt", Factor.LITRES_PER_GALLON / 4, "quart quarts qts"),
            part("pt", Factor.LITRES_PER_GALLON / 8, "pint pints pts"),
            part(
                    "imp gal",
                    Factor.LITRES_PER_IMPERIAL_GALLON,
                    "impgals ukgal ukgals imperialgallon imperialgallons igal igals"),
            part("m3", 1000.0, "cubicmeter cubicmeters cubicmetre cubicmetres"));
    private static final List<Part> TIMES_S = List.of(
            part("s", 1.0, "sec secs second seconds"),
            part("min", 60.0, "mins minute minutes"),
            part("h", 3600.0, "hr hrs hour hours"));
    private static final List<Part> AREAS_M2 = List.of(
            part("ac", Factor.SQUARE_METRES_PER_ACRE, "acre acres"),
            part("ha", Factor.SQUARE_METRES_PER_HECTARE, "hectare hectares"),
            part("m2", 1.0, "sqm squaremeter squaremetre"));
    private static final List<Part> MASSES_KG = List.of(
            part("lb", Factor.KILOGRAMS_PER_POUND, "lbs pound pounds"),
            part("kg", 1.0, "kilogram kilograms"),
            part("g", 1e-3, "gram grams"));
    /** Masses on load tickets; "ton" is the short ton of 2000 lb, "t" the tonne. */
    private static final List<Part> LOADS_KG = List.of(
            part("ton", 2000 * Factor.KILOGRAMS_PER_POUND, "tons shortton shorttons uston ustons"),
            part("t", 1000.0, "tonne tonnes metricton metrictons"));
    /** Masses of nutrients: "lb N" is read as lb. */
    private static final List<Part> NUTRIENTS_KG = List.of(
            part("lb", Factor.KILOGRAMS_PER_POUND, "lbs pound pounds lbn lbsn poundn poundsn"),
            part("kg", 1.0, "kilogram kilograms kgn"),
            part("g", 1e-3, "gram grams"));

    private static final List<Part> LENGTHS_M = List.of(
            part("m", 1.0, "meter meters metre metres"),
            part("cm", 0.01, "centimeter centimeters centimetre centimetres"),
            part("mm", 0.001, "millimeter millimeters millimetre millimetres"),
            part("km", 1000.0, "kilometer kilometers kilometre kilometres"),
            part("ft", Factor.METRES_PER_FOOT, "foot feet '"),
            part("in", Factor.METRES_PER_INCH, "inch inches \""),
            part("yd", 3 * Factor.METRES_PER_FOOT, "yard yards"),
            part("mi", Factor.METRES_PER_MILE, "mile miles"));
    private static final List<Part> ANGLES_RAD =
            List.of(part("deg", Math.PI / 180, "degree degrees degs"), part("rad", 1.0, "radian radians rads"));

    static {
        for (Dimension dimension : Dimension.values()) {
            BY_SPELLING.put(dimension, new LinkedHashMap<>());
        }
        whole(Dimension.LENGTH, LENGTHS_M);
        whole(Dimension.TIME, TIMES_S);
        whole(Dimension.ANGLE, ANGLES_RAD);
        whole(Dimension.VOLUME, VOLUMES_L);
        whole(Dimension.MASS, MASSES_KG);
        whole(Dimension.MASS, LOADS_KG);
        composed(Dimension.MASS_PER_AREA, NUTRIENTS_KG, AREAS_M2);
        composed(Dimension.FLOW, VOLUMES_L, TIMES_S);
        composed(Dimension.RATE, VOLUMES_L, AREAS_M2);
        composed(Dimension.DENSITY, MASSES_KG, VOLUMES_L);
        composed(Dimension.SPEED, LENGTHS_M, TIMES_S);
        composed(Dimension.TURN_RATE, ANGLES_RAD, TIMES_S);
        add(new Unit("ms", Dimension.TIME, 1e-3), "ms millisecond milliseconds msec");
        add(new Unit("us", Dimension.TIME, 1e-6), "us microsecond microseconds usec \u00b5s \u03bcs");
        add(new Unit("ns", Dimension.TIME, 1e-9), "ns nanosecond nanoseconds nsec");
        also(Dimension.FLOW, "gal/min", "gpm usgpm");
        also(Dimension.FLOW, "gal/h", "gph");
        also(Dimension.FLOW, "gal/s", "gps");
        also(Dimension.FLOW, "L/min", "lpm");
        also(Dimension.FLOW, "L/h", "lph");
        also(Dimension.FLOW, "L/s", "lps");
        also(Dimension.FLOW, "ml/min", "mlpm ccm");
        also(Dimension.FLOW, "oz/min", "opm ozpm");
        also(Dimension.RATE, "gal/ac", "gpa");
        also(Dimension.RATE, "L/ha", "lpha");
        rename("mi/h", new Unit("mph", Dimension.SPEED, Factor.METRES_PER_SECOND_PER_MPH));
        also(Dimension.SPEED, "km/h", "kph kmph");
        also(Dimension.SPEED, "m/s", "mps");
        also(Dimension.SPEED, "ft/s", "fps");
        add(new Unit("kn", Dimension.SPEED, Factor.METRES_PER_SECOND_PER_KNOT), "kn kt kts knot knots");
        also(Dimension.DENSITY, "lb/gal", "ppg");
        also(Dimension.TURN_RATE, "deg/s", "dps");
        add(new Unit("psi", Dimension.PRESSURE, Factor.PASCALS_PER_PSI), "psi psig lbf/in2 lb/in2");
        add(new Unit("kPa", Dimension.PRESSURE, 1e3), "kpa kilopascal kilopascals");
        add(new Unit("bar", Dimension.PRESSURE, 1e5), "bar bars");
        add(new Unit("mbar", Dimension.PRESSURE, 1e2), "mbar millibar hpa");
        add(new Unit("MPa", Dimension.PRESSURE, 1e6), "mpa megapascal");
        add(new Unit("Pa", Dimension.PRESSURE, 1.0), "pa pascal pascals");
        add(new Unit("%", Dimension.FRACTION, 0.01), "% percent pct");
        add(new Unit("ppm", Dimension.FRACTION, 1e-6), "ppm");
    }

    private UnitCatalogue() {}

    static Optional<Unit> find(String text, Dimension dimension) {
        return Optional.ofNullable(table(dimension).get(spelling(text)));
    }

    private static Map<String, Unit> table(Dimension dimension) {
        Map<String, Unit> table = BY_SPELLING.get(dimension);
        if (table == null) {
            throw new IllegalStateException("no table for " + dimension);
        }
        return table;
    }

    /** Normalizes a spelling: lower case, no blanks, "per" as a slash. */
    private static String spelling(String text) {
        String plain = text.toLowerCase(Locale.ROOT)
                .replace('\u00b2', '2')
                .replace('\u00b3', '3')
                .replace("\u00b0", "deg")
                .replace('\u2032', '\'')
                .replace('\u2033', '"');
        // Looked for first: only a few of the thousand spellings have it.
        String slashed =
                plain.contains("per") ? PER.matcher(plain.replace('_', ' ')).replaceAll("/") : plain;
        StringBuilder spelling = new StringBuilder(slashed.length());
        for (int i = 0; i < slashed.length(); i++) {
            if (NOISE.indexOf(slashed.charAt(i)) < 0) {
                spelling.append(slashed.charAt(i));
            }
        }
        return spelling.toString();
    }

    private static Part part(String symbol, double size, String otherSpellings) {
        return new Part(symbol, size, List.of((symbol.replace(" ", "") + " " + otherSpellings).split(" ", -1)));
    }

    private static void whole(Dimension dimension, List<Part> parts) {
        for (Part part : parts) {
            add(new Unit(part.symbol, dimension, part.size), String.join(" ", part.spellings));
        }
    }

    private static void composed(Dimension dimension, List<Part> over, List<Part> under) {
        for (Part a : over) {
            for (Part b : under) {
                Unit unit = new Unit(a.symbol + "/" + b.symbol, dimension, a.size / b.size);
                for (String left : a.spellings) {
                    for (String right : b.spellings) {
                        add(unit, left + "/" + right);
                        // "gallons" means gallons, not gallons per second.
                        boolean plural = dimension == Dimension.FLOW && a.spellings.contains(left + right);
                        if (!plural) {
                            add(unit, left + right);
                        }
                    }
                }
            }
        }
    }

    private static void also(Dimension dimension, String symbol, String spellings) {
        Unit unit = find(symbol, dimension).orElseThrow();
        add(unit, spellings);
    }

    /** Replaces a composed unit by one with the usual symbol, under all spellings of the composed one. */
    private static void rename(String symbol, Unit unit) {
        table(unit.dimension()).replaceAll((spelling, old) -> old.symbol().equals(symbol) ? unit : old);
        add(unit, unit.symbol());
    }

    private static void add(Unit unit, String spellings) {
        for (String spelling : spellings.split(" ", -1)) {
            Unit before = table(unit.dimension()).put(spelling(spelling), unit);
            if (before != null && before.toSi() != unit.toSi()) {
                throw new IllegalStateException(spelling + " is both " + before + " and " + unit);
            }
        }
    }
}
