package io.rowledger.results;

import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.databind.BeanProperty;
import com.fasterxml.jackson.databind.JsonSerializer;
import com.fasterxml.jackson.databind.SerializerProvider;
import com.fasterxml.jackson.databind.ser.ContextualSerializer;
import java.io.IOException;
import java.math.BigDecimal;
import org.jspecify.annotations.Nullable;

/** Writes numbers with the {@link Decimals} of their component. */
final class DecimalsSerializer extends JsonSerializer<Object> implements ContextualSerializer {
    private final int decimals;

    /** For Jackson, which asks {@link #createContextual} for the one to use. */
    DecimalsSerializer() {
        this(0);
    }

    private DecimalsSerializer(int decimals) {
        this.decimals = decimals;
    }

    @Override
    public JsonSerializer<?> createContextual(SerializerProvider provider, @Nullable BeanProperty property) {
        Decimals given = property == null ? null : property.getAnnotation(Decimals.class);
        return given == null ? this : new DecimalsSerializer(given.value());
    }

    @Override
    public void serialize(Object value, JsonGenerator json, SerializerProvider provider) throws IOException {
        if (value instanceof Double number) {
            write(number, json);
        } else if (value instanceof double[] row) {
            json.writeStartArray();
            for (double number : row) {
                write(number, json);
            }
            json.writeEndArray();
        } else {
            json.writeStartArray();
            for (double[] row : (double[][]) value) {
                serialize(row, json, provider);
            }
            json.writeEndArray();
        }
    }

    private void write(double value, JsonGenerator json) throws IOException {
        BigDecimal number = JsonNumbers.of(value, decimals);
        if (number == null) {
            json.writeNull();
        } else {
            json.writeNumber(number.toPlainString());
        }
    }
}
