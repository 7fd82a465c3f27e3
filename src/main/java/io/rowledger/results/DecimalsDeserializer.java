package io.rowledger.results;

import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.databind.BeanProperty;
import com.fasterxml.jackson.databind.DeserializationContext;
import com.fasterxml.jackson.databind.JsonDeserializer;
import com.fasterxml.jackson.databind.JsonMappingException;
import com.fasterxml.jackson.databind.deser.ContextualDeserializer;
import com.fasterxml.jackson.databind.exc.MismatchedInputException;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Reads what {@link DecimalsSerializer} writes: numbers, {@code null} as NaN, arrays in one or two dimensions. */
final class DecimalsDeserializer extends JsonDeserializer<Object> implements ContextualDeserializer {
    private final Class<?> type;

    /** For Jackson, which asks {@link #createContextual} for the one to use. */
    DecimalsDeserializer() {
        this(double.class);
    }

    private DecimalsDeserializer(Class<?> type) {
        this.type = type;
    }

    @Override
    public JsonDeserializer<?> createContextual(DeserializationContext context, @Nullable BeanProperty property) {
        return property == null
                ? this
                : new DecimalsDeserializer(property.getType().getRawClass());
    }

    @Override
    public @Nullable Object getNullValue(DeserializationContext context) {
        return type == double.class ? Double.NaN : null;
    }

    @Override
    public Object deserialize(JsonParser json, DeserializationContext context) throws IOException {
        if (type == double.class) {
            return number(json);
        }
        return type == double[].class
                ? numbers(json)
                : list(json, DecimalsDeserializer::numbers).toArray(double[][]::new);
    }

    /** Reads the value the parser stands on. */
    private interface Element<T> {
        T read(JsonParser json) throws IOException;
    }

    private static double number(JsonParser json) throws IOException {
        if (json.currentToken() == JsonToken.VALUE_NULL) {
            return Double.NaN;
        }
        if (!json.currentToken().isNumeric()) {
            throw MismatchedInputException.from(json, double.class, "no number");
        }
        return json.getDoubleValue();
    }

    private static double[] numbers(JsonParser json) throws IOException {
        return list(json, DecimalsDeserializer::number).stream()
                .mapToDouble(Double::doubleValue)
                .toArray();
    }

    private static <T> List<T> list(JsonParser json, Element<T> element) throws IOException {
        if (json.currentToken() != JsonToken.START_ARRAY) {
            throw MismatchedInputException.from(json, List.class, "no list");
        }
        List<T> list = new ArrayList<>();
        while (json.nextToken() != JsonToken.END_ARRAY) {
            try {
                list.add(element.read(json));
            } catch (IOException e) {
                throw JsonMappingException.wrapWithPath(e, list, list.size());
            }
        }
        return list;
    }
}
