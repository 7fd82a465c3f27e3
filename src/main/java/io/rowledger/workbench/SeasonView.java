package io.rowledger.workbench;

import io.rowledger.batch.FieldFiles;
import io.rowledger.finding.UnusableInputException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** The season's screen: every field with its files and what its results say. */
final class SeasonView {
    private final FieldStore store;
    private final FieldResults results;
    private final SavedBars bars;

    SeasonView(FieldStore store, FieldResults results, SavedBars bars) {
        this.store = store;
        this.results = results;
        this.bars = bars;
    }

    /**
     * The season.
     *
     * @param fields by name
     * @param closed why other folders and saved bars can't be opened here, each in a sentence with its name
     * @param bars names of the saved bars
     * @param ledger true if the results have a season's ledger
     */
    record Season(List<FieldLine> fields, List<ProblemText> closed, List<String> bars, boolean ledger) {}

    /**
     * A field.
     *
     * @param name of its folder
     * @param logs names of its logs
     * @param rig name of its rig file, or null
     * @param ownRig true if the rig file lies beside the logs
     * @param boundary name of the file, or null
     * @param prescription name of the file, or null
     * @param keepOut name of the file, or null
     * @param ready true if the rig file is complete
     * @param wants what the rig file lacks; nothing if it is complete
     * @param wantsKey the key of the rig file that {@code wants} is about, or empty
     * @param old true if a file is newer than the results
     * @param result what its results say, or null
     */
    record FieldLine(
            String name,
            List<String> logs,
            @Nullable String rig,
            boolean ownRig,
            @Nullable String boundary,
            @Nullable String prescription,
            @Nullable String keepOut,
            boolean ready,
            ProblemText wants,
            String wantsKey,
            boolean old,
            FieldResults.@Nullable Result result) {}

    /** A new field. */
    record NewField(String name) {}

    Season season(Reader reader) throws IOException {
        List<FieldLine> lines = new ArrayList<>();
        List<ProblemText> closed = new ArrayList<>();
        for (FieldFiles field : store.all()) {
            try {
                lines.add(line(field, reader));
            } catch (HttpRefusal e) {
                // Such as a name that another program gave the folder: the rest of the season can be worked on.
                closed.add(e.problem());
            }
        }
        SavedBars.All saved = bars.all();
        closed.addAll(saved.closed());
        return new Season(
                lines,
                closed,
                saved.bars().stream().map(SavedBars.SavedBar::name).toList(),
                Files.isRegularFile(store.folder().results().resolve("season.pdf")));
    }

    FieldLine field(String name, Reader reader) throws IOException {
        return line(store.field(name), reader);
    }

    Object make(NewField field) throws IOException {
        store.make(field.name());
        return Router.done();
    }

    private FieldLine line(FieldFiles field, Reader reader) throws IOException {
        ProblemText wants = wants(field);
        return new FieldLine(
                field.name(),
                field.logs().stream().map(SeasonView::name).toList(),
                field.rig() == null ? null : name(field.rig()),
                field.rig() != null && field.folder().equals(field.rig().getParent()),
                field.boundary() == null ? null : name(field.boundary()),
                field.prescription() == null ? null : name(field.prescription()),
                field.keepOut() == null ? null : name(field.keepOut()),
                wants.equals(ProblemText.NONE)
                        && field.rig() != null
                        && !field.logs().isEmpty(),
                wants,
                wants.key(),
                results.isOld(field),
                results.of(field.name(), reader));
    }

    private static ProblemText wants(FieldFiles field) {
        if (field.rig() == null || Files.isSymbolicLink(field.rig())) {
            return ProblemText.NONE;
        }
        try {
            io.rowledger.rig.RigReader.read(field.rig());
            return ProblemText.NONE;
        } catch (UnusableInputException e) {
            return ProblemText.of(e);
        }
    }

    private static String name(Path file) {
        return String.valueOf(file.getFileName());
    }
}
