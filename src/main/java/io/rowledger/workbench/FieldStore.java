package io.rowledger.workbench;

import io.rowledger.batch.FieldFiles;
import io.rowledger.log.header.LogOptions;
import io.rowledger.rig.RigReader;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** The fields of the season folder: what is there, and the rig file of each. */
final class FieldStore {
    static final String RIG = "rig.yaml";

    private final SeasonFolder folder;

    FieldStore(SeasonFolder folder) {
        this.folder = folder;
    }

    SeasonFolder folder() {
        return folder;
    }

    /** All fields by name: folders with logs, and empty folders beside them. */
    List<FieldFiles> all() throws IOException {
        List<FieldFiles> fields = new ArrayList<>(FieldFiles.of(folder.root(), folder.results()));
        try (java.util.stream.Stream<Path> entries = Files.list(folder.root())) {
            for (Path entry : entries.sorted().toList()) {
                String name = String.valueOf(entry.getFileName());
                boolean own = Files.isDirectory(entry, LinkOption.NOFOLLOW_LINKS)
                        && !name.startsWith(".")
                        && !name.equals(SeasonFolder.RESULTS)
                        && !name.equals(SavedBars.FOLDER);
                boolean known = fields.stream().anyMatch(field -> field.folder().startsWith(entry));
                if (own && !known) {
                    fields.add(new FieldFiles(name, entry, List.of(), rigAbove(entry), null, null, null, List.of()));
                }
            }
        }
        fields.sort((a, b) -> a.name().compareToIgnoreCase(b.name()));
        return fields;
    }

    private @Nullable Path rigAbove(Path field) {
        for (Path at = field; at != null && at.startsWith(folder.root()); at = at.getParent()) {
            if (Files.isRegularFile(at.resolve(RIG), LinkOption.NOFOLLOW_LINKS)) {
                return at.resolve(RIG);
            }
        }
        return null;
    }

    /**
     * Returns a field.
     *
     * @throws HttpRefusal if there is none of this name, or a link lies in it
     */
    FieldFiles field(String name) throws IOException {
        List<String> parts = FieldNames.parts(name);
        folder.inside(parts);
        Path link = folder.firstLink(parts);
        if (link != null) {
            throw new HttpRefusal(
                    HttpRefusal.FORBIDDEN,
                    "refusals.link",
                    folder.root().relativize(link).toString());
        }
        return all().stream()
                .filter(field -> field.name().equals(name))
                .findFirst()
                .orElseThrow(() -> new HttpRefusal(HttpRefusal.NOT_FOUND, "refusals.field.none", name));
    }

    /** Makes the folder of a new field. */
    void make(String name) throws IOException {
        Path path = folder.inside(FieldNames.parts(name));
        if (Files.exists(path, LinkOption.NOFOLLOW_LINKS)) {
            throw new HttpRefusal(HttpRefusal.CONFLICT, "refusals.field.there", name);
        }
        Files.createDirectories(path);
    }

    /** The rig file of a field as a tree: its own, else the one above, else an empty one. */
    RigTree rig(FieldFiles field) throws IOException {
        return field.rig() == null ? RigTree.empty() : RigTree.read(field.rig());
    }

    /**
     * Saves the rig file beside the field's logs. The one before goes to the dated folder.
     *
     * @return true if the file changed
     */
    boolean save(FieldFiles field, RigTree rig) throws IOException {
        List<String> place = new ArrayList<>(FieldNames.parts(field.name()));
        place.add(RIG);
        byte[] text = rig.yaml().getBytes(StandardCharsets.UTF_8);
        Path file = folder.inside(place);
        if (Files.isRegularFile(file) && java.util.Arrays.equals(Files.readAllBytes(file), text)) {
            return false;
        }
        folder.write(place, out -> out.write(text));
        return true;
    }

    /** What the rig file tells of the logs; nothing while there is none. */
    static LogOptions logOptions(FieldFiles field) {
        return field.rig() == null ? LogOptions.unknownRig() : RigReader.logOptions(field.rig());
    }
}
