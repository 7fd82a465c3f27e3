package io.rowledger.results;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.rowledger.finding.UnusableInputException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** Opens a JSON file in a folder of results. */
final class ResultFile {
    private ResultFile() {}

    /**
     * The file's content, checked to be an object of this schema.
     *
     * @throws UnusableInputException where the folder, or the file in it, isn't what {@code report} writes
     */
    static ResultValue open(Path folder, String name, String schemaId) {
        if (!Files.isDirectory(folder)) {
            throw UnusableInputException.found(Files.exists(folder) ? "a file" : "no such folder")
                    .inFile(folder.toString())
                    .expected("a folder of results")
                    .hint("name the folder that report wrote with --out");
        }
        Path file = folder.resolve(name);
        if (!Files.isRegularFile(file)) {
            throw UnusableInputException.found("no " + name)
                    .inFile(folder.toString())
                    .expected("a folder of results that report wrote")
                    .hint("run report on the log again with this version of the program");
        }
        ResultValue root = new ResultValue(file.toString(), "", tree(file));
        if (!root.node().isObject()) {
            throw new ResultValue(root.file(), "schema", root.node()).wrong("no object", "results of report");
        }
        ResultValue schema = root.at("schema");
        if (!schemaId.equals(schema.text())) {
            throw schema.wrong("'" + schema.text() + "'", "'" + schemaId + "'");
        }
        return root;
    }

    private static JsonNode tree(Path file) {
        try {
            return new ObjectMapper().readTree(Files.readAllBytes(file));
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
}
