package io.rowledger.rig;

import io.rowledger.units.Dimension;
import io.rowledger.units.Unit;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** A price as people write it: {@code 1.85 USD/gal}, {@code $1.85/gal}, {@code 420 EUR per t}. */
final class PriceReader {
    private static final Pattern TEXT = Pattern.compile(
            "(?<before>[A-Za-z]{3}|\\p{Sc})?\\s*(?<figure>\\d+\\.?\\d*|\\.\\d+)\\s*(?<after>[A-Za-z]{3}|\\p{Sc})?"
                    + "\\s*(?:/|\\s+per\\s+)\\s*(?<unit>[A-Za-z0-9 ]+)");

    private PriceReader() {}

    static Price read(YamlMap map, String key) {
        String text = map.text(key, "a price such as 1.85 USD/gal").strip();
        Matcher matcher = TEXT.matcher(text);
        if (matcher.matches() && (matcher.group("before") == null) != (matcher.group("after") == null)) {
            String currency = matcher.group("before") == null ? matcher.group("after") : matcher.group("before");
            double figure = Double.parseDouble(matcher.group("figure"));
            String name = matcher.group("unit").strip();
            Optional<Unit> volume = Unit.find(name, Dimension.VOLUME);
            Optional<Unit> mass = Unit.find(name, Dimension.MASS);
            String code = currency.length() == 3 ? currency.toUpperCase(Locale.ROOT) : currency;
            if (volume.isPresent()) {
                return new Price(code, figure / volume.get().toSi(), Double.NaN, text);
            }
            if (mass.isPresent()) {
                return new Price(code, Double.NaN, figure / mass.get().toSi(), text);
            }
        }
        throw map.fault(key, "\"" + text + "\"")
                .expected("a price for a volume or a weight, such as 1.85 USD/gal or 420 EUR/t")
                .hint("write figure, currency, a stroke and the unit, decimals with a point");
    }
}
