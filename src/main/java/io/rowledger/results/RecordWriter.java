package io.rowledger.results;

import com.fasterxml.jackson.annotation.JsonProperty;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.io.OutputStream;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.lang.reflect.Field;
import java.lang.reflect.RecordComponent;
import java.math.BigDecimal;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.UnaryOperator;

/**
 * Writes records, and the lists, maps, arrays, texts, numbers and instants in them, as JSON. Components stand in their order; their
 * {@link Decimals}, {@link JsonProperty} and {@link JsonUnwrapped} are heeded, everything else of the library's annotations is not.
 * An object of another type is refused.
 *
 * <p>Jackson's data binding could do the same. It takes a fifteenth of a small job's processor time to set itself up, so
 * results are only read by it. Safe for several threads.
 */
public final class RecordWriter {
    private static final JsonFactory FACTORY =
            JsonFactory.builder().build().disable(JsonGenerator.Feature.AUTO_CLOSE_TARGET);

    /** Number of decimals of a component without {@link Decimals}: as {@code Double.toString} writes it. */
    private static final int AS_IT_IS = -1;

    private final UnaryOperator<String> names;
    private final UnaryOperator<String> texts;
    private final Map<Class<?>, List<Component>> known = new ConcurrentHashMap<>();

    /** A component of a record: its key, its value's field and how it is written. */
    private record Component(String key, Field field, int decimals, boolean unwrapped) {}

    /**
     * @param names component's name to key
     * @param texts what is done to every text but keys before it is written
     */
    public RecordWriter(UnaryOperator<String> names, UnaryOperator<String> texts) {
        this.names = names;
        this.texts = texts;
    }

    /** A generator without line ends; closing it leaves the stream open. */
    static JsonGenerator generator(OutputStream out) throws IOException {
        return FACTORY.createGenerator(out);
    }

    /** A value as JSON in one line. */
    public String text(Object value) {
        StringWriter text = new StringWriter();
        try (JsonGenerator json = FACTORY.createGenerator(text)) {
            write(json, value);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return text.toString();
    }

    /** Writes a value as the next one of a generator. */
    public void write(JsonGenerator json, Object value) throws IOException {
        write(json, value, AS_IT_IS);
    }

    private void write(JsonGenerator json, Object value, int decimals) throws IOException {
        if (value == null) {
            json.writeNull();
        } else if (value instanceof String text) {
            json.writeString(texts.apply(text));
        } else if (value instanceof Number number) {
            number(json, number, decimals);
        } else if (value instanceof Boolean truth) {
            json.writeBoolean(truth);
        } else if (value instanceof Record record) {
            json.writeStartObject();
            components(json, record);
            json.writeEndObject();
        } else if (value instanceof Iterable<?> values) {
            json.writeStartArray();
            for (Object each : values) {
                write(json, each, decimals);
            }
            json.writeEndArray();
        } else if (value instanceof Map<?, ?> map) {
            map(json, map);
        } else if (value.getClass().isArray()) {
            array(json, value, decimals);
        } else if (value instanceof Instant time) {
            json.writeString(time.toString());
        } else if (value instanceof Enum<?> constant) {
            json.writeString(constant.name());
        } else {
            throw new IllegalArgumentException(
                    "can't write a " + value.getClass().getName() + " as JSON");
        }
    }

    private static void number(JsonGenerator json, Number number, int decimals) throws IOException {
        if (number instanceof Double value) {
            if (decimals == AS_IT_IS) {
                json.writeNumber(value);
            } else {
                BigDecimal rounded = JsonNumbers.of(value, decimals);
                if (rounded == null) {
                    json.writeNull();
                } else {
                    json.writeNumber(rounded.toPlainString());
                }
            }
        } else if (number instanceof Integer value) {
            json.writeNumber(value);
        } else if (number instanceof Long value) {
            json.writeNumber(value);
        } else {
            throw new IllegalArgumentException(
                    "can't write a " + number.getClass().getName() + " as JSON");
        }
    }

    private void map(JsonGenerator json, Map<?, ?> map) throws IOException {
        json.writeStartObject();
        for (Map.Entry<?, ?> entry : map.entrySet()) {
            json.writeFieldName((String) entry.getKey());
            write(json, entry.getValue(), AS_IT_IS);
        }
        json.writeEndObject();
    }

    private void array(JsonGenerator json, Object array, int decimals) throws IOException {
        json.writeStartArray();
        if (array instanceof double[] values) {
            for (double value : values) {
                number(json, value, decimals);
            }
        } else if (array instanceof int[] values) {
            for (int value : values) {
                json.writeNumber(value);
            }
        } else {
            for (Object each : (Object[]) array) {
                write(json, each, decimals);
            }
        }
        json.writeEndArray();
    }

    private void components(JsonGenerator json, Record record) throws IOException {
        List<Component> components = known.get(record.getClass());
        if (components == null) {
            components = components(record.getClass());
            known.put(record.getClass(), components);
        }
        for (Component component : components) {
            Object value = value(component.field, record);
            if (component.unwrapped) {
                components(json, (Record) value);
            } else {
                json.writeFieldName(component.key);
                write(json, value, component.decimals);
            }
        }
    }

    private List<Component> components(Class<?> type) {
        List<Component> components = new ArrayList<>();
        for (RecordComponent component : type.getRecordComponents()) {
            try {
                Field field = type.getDeclaredField(component.getName());
                field.setAccessible(true);
                JsonProperty given = field.getAnnotation(JsonProperty.class);
                Decimals decimals = field.getAnnotation(Decimals.class);
                components.add(new Component(
                        given == null ? names.apply(component.getName()) : given.value(),
                        field,
                        decimals == null ? AS_IT_IS : decimals.value(),
                        field.isAnnotationPresent(JsonUnwrapped.class)));
            } catch (NoSuchFieldException e) {
                throw new IllegalStateException("a record without the field of a component", e);
            }
        }
        return components;
    }

    /** The field is read and not its accessor called: Java makes a class for each method that is called often by reflection. */
    private static Object value(Field field, Record record) {
        try {
            return field.get(record);
        } catch (IllegalAccessException e) {
            throw new IllegalStateException("a field that was made accessible", e);
        }
    }
}
