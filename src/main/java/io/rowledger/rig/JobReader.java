package io.rowledger.rig;

import io.rowledger.finding.UnusableInputException;
import io.rowledger.text.Message;
import io.rowledger.units.Dimension;
import java.time.DateTimeException;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;

/**
 * The {@code job:} block. Facts are taken as entered, so only what the program reckons with can be wrong: figures, and
 * the zone.
 */
final class JobReader {
    /** More nitrogen than any crop takes up (1000 kg/ha, 892 lb/ac): above it a unit is wrong. */
    private static final double MAX_NITROGEN_KG_PER_M2 = 0.1;

    /**
     * A key is a near miss where fewer than a quarter of its letters would have to change. Any key may stand in the
     * block, so this is stricter than where unknown keys are refused.
     */
    private static final int LETTERS_FOR_EACH_SLIP = 4;

    private static final String EARLIER_ITEM =
            "one line for each, such as - {date: 2026-04-12, what: Starter, rate: 10 gal/ac, density: 11.65 lb/gal, analysis: 10-34-0}";
    private static final String CREDIT_ITEM =
            "one line for each, such as - {what: Soybeans before, nitrogen: 30 lb/ac}";

    private JobReader() {}

    static Job read(YamlMap block, List<Product> products) {
        Map<String, String> facts = facts(block);
        zone(block, facts);
        days(block, facts);
        List<Message> notes = new ArrayList<>();
        nearMisses(block, notes);
        Map<String, Amount> order = new LinkedHashMap<>();
        if (block.hasMore("order")) {
            eachProduct(block, "order", products, "1300 gal", (map, key, product) -> {
                order.put(product.key(), AmountReader.amount(map, key, product));
            });
        }
        List<LoadTicket> tickets = items(
                block,
                "tickets",
                "one line for each, such as - {number: 48213, date: 2026-06-02, product: uan, weight: 14380 lb}",
                item -> {
                    day(item, item.textOr("date", ""));
                    return AmountReader.ticket(item, products);
                });
        Map<String, Price> prices = new LinkedHashMap<>();
        if (block.hasMore("price")) {
            eachProduct(block, "price", products, "1.85 USD/gal", (map, key, product) -> {
                prices.put(product.key(), PriceReader.read(map, key));
            });
        }
        AmountReader.noteDensities(tickets, products, notes);
        return new Job(
                facts,
                items(block, "earlier", EARLIER_ITEM, JobReader::earlier),
                items(block, "credits", CREDIT_ITEM, JobReader::credit),
                nitrogen(block, "plan"),
                nitrogen(block, "cap"),
                order,
                tickets,
                prices,
                notes);
    }

    /** Plain values as entered; what is left blank was not entered. */
    private static Map<String, String> facts(YamlMap block) {
        Map<String, String> facts = new LinkedHashMap<>();
        block.flat().forEach((key, value) -> {
            String first = key.substring(0, key.indexOf('.') < 0 ? key.length() : key.indexOf('.'));
            boolean figures = Job.FIGURES.contains(first) && !first.equals("plan") && !first.equals("cap");
            if (!figures && !value.isBlank()) {
                facts.put(key, value);
            }
        });
        return facts;
    }

    private static void zone(YamlMap block, Map<String, String> facts) {
        String zone = facts.get("zone");
        if (zone != null) {
            try {
                ZoneId.of(zone);
            } catch (DateTimeException e) {
                throw block.fault("zone", "\"" + zone + "\"")
                        .expected(
                                "a name of the time zone data base such as America/Chicago, or an offset such as -05:00")
                        .hint("correct it, or leave the line out to have times printed in UTC");
            }
        }
    }

    private static void days(YamlMap block, Map<String, String> facts) {
        for (Map.Entry<String, String> fact : facts.entrySet()) {
            if (CalendarDay.isImpossible(fact.getValue())) {
                throw noDay(block, fact.getKey(), fact.getValue());
            }
        }
    }

    private static void day(YamlMap item, String date) {
        if (CalendarDay.isImpossible(date)) {
            throw noDay(item, "date", date);
        }
    }

    private static UnusableInputException noDay(YamlMap map, String key, String date) {
        return map.fault(key, "\"" + date + "\", a day that no calendar has")
                .expected("a day such as 2026-06-02")
                .hint("correct the year, month or day, or take the line out");
    }

    private static void nearMisses(YamlMap block, List<Message> notes) {
        List<String> known = Job.keys();
        for (String key : block.keys()) {
            if (known.contains(key)) {
                continue;
            }
            NearestKey.of(key, known)
                    .filter(near -> LETTERS_FOR_EACH_SLIP * NearestKey.distance(lower(key), near)
                            < Math.max(key.length(), near.length()))
                    .ifPresent(near -> notes.add(Message.of("notes.job.near_miss", key, near)));
        }
    }

    private static String lower(String key) {
        return key.toLowerCase(java.util.Locale.ROOT);
    }

    private static EarlierApplication earlier(YamlMap item) {
        item.only("date", "what", "nitrogen", "phosphate", "potash", "sulfur", "rate", "density", "analysis");
        String date = item.text("date", "the day, such as 2026-04-12");
        day(item, date);
        String what = item.text("what", "what was spread, such as Starter");
        if (!item.has("rate")) {
            for (String key : List.of("density", "analysis")) {
                if (item.has(key)) {
                    throw item.fault(key, key + " without a rate")
                            .expected("rate, density and analysis together, or nitrogen alone")
                            .hint("add the rate, such as rate: 10 gal/ac");
                }
            }
            nitrogenNeeded(item);
            return new EarlierApplication(
                    date,
                    what,
                    nitrogen(item, "nitrogen"),
                    nutrient(item, "phosphate"),
                    nutrient(item, "potash"),
                    nutrient(item, "sulfur"),
                    item.text("nitrogen", "a weight per area"));
        }
        for (String key : List.of("nitrogen", "phosphate", "potash", "sulfur")) {
            if (item.has(key)) {
                throw item.fault(key, key + " beside a rate")
                        .expected("rate, density and analysis together, or nutrients alone")
                        .hint("take one of the two out");
            }
        }
        return fromRate(item, date, what);
    }

    /** Nutrients of a liquid by volume, density and analysis, or of a dry product by weight and analysis. */
    private static EarlierApplication fromRate(YamlMap item, String date, String what) {
        boolean dry = item.isQuantity("rate", Dimension.MASS_PER_AREA);
        double rate = item.quantity("rate", dry ? Dimension.MASS_PER_AREA : Dimension.RATE);
        if (rate < 0) {
            throw item.fault("rate", "\"" + item.text("rate", "a rate") + "\"")
                    .expected("a rate of zero or more")
                    .hint("write it without the minus sign");
        }
        item.text("analysis", "N-P2O5-K2O such as 10-34-0");
        double[] analysis = ProductReader.analysis(item, "analysis");
        double kgPerM2 = rate;
        String entered = item.text("rate", "a rate");
        if (!dry) {
            item.text("density", "a density such as 11.65 lb/gal");
            kgPerM2 = rate * ProductReader.density(item);
            entered += " at " + item.text("density", "a density");
        }
        reasonable(item, "rate", kgPerM2 * analysis[0]);
        return new EarlierApplication(
                date,
                what,
                kgPerM2 * analysis[0],
                kgPerM2 * analysis[1],
                kgPerM2 * analysis[2],
                kgPerM2 * analysis[3],
                entered + ", " + item.text("analysis", "an analysis").strip());
    }

    private static Credit credit(YamlMap item) {
        item.only("what", "nitrogen");
        String what = item.text("what", "where the nitrogen comes from");
        nitrogenNeeded(item);
        return new Credit(what, nitrogen(item, "nitrogen"), item.text("nitrogen", "a weight per area"));
    }

    private static void nitrogenNeeded(YamlMap item) {
        item.text("nitrogen", "a weight per area such as 30 lb/ac");
    }

    /** Nitrogen per area under a key, kg/m²; NaN where the key is not there. */
    private static double nitrogen(YamlMap map, String key) {
        double kgPerM2 = nutrient(map, key);
        reasonable(map, key, kgPerM2);
        return kgPerM2;
    }

    private static double nutrient(YamlMap map, String key) {
        if (!map.hasMore(key)) {
            return Double.NaN;
        }
        double kgPerM2 = map.quantity(key, Dimension.MASS_PER_AREA);
        if (kgPerM2 < 0) {
            throw map.fault(key, "\"" + map.text(key, "a weight per area") + "\"")
                    .expected("a weight per area of zero or more")
                    .hint("write it without the minus sign");
        }
        return kgPerM2;
    }

    private static void reasonable(YamlMap map, String key, double nitrogenKgPerM2) {
        if (nitrogenKgPerM2 > MAX_NITROGEN_KG_PER_M2) {
            throw map.fault(key, "\"" + map.text(key, "a figure") + "\", more nitrogen than any crop is given")
                    .expected("at most 1000 kg/ha (892 lb/ac) of nitrogen")
                    .hint("check the figure and its unit");
        }
    }

    private static <T> List<T> items(YamlMap block, String key, String what, Function<YamlMap, T> read) {
        List<T> items = new ArrayList<>();
        if (block.hasMore(key)) {
            List<org.snakeyaml.engine.v2.nodes.Node> nodes = block.list(key, what);
            for (int i = 0; i < nodes.size(); i++) {
                items.add(read.apply(block.item(key, i + 1, nodes.get(i))));
            }
        }
        return items;
    }

    /** Hears of a value for a product. */
    @FunctionalInterface
    private interface ForProduct {
        void accept(YamlMap map, String key, Product product);
    }

    /** A block with product keys, or one value where there is one product. */
    private static void eachProduct(
            YamlMap block, String key, List<Product> products, String example, ForProduct each) {
        if (!block.isBlock(key) && products.size() == 1) {
            each.accept(block, key, products.get(0));
            return;
        }
        YamlMap map = block.map(key, "a product's key and its figure");
        for (String product : map.keys()) {
            each.accept(map, product, product(map, product, product, products, example));
        }
    }

    /** The product of this key. */
    static Product product(YamlMap map, String at, String key, List<Product> products, String example) {
        List<String> keys = products.stream().map(Product::key).toList();
        int index = keys.indexOf(key);
        if (index >= 0) {
            return products.get(index);
        }
        UnusableInputException fault = map.fault(at, "\"" + key + "\", no product of this rig file")
                .expected("one of " + String.join(", ", keys));
        throw fault.hint(NearestKey.of(key, keys)
                .map(near -> "write " + near + " if that is what is meant")
                .orElse("write the product's key as it stands under products, such as " + keys.get(0)
                        + (example.isEmpty() ? "" : ": " + example)));
    }
}
