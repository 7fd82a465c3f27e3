package io.rowledger.field;

import io.rowledger.maps.MapFeature;
import io.rowledger.maps.MapFeatures;
import io.rowledger.maps.MapProperty;
import io.rowledger.rig.Product;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** The attributes of a map with one value each, to show a person what to choose from. */
final class AttributeList {
    /** A number as some programs write it into a table: 1.80297e+004. */
    private static final Pattern EXPONENT = Pattern.compile("[-+]?\\d(?:\\.\\d+)?[eE][-+]?0*\\d{1,2}");

    /** Attributes shown in a message; a file may have a hundred. */
    private static final int MAX_SHOWN = 12;
    /** Characters of a value shown in a message. */
    private static final int MAX_VALUE = 24;
    /** Length of an attribute name in a shapefile's table. */
    private static final int DBF_NAME = 10;

    private static final Pattern SEPARATORS = Pattern.compile("[\\s_\\-]+");
    private static final Pattern LIKE_A_RATE =
            Pattern.compile("rate|target|tgt|gal|gpa|lha|vol|appl|rx|dose|presc|set", Pattern.CASE_INSENSITIVE);
    /** Names of running numbers. */
    private static final Pattern COUNTER = Pattern.compile("(object|short|[fgou])?id\\d*|number|nr|no");

    private static final Pattern PLAIN_WORD = Pattern.compile("[A-Za-z_][A-Za-z0-9_.-]*");

    private final Map<String, List<MapProperty>> values = new LinkedHashMap<>();

    AttributeList(MapFeatures source) {
        for (MapFeature feature : source.features()) {
            for (MapProperty property : feature.properties()) {
                values.computeIfAbsent(property.name(), name -> new ArrayList<>())
                        .add(property);
            }
        }
    }

    boolean isEmpty() {
        return values.isEmpty();
    }

    /** True if some feature has the attribute. */
    boolean has(String wanted) {
        return values.keySet().stream().anyMatch(name -> same(name, wanted));
    }

    /** The feature's attribute of this name; null without one. */
    @Nullable
    MapProperty find(MapFeature feature, String wanted) {
        for (MapProperty property : feature.properties()) {
            if (property.name().equals(wanted)) {
                return property;
            }
        }
        for (MapProperty property : feature.properties()) {
            if (same(property.name(), wanted)) {
                return property;
            }
        }
        return null;
    }

    /** Case, blanks, underscores and hyphens make no difference; a shapefile keeps the first 10 characters. */
    private static boolean same(String name, String wanted) {
        String a = plain(name);
        String b = plain(wanted);
        boolean cut = name.length() == DBF_NAME && wanted.length() > DBF_NAME;
        return a.equals(b) || (cut && plain(wanted.substring(0, DBF_NAME)).equals(a));
    }

    private static String plain(String name) {
        return SEPARATORS.matcher(name.toLowerCase(Locale.ROOT)).replaceAll("");
    }

    boolean hasNumbers() {
        return values.values().stream().anyMatch(AttributeList::isNumeric);
    }

    private static boolean isNumeric(List<MapProperty> column) {
        return column.stream().allMatch(property -> property.isNumber() || ZoneRates.isFigure(property.text()));
    }

    /** Every attribute with its first value: {@code Id (0), Y99 (42.5)}. */
    String words() {
        String shown = values.entrySet().stream()
                .limit(MAX_SHOWN)
                .map(entry ->
                        entry.getKey() + " (" + cut(entry.getValue().get(0).shortText()) + ")")
                .collect(Collectors.joining(", "));
        int more = values.size() - MAX_SHOWN;
        return more > 0 ? shown + " and " + more + " more" : shown;
    }

    private static String cut(String text) {
        String plain = text.strip();
        if (EXPONENT.matcher(plain).matches()) {
            plain = new BigDecimal(plain).toPlainString();
        }
        return plain.length() > MAX_VALUE ? plain.substring(0, MAX_VALUE) + "\u2026" : plain;
    }

    /** The rig file's lines with this map's likeliest attribute: {@code prescription: {rate: Y99, unit: gal/ac}}. */
    String lines(List<Product> products) {
        List<String> rates = likeliest(products);
        if (products.size() == 1) {
            return "prescription: {rate: " + rates.get(0) + ", unit: gal/ac}";
        }
        List<String> each = new ArrayList<>();
        for (int p = 0; p < products.size(); p++) {
            each.add(products.get(p).key() + ": " + rates.get(Math.min(p, rates.size() - 1)));
        }
        return "prescription: {rate: {" + String.join(", ", each) + "}, unit: gal/ac}";
    }

    /** The attributes with numbers as YAML writes them, likeliest first; {@code Rate} if there are none. */
    private List<String> likeliest(List<Product> products) {
        List<String> names = values.entrySet().stream()
                .filter(entry -> isNumeric(entry.getValue()))
                .sorted(Comparator.comparingInt(entry -> rank(entry.getKey(), entry.getValue(), products)))
                .map(entry -> yaml(entry.getKey()))
                .toList();
        return names.isEmpty() ? List.of("Rate") : names;
    }

    /** 0 for a name like a rate's or a product's, 1 for values that vary, 2 for others, 3 for what counts the rows. */
    private static int rank(String name, List<MapProperty> column, List<Product> products) {
        String plain = plain(name);
        if (COUNTER.matcher(plain).matches()) {
            return 3;
        }
        boolean product = products.stream()
                .anyMatch(one ->
                        plain.contains(plain(one.key())) || plain(one.name()).startsWith(plain));
        if (product || LIKE_A_RATE.matcher(name).find()) {
            return 0;
        }
        return column.stream().map(MapProperty::text).distinct().count() > 1 ? 1 : 2;
    }

    /** The name as YAML writes it, in quotes if it needs them. */
    static String yaml(String name) {
        return PLAIN_WORD.matcher(name).matches() ? name : "\"" + name.replace("\"", "\\\"") + "\"";
    }
}
