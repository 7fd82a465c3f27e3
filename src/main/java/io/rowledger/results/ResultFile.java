package io.rowledger.results;

import java.util.Locale;

/** The JSON files of results: name, schema id and schema, for writers, readers and tests. */
public enum ResultFile {
    SUMMARY("summary.json"),
    DIAGNOSIS("diagnosis.json"),
    NITROGEN_RECORD("nitrogen-record.json"),
    SETUP_CHECK("setup-check.json"),
    COMPARISON("comparison.json"),
    SEASON("season.json"),
    BATCH("batch-summary.json"),
    BATCH_LEDGER("batch-ledger.json");

    private static final int VERSION = 2;

    private final String fileName;

    ResultFile(String fileName) {
        this.fileName = fileName;
    }

    /** The file's name in the folder of results. */
    public String fileName() {
        return fileName;
    }

    /** The value of {@code schema} in the file, such as {@code rowledger-summary/2}. */
    public String schemaId() {
        return "rowledger-" + word() + "/" + VERSION;
    }

    /** True for the schema id of this file in any version of the program. */
    boolean isSchema(String id) {
        return id.matches("rowledger-" + word() + "/[0-9]+");
    }

    /** The JSON schema of the file, a resource of the jar. */
    public String schemaResource() {
        return "/schema/rowledger-" + word() + "-" + VERSION + ".schema.json";
    }

    private String word() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
