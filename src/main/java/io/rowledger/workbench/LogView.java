package io.rowledger.workbench;

import io.rowledger.batch.FieldFiles;
import io.rowledger.digest.Sha256;
import io.rowledger.finding.UnusableInputException;
import io.rowledger.log.LogSurvey;
import io.rowledger.log.header.LogOptions;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** The screen of the logs: where each ran, when, how much, and what speaks against its being of this field. */
final class LogView {
    private final FieldStore store;
    private final Surveys surveys;
    private final SavedBars bars;

    LogView(FieldStore store, Surveys surveys, SavedBars bars) {
        this.store = store;
        this.surveys = surveys;
        this.bars = bars;
    }

    /**
     * The logs of a field on one plane.
     *
     * @param logs one line for each
     * @param zone time zone: the rig file's, else proposed from the position, else empty
     * @param apartM distance between parts of the work, m; 0 if all can be one field
     * @param places number of those parts
     * @param spacingM row spacing of the rig file, m; 30 in while it has none
     * @param hasRig true if the field has a rig file
     * @param bars names of the saved bars
     * @param others names of files in the field's folder that are neither logs nor maps nor the rig file
     */
    record Logs(
            List<LogLine> logs,
            String zone,
            long apartM,
            int places,
            double spacingM,
            boolean hasRig,
            List<String> bars,
            List<String> others) {}

    /**
     * A log.
     *
     * @param file its name
     * @param form packing, character set and delimiter
     * @param records number of records
     * @param used number of records that can be used
     * @param startS start, epoch seconds; null if the times can't be read yet
     * @param endS end, epoch seconds
     * @param gaps number of silences
     * @param flowingM distance with liquid flowing, m; null if unknown
     * @param rows number of rows; 0 if unknown
     * @param path east and north, m, one pair after the other
     * @param sameAs name of a log with the same bytes, or null
     * @param problems what must be settled before it can be used
     * @param unusable true if nothing can be read from it at all
     */
    record LogLine(
            String file,
            String form,
            int records,
            int used,
            @Nullable Double startS,
            @Nullable Double endS,
            int gaps,
            @Nullable Double flowingM,
            int rows,
            List<Double> path,
            @Nullable String sameAs,
            List<ProblemText> problems,
            boolean unusable) {}

    Logs logs(String name) throws IOException {
        FieldFiles field = store.field(name);
        LogOptions options = FieldStore.logOptions(field);
        RigTree rig = store.rig(field);
        double spacingM = Surveys.spacingM(rig);
        Map<String, String> digests = new HashMap<>();
        List<LogLine> lines = new ArrayList<>();
        WorkPlaces places = new WorkPlaces();
        String zone = "";
        for (Path log : field.logs()) {
            String file = String.valueOf(log.getFileName());
            try {
                LogSurvey survey = surveys.of(log, options, spacingM);
                zone = zone.isEmpty() ? survey.zone() : zone;
                lines.add(line(file, survey, places.add(survey), sameAs(log, file, digests)));
            } catch (UnusableInputException e) {
                lines.add(new LogLine(
                        file, "", 0, 0, null, null, 0, null, 0, List.of(), null, List.of(ProblemText.of(e)), true));
            }
        }
        String rigZone = rig.text("job", "zone");
        return new Logs(
                lines,
                rigZone == null ? zone : rigZone,
                places.apartM(),
                places.count(),
                spacingM,
                field.rig() != null,
                bars.all().bars().stream().map(SavedBars.SavedBar::name).toList(),
                others(field));
    }

    /** Of a field without a log, which a season's folder does not list, any file but the rig file. */
    private static List<String> others(FieldFiles field) throws IOException {
        if (!field.logs().isEmpty()) {
            return field.others();
        }
        try (Stream<Path> files = Files.list(field.folder())) {
            return files.filter(file -> Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS))
                    .map(file -> String.valueOf(file.getFileName()))
                    .filter(name -> !name.startsWith(".") && !name.equals(FieldStore.RIG))
                    .sorted()
                    .toList();
        }
    }

    private static LogLine line(String file, LogSurvey survey, List<Double> path, @Nullable String sameAs) {
        double[] timeS = survey.timeS();
        return new LogLine(
                file,
                survey.form(),
                survey.records(),
                survey.used(),
                timeS.length == 0 ? null : timeS[0],
                timeS.length == 0 ? null : timeS[timeS.length - 1],
                survey.gaps(),
                Double.isFinite(survey.flowingM()) ? survey.flowingM() : null,
                survey.rows(),
                path,
                sameAs,
                survey.problems().stream().map(ProblemText::of).toList(),
                false);
    }

    private static @Nullable String sameAs(Path log, String file, Map<String, String> digests) throws IOException {
        if (!Files.isRegularFile(log)) {
            return null;
        }
        return digests.putIfAbsent(Sha256.of(log), file);
    }
}
