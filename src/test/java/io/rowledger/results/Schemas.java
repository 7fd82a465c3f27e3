package io.rowledger.results;

import com.fasterxml.jackson.databind.JsonNode;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion;
import com.networknt.schema.ValidationMessage;
import java.io.IOException;
import java.io.InputStream;
import java.util.Set;

/** Holds results to their published JSON schemas (draft 2020-12), formats of times included. */
public final class Schemas {
    private Schemas() {}

    /** What the schema finds wrong with a document; empty where it keeps to it. */
    public static Set<ValidationMessage> faults(ResultFile file, JsonNode document) throws IOException {
        try (InputStream in = ResultFile.class.getResourceAsStream(file.schemaResource())) {
            return JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012)
                    .getSchema(in)
                    .validate(document, context -> context.getExecutionConfig().setFormatAssertionsEnabled(true));
        }
    }
}
