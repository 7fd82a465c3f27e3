package io.rowledger.document.text;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.io.StringReader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Properties;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The Spanish bundles beside the English ones: the same keys, the same values in them, and no English left. */
class SpanishBundlesTest {
    private static final Path FOLDER = Path.of("src/main/resources/io/rowledger/text");

    /** Keys whose text is the same in both languages though it has words: names, and words that Spanish shares. */
    private static final Set<String> SAME = Set.of("words.header.program", "words.fix.7", "words.summary.isNo");

    static List<String> translated() throws IOException {
        try (Stream<Path> files = Files.list(FOLDER)) {
            return files.map(file -> String.valueOf(file.getFileName()))
                    .filter(name -> name.endsWith("_es.properties"))
                    .map(name -> name.replace("_es.properties", ""))
                    .sorted()
                    .toList();
        }
    }

    @Test
    void what_the_help_promises_is_translated() throws IOException {
        List<String> lacking = new java.util.ArrayList<>(List.of(
                "cautions", "check", "compare", "findings", "notes", "page", "refusals", "review", "rows", "words"));
        lacking.removeAll(translated());
        assertEquals(List.of(), lacking);
    }

    @ParameterizedTest
    @MethodSource("translated")
    void every_english_key_has_its_spanish_one_and_none_is_left_over(String bundle) throws IOException {
        Map<String, String> english = bundle(bundle);
        Map<String, String> spanish = bundle(bundle + "_es");
        Set<String> missing = new TreeSet<>(english.keySet());
        missing.removeAll(spanish.keySet());
        assertEquals(Set.of(), missing, "missing in " + bundle + "_es.properties");
        Set<String> over = new TreeSet<>(spanish.keySet());
        over.removeAll(english.keySet());
        assertEquals(Set.of(), over, "left over in " + bundle + "_es.properties");
    }

    @ParameterizedTest
    @MethodSource("translated")
    void the_same_values_stand_in_both(String bundle) throws IOException {
        Map<String, String> spanish = bundle(bundle + "_es");
        Map<String, String> wrong = new TreeMap<>();
        bundle(bundle).forEach((key, text) -> {
            Set<String> in = slots(key, text);
            Set<String> out = slots(key, spanish.getOrDefault(key, text));
            if (!indexes(in).equals(indexes(out)) || !allowed(in).containsAll(out)) {
                wrong.put(key, in + " became " + out);
            }
        });
        assertEquals(Map.of(), wrong);
    }

    @ParameterizedTest
    @MethodSource("translated")
    void no_text_stayed_english(String bundle) throws IOException {
        Map<String, String> spanish = bundle(bundle + "_es");
        Set<String> same = new TreeSet<>();
        bundle(bundle).forEach((key, text) -> {
            String words = text.replaceAll("\\{[^{}]*}", "");
            if (text.equals(spanish.get(key)) && words.matches(".*\\p{L}{2}.*") && !SAME.contains(key)) {
                same.add(key);
            }
        });
        assertEquals(Set.of(), same);
    }

    /** A value may also be printed in its usual form, and be counted where the English text counts it. */
    private static Set<String> allowed(Set<String> english) {
        Set<String> allowed = new TreeSet<>(english);
        for (String slot : english) {
            String index = slot.substring(0, slot.indexOf(','));
            if (slot.endsWith(",plural") || slot.endsWith(",choice")) {
                allowed.add(index + ",plural");
                allowed.add(index + ",choice");
            }
        }
        return allowed;
    }

    private static Set<String> indexes(Set<String> slots) {
        return slots.stream().map(slot -> slot.substring(0, slot.indexOf(','))).collect(Collectors.toSet());
    }

    /** Index and style of every value in a pattern, those inside of choices too. */
    private static Set<String> slots(String key, String text) {
        Set<String> slots = new TreeSet<>();
        collect(MessagePattern.parse(key, text), slots);
        return slots;
    }

    private static void collect(MessagePattern pattern, Collection<String> slots) {
        for (MessagePattern.Part part : pattern.parts()) {
            if (part instanceof MessagePattern.Slot slot) {
                slots.add(slot.index() + "," + slot.style());
                slot.choices().forEach(choice -> collect(choice.pattern(), slots));
            }
        }
    }

    private static Map<String, String> bundle(String name) throws IOException {
        Properties properties = new Properties();
        properties.load(new StringReader(Files.readString(FOLDER.resolve(name + ".properties"))));
        Map<String, String> texts = new TreeMap<>();
        properties.stringPropertyNames().forEach(key -> texts.put(key, properties.getProperty(key)));
        return texts;
    }
}
