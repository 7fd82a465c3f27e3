package io.rowledger.rig;

import io.rowledger.units.Dimension;
import io.rowledger.units.Factor;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Pattern;

/** The {@code products:} block. */
final class ProductReader {
    /** A product's key: it precedes the point in column names. */
    private static final Pattern KEY = Pattern.compile("[A-Za-z][A-Za-z0-9_-]*");

    private static final Pattern ANALYSIS = Pattern.compile("\\d{1,3}(?:\\.\\d+)?(?:-\\d{1,3}(?:\\.\\d+)?){2,3}");
    /** Bounds of a liquid's density, kg/L: ammonia at 120 °F is near 0.55, no fertilizer reaches 2.5 (common practice, no source). */
    private static final double MIN_DENSITY_KG_PER_L = 0.5;

    private static final double MAX_DENSITY_KG_PER_L = 2.5;
    /** Smallest and largest plausible target, 0.1 and 1000 gal/ac: outside a unit is wrong. */
    private static final double MIN_TARGET_L_PER_M2 = 0.1 * Factor.LITRES_PER_SQUARE_METRE_PER_GPA;

    private static final double MAX_TARGET_L_PER_M2 = 1000 * Factor.LITRES_PER_SQUARE_METRE_PER_GPA;
    /** Largest plausible flow lag, s. */
    private static final double MAX_LAG_S = 60;
    /** Largest accepted limit of error of a meter or a density (1). */
    private static final double MAX_ACCURACY = 0.3;

    private ProductReader() {}

    static List<Product> read(YamlMap products) {
        if (products.keys().isEmpty()) {
            throw products.fault("no product")
                    .expected("at least one product")
                    .hint("add a block such as uan: with density, analysis and target below it");
        }
        List<Product> list = new ArrayList<>();
        Map<String, String> seen = new HashMap<>();
        for (String key : products.keys()) {
            if (!KEY.matcher(key).matches()) {
                throw products.fault(key, "the product key \"" + key + "\"")
                        .expected("a word of letters, digits, _ and -: column names begin with it, as in "
                                + "uan.flow_01")
                        .hint("shorten it to one word and put the full name under name");
            }
            String other = seen.put(key.toLowerCase(Locale.ROOT).replaceAll("[_-]", ""), key);
            if (other != null) {
                throw products.fault(key, "a key too much like " + other)
                        .expected("keys that differ in a letter or digit")
                        .hint("rename one of the two");
            }
            list.add(product(key, products.map(key, "a block with density, analysis and target")));
        }
        return list;
    }

    private static Product product(String key, YamlMap map) {
        map.only(
                "name",
                "density",
                "density_at",
                "density_accuracy",
                "analysis",
                "target",
                "flow_lag",
                "meter_accuracy");
        double[] analysis = analysis(map, "analysis");
        return new Product(
                key,
                map.textOr("name", key),
                density(map),
                analysis[0],
                analysis[1],
                analysis[2],
                analysis[3],
                target(map),
                lag(map),
                accuracy(map, "meter_accuracy"),
                accuracy(map, "density_accuracy"),
                map.quantityOr("density_at", Dimension.TEMPERATURE, Double.NaN));
    }

    /** The density under its key; NaN where there is none. */
    static double density(YamlMap map) {
        double density = map.quantityOr("density", Dimension.DENSITY, Double.NaN);
        if (density < MIN_DENSITY_KG_PER_L || density > MAX_DENSITY_KG_PER_L) {
            throw map.fault("density", "\"" + map.text("density", "a density") + "\"")
                    .expected("the density of a liquid, 0.5 to 2.5 kg/L (4.2 to 20.9 lb/gal)")
                    .hint("take it from the product's label or data sheet, such as 11.06 lb/gal");
        }
        return density;
    }

    /** Mass fractions of N, P₂O₅, K₂O and S; all unknown where the rig file gives no analysis. */
    static double[] analysis(YamlMap map, String key) {
        double[] fractions = {Double.NaN, Double.NaN, Double.NaN, Double.NaN};
        if (!map.has(key)) {
            return fractions;
        }
        String text = map.text(key, "N-P2O5-K2O such as 32-0-0").strip();
        double sum = 0;
        if (ANALYSIS.matcher(text).matches()) {
            String[] parts = text.split("-", -1);
            fractions[3] = 0;
            for (int i = 0; i < parts.length; i++) {
                fractions[i] = Double.parseDouble(parts[i]) / 100;
                sum += fractions[i];
            }
        } else {
            sum = Double.POSITIVE_INFINITY;
        }
        if (sum > 1 + 1e-9) {
            throw map.fault(key, "\"" + text + "\"")
                    .expected("percent by weight of N-P2O5-K2O, a fourth number for S, 100 at most together")
                    .hint("copy the analysis from the label, such as 32-0-0 or 12-0-0-26");
        }
        return fractions;
    }

    private static double target(YamlMap map) {
        double target = map.quantityOr("target", Dimension.RATE, Double.NaN);
        if (target < MIN_TARGET_L_PER_M2 || target > MAX_TARGET_L_PER_M2) {
            throw map.fault("target", "a target of \"" + map.text("target", "a rate") + "\"")
                    .expected("a rate from 0.1 to 1000 gal/ac (0.9 to 9400 L/ha), such as 42 gal/ac")
                    .hint("write the target rate with its unit, or delete the line if log or prescription have it");
        }
        return target;
    }

    private static double lag(YamlMap map) {
        double lagS = map.quantityOr("flow_lag", Dimension.TIME, 0);
        if (Math.abs(lagS) > MAX_LAG_S) {
            throw map.fault("flow_lag", "\"" + map.text("flow_lag", "a time") + "\"")
                    .expected("at most " + (int) MAX_LAG_S + " s, how much later the meter shows what left the outlet")
                    .hint("check the figure and its unit");
        }
        return lagS;
    }

    /** Limits of error as a fraction; NaN where the rig file has none. */
    private static double accuracy(YamlMap map, String key) {
        double accuracy = map.quantityOr(key, Dimension.FRACTION, Double.NaN);
        if (accuracy < 0 || accuracy > MAX_ACCURACY) {
            throw map.fault(key, "\"" + map.text(key, "a share") + "\"")
                    .expected("limits of error from 0 to 30 %")
                    .hint("write the accuracy from the data sheet or the calibration, such as 1 %");
        }
        return accuracy;
    }
}
