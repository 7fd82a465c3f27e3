package io.rowledger.analysis;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * What a person hands in for one field.
 *
 * @param logs one log or several of the same field
 * @param rig the rig file
 * @param boundary the field's outline, or null
 * @param prescription the map of target rates, or null
 * @param keepOut the places to keep away from, or null
 * @param setbackM distance to keep from places without one of their own, m; NaN if none was given
 */
public record JobFiles(
        List<Path> logs,
        Path rig,
        @Nullable Path boundary,
        @Nullable Path prescription,
        @Nullable Path keepOut,
        double setbackM) {
    /** Endings of logs, longest first. */
    private static final List<String> ENDINGS = List.of(
            ".csv.gz", ".tsv.gz", ".geojson", ".xlsx", ".gpkg", ".json", ".csv", ".tsv", ".txt", ".shp", ".zip", ".gz");

    /** Copies the logs. */
    public JobFiles {
        logs = List.copyOf(logs);
    }

    /** Without a prescription and places to keep away from. */
    public JobFiles(List<Path> logs, Path rig, @Nullable Path boundary) {
        this(logs, rig, boundary, null, null, Double.NaN);
    }

    /** Name of the first log without its endings: {@code north} for {@code logs/north.csv.gz}. */
    public String name() {
        return stem(logs.get(0));
    }

    /** Name of a log without folders and endings; the name of its folder for {@code TASKDATA.XML}. */
    public static String stem(Path log) {
        Path whole = log.toAbsolutePath().normalize();
        String name = String.valueOf(whole.getFileName());
        String lower = name.toLowerCase(Locale.ROOT);
        if (lower.equals("taskdata.xml") && whole.getParent() != null) {
            return String.valueOf(whole.getParent().getFileName());
        }
        for (String ending : ENDINGS) {
            if (lower.endsWith(ending) && lower.length() > ending.length()) {
                return name.substring(0, name.length() - ending.length());
            }
        }
        return name;
    }

    /** All of them. */
    public List<Path> all() {
        List<Path> all = new ArrayList<>(logs);
        all.add(rig);
        if (boundary != null) {
            all.add(boundary);
        }
        if (prescription != null) {
            all.add(prescription);
        }
        if (keepOut != null) {
            all.add(keepOut);
        }
        return all;
    }
}
