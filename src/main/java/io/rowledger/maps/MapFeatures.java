package io.rowledger.maps;

import io.rowledger.finding.UnusableInputException;
import io.rowledger.text.Message;
import io.rowledger.units.Dimension;
import io.rowledger.units.Quantity;
import io.rowledger.units.Reading;
import io.rowledger.units.Refusal;
import io.rowledger.units.Unit;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/**
 * What a map file holds, whatever its format.
 *
 * @param file where it came from, for messages
 * @param format what kind of file it is
 * @param features in the file's order
 * @param notes assumptions made about the file
 */
public record MapFeatures(String file, MapFormat format, List<MapFeature> features, List<Message> notes) {
    /** Copies the lists. */
    public MapFeatures {
        features = List.copyOf(features);
        notes = List.copyOf(notes);
    }

    /** The kinds of geometry in the file as its format calls them, each once. */
    public List<String> types() {
        return features.stream().flatMap(f -> f.types().stream()).distinct().toList();
    }

    /** The first feature's name that is there, or empty. */
    public String firstName() {
        return features.stream()
                .map(MapFeature::name)
                .filter(name -> !name.isEmpty())
                .findFirst()
                .orElse("");
    }

    /**
     * A figure with its unit among the properties of a feature: the text {@code "35 ft"} under {@code setback}, or the
     * number or text 35 under {@code setback[ft]} or {@code setback_ft}, as formats need it whose names hold no brackets.
     *
     * @return the figure in the program's own unit, or empty where the feature has no such property
     * @throws UnusableInputException where the figure has no unit or can't be read, or is there twice
     */
    public OptionalDouble quantity(MapFeature feature, String name, Dimension dimension) {
        List<MapProperty> found = new ArrayList<>(feature.called(name));
        for (MapProperty property : feature.properties()) {
            String unit = property.unitBehind(name);
            if (!unit.isEmpty() && Unit.find(unit, dimension).isPresent()) {
                found.add(
                        new MapProperty(name + "[" + unit + "]", property.text(), property.number(), property.line()));
            }
        }
        found.removeIf(p -> p.text().isBlank());
        if (found.isEmpty()) {
            return OptionalDouble.empty();
        }
        MapProperty property = found.get(0);
        if (found.size() > 1) {
            MapProperty second = found.get(1);
            throw fault(feature, second, "\"" + second.name() + "\" beside \"" + property.name() + "\"")
                    .expected("one " + name + " for each feature")
                    .hint("take one of the two out");
        }
        boolean bare = property.isNumber() && property.unit().isEmpty();
        if (bare) {
            throw fault(feature, property, property.text() + ", a number without a unit")
                    .expected(dimension.words() + " in " + dimension.unitsToWrite())
                    .hint("write the unit, as text such as \"" + dimension.example() + "\", or behind the name, as in "
                            + name + "[" + dimension.exampleUnit() + "]");
        }
        Reading reading = Quantity.read(text(property), dimension);
        if (reading instanceof Quantity quantity) {
            return OptionalDouble.of(quantity.si());
        }
        Refusal refusal = (Refusal) reading;
        throw fault(feature, property, refusal.found())
                .expected(refusal.expected())
                .hint(refusal.hint());
    }

    /** The figure with the unit of its name, where the value itself is a bare figure. */
    private static String text(MapProperty property) {
        String text = property.text().strip();
        boolean bare = property.isNumber() || Character.isDigit(text.charAt(text.length() - 1)) || text.endsWith(".");
        return bare && !property.unit().isEmpty() ? text + " " + property.unit() : text;
    }

    /** A message about a feature. */
    public UnusableInputException fault(MapFeature feature, String found) {
        return UnusableInputException.found(found + " (" + called(feature) + ")")
                .inFile(file)
                .atLine(feature.line());
    }

    /** A message about a property of a feature. */
    public UnusableInputException fault(MapFeature feature, MapProperty property, String found) {
        return fault(feature, found).atLine(property.line()).atColumn(property.name());
    }

    private static String called(MapFeature feature) {
        String name = feature.name();
        return "feature " + feature.number() + (name.isEmpty() ? "" : ", " + name);
    }
}
