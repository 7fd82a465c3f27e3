package io.rowledger.workbench;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import io.rowledger.document.text.Messages;
import java.io.IOException;
import java.nio.file.Path;

/** Records to JSON and back. Unknown members are refused, so that a misspelled one is not lost. */
final class Json {
    private static final JsonMapper MAPPER = JsonMapper.builder()
            .enable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES)
            .serializationInclusion(JsonInclude.Include.ALWAYS)
            .build();

    private Json() {}

    /** A file in JSON. */
    static byte[] bytes(Object value) {
        try {
            return MAPPER.writeValueAsBytes(value);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("a record that can't be written as JSON", e);
        }
    }

    /** An answer in a reader's language, in which a {@link ProblemText} becomes its text. */
    static byte[] bytes(Object value, Messages language) {
        try {
            return MAPPER.writer().withAttribute(Messages.class, language).writeValueAsBytes(value);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("a record that can't be written as JSON", e);
        }
    }

    /** Reads a part of a file of this program's own. */
    static JsonNode tree(byte[] json) throws IOException {
        return MAPPER.readTree(json);
    }

    /** Reads a file of this program's own. */
    static JsonNode tree(Path file) throws IOException {
        return MAPPER.readTree(file.toFile());
    }

    static <T> T read(byte[] json, Class<T> type) {
        try {
            T value = MAPPER.readValue(json, type);
            if (value != null) {
                return value;
            }
        } catch (IOException e) {
            throw new HttpRefusal(HttpRefusal.BAD_REQUEST, "refusals.badJson", String.valueOf(e.getMessage()));
        }
        throw new HttpRefusal(HttpRefusal.BAD_REQUEST, "refusals.noJson");
    }
}
