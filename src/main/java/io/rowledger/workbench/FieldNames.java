package io.rowledger.workbench;

import java.util.List;

/** Names of fields: folders below the season folder, {@code /} between them. */
final class FieldNames {
    /** Deepest folder of a field below the season folder. */
    private static final int MAX_DEPTH = 4;

    private FieldNames() {}

    /**
     * Returns the folders of a field.
     *
     * @throws HttpRefusal if the name is not allowed
     */
    static List<String> parts(String field) {
        List<String> parts = List.of(field.split("/", -1));
        parts.forEach(SeasonFolder::requireName);
        if (parts.size() > MAX_DEPTH
                || parts.get(0).equals(SeasonFolder.RESULTS)
                || parts.get(0).equals("bars")) {
            throw new HttpRefusal(HttpRefusal.BAD_REQUEST, "refusals.field.name", field);
        }
        return parts;
    }
}
