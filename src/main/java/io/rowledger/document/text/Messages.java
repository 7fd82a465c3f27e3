package io.rowledger.document.text;

import io.rowledger.text.Argument;
import io.rowledger.text.Message;
import io.rowledger.units.UnitFormat;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Properties;
import java.util.TreeMap;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * The words of one language, with values in one unit system. The first part of a key names its bundle:
 * {@code findings.plugged.title} stands in {@code io/rowledger/text/findings.properties}, in Spanish in
 * {@code findings_es.properties}; what a language lacks is printed in English. The machine's locale plays no part.
 */
public final class Messages {
    private static final String FOLDER = "/io/rowledger/text/";

    /** Parsed bundles by file name; they never change. */
    private static final Map<String, Map<String, MessagePattern>> BUNDLES = new ConcurrentHashMap<>();

    private final ArgumentFormat format;

    /** Words of the units' language with values in these units. */
    public Messages(UnitFormat units) {
        this.format = new ArgumentFormat(this, units);
    }

    /** English words with values in these units. */
    public static Messages english(UnitFormat units) {
        return new Messages(units.in(Locale.ENGLISH));
    }

    /** The language, for the {@code lang} attribute of a page. */
    public Locale language() {
        return units().language();
    }

    /** The units and time zone in which values are printed. */
    public UnitFormat units() {
        return format.units();
    }

    /**
     * The text of a key with these values; see {@link Message#of}.
     *
     * @throws IllegalStateException where no bundle has the key, or the pattern wants a value that isn't there: our bug
     */
    public String text(String key, Object... values) {
        return text(Message.of(key, values));
    }

    /**
     * The text of a message.
     *
     * @throws IllegalStateException where no bundle has the key, or the pattern wants a value that isn't there: our bug
     */
    public String text(Message message) {
        MessagePattern pattern = bundle(message.key()).get(message.key());
        if (pattern == null) {
            pattern = english(message.key()).get(message.key());
        }
        if (pattern == null) {
            throw new IllegalStateException("no message " + message.key() + " in " + file(message.key()));
        }
        StringBuilder text = new StringBuilder();
        fill(pattern, message, text);
        return text.toString();
    }

    /** The texts of several messages, in their order. */
    public List<String> texts(List<Message> messages) {
        return messages.stream().map(this::text).toList();
    }

    /** Whether a bundle has the key. */
    public boolean has(String key) {
        return bundle(key).containsKey(key);
    }

    /** Whether a bundle has the key or a longer one that begins with it and a dot. */
    public boolean hasPrefix(String key) {
        return Stream.of(bundle(key), english(key))
                .flatMap(bundle -> bundle.keySet().stream())
                .anyMatch(other -> other.equals(key) || other.startsWith(key + "."));
    }

    /** The messages of a bundle that hold no values, by key in ascending order. */
    public Map<String, String> plain(String bundle) {
        Map<String, String> texts = new TreeMap<>();
        bundle(bundle + ".").forEach((key, pattern) -> {
            if (pattern.parts().stream().allMatch(MessagePattern.Literal.class::isInstance)) {
                texts.put(key, text(key));
            }
        });
        return texts;
    }

    private void fill(MessagePattern pattern, Message message, StringBuilder out) {
        for (MessagePattern.Part part : pattern.parts()) {
            if (part instanceof MessagePattern.Literal literal) {
                out.append(literal.text());
            } else if (part instanceof MessagePattern.Slot slot) {
                Argument argument = argument(message, slot.index());
                if (slot.choices().isEmpty()) {
                    out.append(format.text(argument, slot.style()));
                } else {
                    fill(chosen(slot, ArgumentFormat.chooser(argument)), message, out);
                }
            }
        }
    }

    private static Argument argument(Message message, int index) {
        if (index >= message.arguments().size()) {
            throw new IllegalStateException("message " + message.key() + " lacks argument " + index);
        }
        return message.arguments().get(index);
    }

    private static MessagePattern chosen(MessagePattern.Slot slot, double value) {
        if (slot.style().equals("plural")) {
            return slot.choices().get(value == 1 ? 0 : 1).pattern();
        }
        MessagePattern chosen = slot.choices().get(0).pattern();
        for (MessagePattern.Choice choice : slot.choices()) {
            if (choice.holds(value)) {
                chosen = choice.pattern();
            }
        }
        return chosen;
    }

    private Map<String, MessagePattern> bundle(String key) {
        return BUNDLES.computeIfAbsent(file(key), Messages::load);
    }

    private static Map<String, MessagePattern> english(String key) {
        return BUNDLES.computeIfAbsent(file(key, ""), Messages::load);
    }

    private String file(String key) {
        String code = language().getLanguage();
        return file(key, code.equals("en") ? "" : "_" + code);
    }

    private static String file(String key, String suffix) {
        int dot = key.indexOf('.');
        return (dot < 0 ? key : key.substring(0, dot)) + suffix + ".properties";
    }

    /** The patterns of a bundle by key; none where there is no such file. */
    private static Map<String, MessagePattern> load(String file) {
        Properties properties = new Properties();
        try (@Nullable InputStream in = Messages.class.getResourceAsStream(FOLDER + file)) {
            if (in != null) {
                properties.load(new InputStreamReader(in, StandardCharsets.UTF_8));
            }
        } catch (IOException e) {
            throw new UncheckedIOException("reading " + file, e);
        }
        Map<String, MessagePattern> patterns = new HashMap<>();
        for (String key : properties.stringPropertyNames()) {
            patterns.put(key, MessagePattern.parse(key, properties.getProperty(key)));
        }
        return Map.copyOf(patterns);
    }
}
