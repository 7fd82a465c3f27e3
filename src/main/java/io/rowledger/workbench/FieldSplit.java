package io.rowledger.workbench;

import io.rowledger.batch.FieldFiles;
import io.rowledger.log.LogCut;
import io.rowledger.log.LogSurvey;
import io.rowledger.log.header.LogOptions;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Makes several fields of one whose work lies in places far from each other. The field keeps the first place; each other place
 * becomes a field with the same rig file. A log of several places is cut, and the whole one goes to the dated folder.
 */
final class FieldSplit {
    private final FieldStore store;
    private final Surveys surveys;

    FieldSplit(FieldStore store, Surveys surveys) {
        this.store = store;
        this.surveys = surveys;
    }

    /** The fields that there are now, the one of before first. */
    record Split(List<String> fields) {}

    /**
     * Splits a field.
     *
     * @throws HttpRefusal if its work lies in one place
     */
    Split split(String name) throws IOException {
        FieldFiles field = store.field(name);
        LogOptions options = FieldStore.logOptions(field);
        WorkPlaces places = new WorkPlaces();
        Map<Path, Set<Integer>> placesOf = new LinkedHashMap<>();
        List<LogSurvey> all = new ArrayList<>();
        for (Path log : field.logs()) {
            all.add(surveys.of(log, options, Surveys.spacingM(store.rig(field))));
        }
        all.forEach(places::add);
        if (places.count() < 2) {
            throw new HttpRefusal(HttpRefusal.CONFLICT, "refusals.split.one", name);
        }
        for (int i = 0; i < all.size(); i++) {
            placesOf.put(field.logs().get(i), places.of(all.get(i)));
        }
        // All cuts are tried before a file is touched: one that can't be cut leaves everything as it is.
        Map<Path, List<LogCut>> cuts = new LinkedHashMap<>();
        for (Map.Entry<Path, Set<Integer>> log : placesOf.entrySet()) {
            if (log.getValue().size() > 1) {
                cuts.put(log.getKey(), LogCut.of(log.getKey(), options, places::of));
            }
        }
        List<String> fields = make(field, places.count());
        for (Map.Entry<Path, Set<Integer>> log : placesOf.entrySet()) {
            List<LogCut> cut = cuts.get(log.getKey());
            if (cut != null) {
                cut(field, log.getKey(), cut, fields);
            } else if (!log.getValue().isEmpty()) {
                String to = fields.get(log.getValue().iterator().next());
                for (Path part : field.parts(log.getKey())) {
                    move(part, to, name);
                }
            }
        }
        return new Split(fields);
    }

    /** Makes the new fields, each with the rig file of the old one but for the name of the field. */
    private List<String> make(FieldFiles field, int count) throws IOException {
        List<String> taken = store.all().stream().map(FieldFiles::name).toList();
        List<String> fields = new ArrayList<>(List.of(field.name()));
        RigTree rig = store.rig(field);
        Map<String, Object> job = new LinkedHashMap<>(rig.block("job"));
        job.remove("field");
        byte[] text = rig.with("job", job).yaml().getBytes(StandardCharsets.UTF_8);
        for (int n = 2; fields.size() < count; n++) {
            String name = field.name() + " " + n;
            if (!taken.contains(name)) {
                store.make(name);
                fields.add(name);
                if (field.rig() != null) {
                    store.folder().write(place(name, FieldStore.RIG), out -> out.write(text));
                }
            }
        }
        return fields;
    }

    private void cut(FieldFiles field, Path log, List<LogCut> cuts, List<String> fields) throws IOException {
        String file = String.valueOf(log.getFileName());
        for (LogCut cut : cuts) {
            for (int k = 0; k < fields.size(); k++) {
                int part = k;
                if (cut.has(part)) {
                    String name = stem(file) + (cut.name().isEmpty() ? "" : " " + cut.name()) + " part " + (part + 1)
                            + cut.ending(file);
                    store.folder().replace(place(fields.get(part), name), out -> cut.writeTo(part, out));
                }
            }
        }
        for (Path part : field.parts(log)) {
            store.folder().putAway(part);
        }
    }

    /** A file's name without the endings of its form and its packing. */
    private static String stem(String file) {
        String stem = file.replaceFirst("(?i)(?<=.)\\.(gz|zip)$", "");
        int dot = stem.lastIndexOf('.');
        return dot < 1 ? stem : stem.substring(0, dot);
    }

    private void move(Path log, String to, String from) throws IOException {
        if (!to.equals(from)) {
            Files.move(
                    log,
                    store.folder().inside(place(to, String.valueOf(log.getFileName()))),
                    StandardCopyOption.ATOMIC_MOVE);
        }
    }

    private static List<String> place(String field, String file) {
        List<String> place = new ArrayList<>(FieldNames.parts(field));
        place.add(file);
        return place;
    }
}
