package io.rowledger.run;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What a person hands in for one field.
 *
 * @param logs one log or several of the same field
 * @param rig the rig file
 * @param boundary the field's outline, or null
 * @param keepOut the places to keep away from, or null
 */
public record JobFiles(
        List<Path> logs,
        Path rig,
        @Nullable Path boundary,
        @Nullable Path keepOut) {
    /** Copies the logs. */
    public JobFiles {
        logs = List.copyOf(logs);
    }

    /** Without places to keep away from. */
    public JobFiles(List<Path> logs, Path rig, @Nullable Path boundary) {
        this(logs, rig, boundary, null);
    }

    /** All of them. */
    public List<Path> all() {
        List<Path> all = new ArrayList<>(logs);
        all.add(rig);
        if (boundary != null) {
            all.add(boundary);
        }
        if (keepOut != null) {
            all.add(keepOut);
        }
        return all;
    }
}
