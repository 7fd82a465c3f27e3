package io.rowledger.results;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import java.io.IOException;
import java.io.OutputStream;

/** A JSON file for programs that a person can read too: indented, the same line ends everywhere. */
final class JsonFile {
    private JsonFile() {}

    /** Writes the document's content. */
    interface Document {
        void write(JsonGenerator json) throws IOException;
    }

    static void write(OutputStream out, Document document) throws IOException {
        DefaultPrettyPrinter printer = new DefaultPrettyPrinter();
        DefaultIndenter lines = new DefaultIndenter("  ", "\n");
        printer.indentObjectsWith(lines);
        try (JsonGenerator json = new JsonFactory().createGenerator(out)) {
            json.disable(JsonGenerator.Feature.AUTO_CLOSE_TARGET);
            json.setPrettyPrinter(printer);
            json.writeStartObject();
            document.write(json);
            json.writeEndObject();
            json.writeRaw('\n');
        }
    }
}
