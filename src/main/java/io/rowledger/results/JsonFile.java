package io.rowledger.results;

import com.fasterxml.jackson.annotation.JsonSetter;
import com.fasterxml.jackson.annotation.Nulls;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.databind.DeserializationContext;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonDeserializer;
import com.fasterxml.jackson.databind.JsonMappingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.JsonSerializer;
import com.fasterxml.jackson.databind.MapperFeature;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializerProvider;
import com.fasterxml.jackson.databind.cfg.CoercionAction;
import com.fasterxml.jackson.databind.cfg.CoercionInputShape;
import com.fasterxml.jackson.databind.exc.MismatchedInputException;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.module.SimpleModule;
import com.fasterxml.jackson.databind.type.LogicalType;
import io.rowledger.finding.RegularFile;
import io.rowledger.finding.UnusableInputException;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.format.DateTimeParseException;
import java.util.List;

/**
 * Writes records as JSON and reads them back. Keys are the names of the components ({@link JsonNames}) in their order,
 * numbers have the decimals of their {@link Decimals}, instants are ISO 8601 in UTC, what isn't known is {@code null} and
 * never left out. Files are UTF-8, indented by objects, with line feeds on every machine.
 */
final class JsonFile {
    /** A season of a thousand fields has some 20 MB. */
    private static final int MAX_BYTES = 256 << 20;

    private static final ObjectMapper MAPPER = mapper();

    private JsonFile() {}

    /**
     * A file that was read.
     *
     * @param file its name, for messages
     * @param tree its content as it stands there
     * @param content the same as a record
     */
    record Read<T>(String file, JsonNode tree, T content) {
        /** The refusal of what stands at a path such as {@code rows[3].products}. */
        UnusableInputException wrong(String path, String expected) {
            return refused(file, path, tree, expected);
        }
    }

    /** Finds out how records of this type and all within them are written. */
    static void prepare(Class<?> type) {
        MAPPER.writerFor(type);
    }

    /** Writes a record. The stream stays open. */
    static void write(Object document, OutputStream out) throws IOException {
        DefaultPrettyPrinter printer = new DefaultPrettyPrinter();
        printer.indentObjectsWith(new DefaultIndenter("  ", "\n"));
        try (JsonGenerator json = MAPPER.createGenerator(out)) {
            json.setPrettyPrinter(printer);
            MAPPER.writeValue(json, document);
            json.writeRaw('\n');
        }
    }

    /** Writes a record as the next value of a generator that was made by {@link #generator}. */
    static void writeInto(JsonGenerator json, Object value) throws IOException {
        MAPPER.writeValue(json, value);
    }

    /** A generator without line ends that leaves the stream open. */
    static JsonGenerator generator(OutputStream out) throws IOException {
        return MAPPER.createGenerator(out);
    }

    /** True where a killed run has left these results between two renames: under {@code .NAME.rowledger/old}. */
    private static boolean isAway(Path folder) {
        Path name = folder.toAbsolutePath().normalize().getFileName();
        return name != null
                && Files.isDirectory(folder.toAbsolutePath()
                        .normalize()
                        .resolveSibling("." + name + ".rowledger")
                        .resolve("old"));
    }

    /**
     * The content of a file of results.
     *
     * @throws UnusableInputException where the folder, or the file in it, isn't what this program writes
     */
    static <T> Read<T> read(Path folder, ResultFile kind, Class<T> type) {
        Path file = file(folder, kind);
        String name = file.toString();
        JsonNode tree = tree(file);
        String schema = tree.path("schema").asText();
        if (!kind.schemaId().equals(schema)) {
            throw refused(name, "schema", tree, "\"" + kind.schemaId() + "\"");
        }
        try {
            return new Read<>(name, tree, MAPPER.readerFor(type).readValue(tree));
        } catch (MismatchedInputException e) {
            throw refused(name, path(e), tree, expected(e.getTargetType()));
        } catch (JsonMappingException e) {
            throw refused(name, path(e), tree, "what report writes there");
        } catch (IOException e) {
            throw new IllegalStateException("a tree in memory", e);
        }
    }

    /** The file of results in a folder. */
    private static Path file(Path folder, ResultFile kind) {
        if (!Files.isDirectory(folder)) {
            throw UnusableInputException.found(Files.exists(folder) ? "a file" : "no such folder")
                    .inFile(folder.toString())
                    .expected("a folder of results")
                    .hint(
                            isAway(folder)
                                    ? "a run ended while it replaced these results; call that command again, and they are back"
                                    : "name the folder that report wrote with --out");
        }
        Path file = folder.resolve(kind.fileName());
        if (!Files.isRegularFile(file)) {
            throw UnusableInputException.found("no " + kind.fileName())
                    .inFile(folder.toString())
                    .expected("a folder of results that report wrote")
                    .hint("run report on the log again with this version of the program");
        }
        return file;
    }

    /**
     * A file of results as it stands there, of this version of the program or another.
     *
     * @throws UnusableInputException where the folder, or the file in it, isn't what this program writes
     */
    static JsonNode ofAnyVersion(Path folder, ResultFile kind) {
        Path file = file(folder, kind);
        JsonNode tree = tree(file);
        if (!kind.isSchema(tree.path("schema").asText())) {
            throw refused(file.toString(), "schema", tree, "\"" + kind.schemaId() + "\"");
        }
        return tree;
    }

    private static JsonNode tree(Path file) {
        try {
            return MAPPER.readTree(RegularFile.bytes(file, MAX_BYTES, "what report wrote"));
        } catch (JsonProcessingException e) {
            throw UnusableInputException.found("no well-formed JSON: " + e.getOriginalMessage())
                    .inFile(file.toString())
                    .atLine(e.getLocation() == null ? 0 : e.getLocation().getLineNr())
                    .expected("what report wrote")
                    .hint("run report on the log again");
        } catch (IOException e) {
            throw UnusableInputException.found("a file that can't be read (" + e.getMessage() + ")")
                    .inFile(file.toString())
                    .hint("check that the file is readable");
        }
    }

    private static UnusableInputException refused(String file, String path, JsonNode tree, String expected) {
        String pointer = path.isEmpty() ? "" : "/" + path.replace("]", "").replaceAll("[\\[.]", "/");
        JsonNode at = tree.at(pointer);
        String text = at.toString();
        String found = at.isMissingNode() ? "nothing" : text.length() > 60 ? text.substring(0, 60) + "..." : text;
        return UnusableInputException.found(found)
                .inFile(file)
                .atColumn(path)
                .expected(expected)
                .hint("run report on the log again, and leave its results as they are");
    }

    private static String path(JsonMappingException e) {
        StringBuilder path = new StringBuilder();
        for (JsonMappingException.Reference step : e.getPath()) {
            if (step.getFieldName() == null) {
                path.append('[').append(step.getIndex()).append(']');
            } else {
                path.append(path.isEmpty() ? "" : ".").append(step.getFieldName());
            }
        }
        return path.toString();
    }

    private static String expected(Class<?> type) {
        if (type == double.class) {
            return "a number or null";
        }
        if (type == int.class || type == long.class || type == Integer.class) {
            return "a whole number";
        }
        if (type == boolean.class) {
            return "true or false";
        }
        if (type == String.class) {
            return "text";
        }
        if (type == Instant.class) {
            return "a time such as 2026-06-14T13:00:00Z";
        }
        return type != null && List.class.isAssignableFrom(type) ? "a list" : "what report writes there";
    }

    private static ObjectMapper mapper() {
        SimpleModule times = new SimpleModule();
        times.addSerializer(Instant.class, new InstantSerializer());
        times.addDeserializer(Instant.class, new InstantDeserializer());
        JsonMapper mapper = JsonMapper.builder()
                .propertyNamingStrategy(new JsonNames())
                .addModule(times)
                .disable(MapperFeature.ALLOW_COERCION_OF_SCALARS)
                .disable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES, DeserializationFeature.ACCEPT_FLOAT_AS_INT)
                .enable(
                        DeserializationFeature.FAIL_ON_MISSING_CREATOR_PROPERTIES,
                        DeserializationFeature.FAIL_ON_NULL_FOR_PRIMITIVES)
                .disable(JsonGenerator.Feature.AUTO_CLOSE_TARGET)
                .withCoercionConfig(LogicalType.Textual, config -> {
                    config.setCoercion(CoercionInputShape.Integer, CoercionAction.Fail);
                    config.setCoercion(CoercionInputShape.Float, CoercionAction.Fail);
                    config.setCoercion(CoercionInputShape.Boolean, CoercionAction.Fail);
                })
                .build();
        mapper.setDefaultSetterInfo(JsonSetter.Value.forValueNulls(Nulls.FAIL, Nulls.FAIL));
        return mapper;
    }

    /** ISO 8601 in UTC, to the millisecond where there is one. */
    private static final class InstantSerializer extends JsonSerializer<Instant> {
        @Override
        public void serialize(Instant time, JsonGenerator json, SerializerProvider provider) throws IOException {
            json.writeString(time.toString());
        }
    }

    private static final class InstantDeserializer extends JsonDeserializer<Instant> {
        @Override
        public Instant deserialize(JsonParser json, DeserializationContext context) throws IOException {
            try {
                return Instant.parse(json.getText());
            } catch (DateTimeParseException e) {
                throw MismatchedInputException.from(json, Instant.class, "no time");
            }
        }
    }
}
