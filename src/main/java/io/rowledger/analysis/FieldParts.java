package io.rowledger.analysis;

import io.rowledger.finding.RefusalKind;
import io.rowledger.finding.UnusableInputException;
import io.rowledger.log.source.LogSource;
import io.rowledger.track.Pass;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.locationtech.jts.geom.Envelope;

/** Parts of a job's work that lie so far from each other that they may be several fields. */
public final class FieldParts {
    /** Largest distance between two parts of one field, m: a road, a creek or a yard may lie between them. */
    public static final double MAX_APART_M = 400;
    /** Every n-th pose is looked at: at most a few meters apart. */
    private static final int STRIDE = 8;

    private FieldParts() {}

    /** Returns the distance between two parts of the work, m; 0 if all of it can be one field. */
    public static long apartM(Analysis analysis) {
        List<Envelope> parts = parts(analysis);
        return parts.size() > 1 ? Math.round(parts.get(0).distance(parts.get(1))) : 0;
    }

    private static List<Envelope> parts(Analysis analysis) {
        List<Envelope> parts = new ArrayList<>();
        if (analysis.log().isAreas()) {
            analysis.coverage()
                    .strips()
                    .forEach(strip -> add(new Envelope(strip.polygon().getEnvelopeInternal()), parts));
        }
        for (Pass pass : analysis.track().passes()) {
            add(driven(analysis, pass), parts);
        }
        return parts;
    }

    /** Returns " (before TIME UTC)" with the time at which work began far from where it began first; empty without times. */
    private static String cut(Analysis analysis) {
        List<Pass> passes = analysis.track().passes();
        if (!analysis.log().isTimed() || passes.isEmpty()) {
            return "";
        }
        Envelope begun = driven(analysis, passes.get(0));
        Envelope place = parts(analysis).stream()
                .filter(part -> part.covers(begun))
                .findFirst()
                .orElse(begun);
        return passes.stream()
                .filter(pass -> place.distance(driven(analysis, pass)) > MAX_APART_M)
                .findFirst()
                .map(pass -> analysis.track().poses().timeS(pass.firstStep()))
                .map(timeS -> " (before "
                        + Instant.ofEpochSecond((long) Math.floor(timeS))
                                .toString()
                                .replace('T', ' ')
                                .replace("Z", " UTC)"))
                .orElse("");
    }

    /** Joins a part of the work to those that lie near it. */
    private static void add(Envelope part, List<Envelope> parts) {
        for (int i = 0; i < parts.size(); ) {
            // A part that grew may now be near one that was skipped: start again.
            if (parts.get(i).distance(part) <= MAX_APART_M) {
                part.expandToInclude(parts.remove(i));
                i = 0;
            } else {
                i++;
            }
        }
        parts.add(part);
    }

    /**
     * Refuses a report of work that lies in several places.
     *
     * @throws UnusableInputException if parts of the work lie more than 400 m apart
     */
    public static void requireOne(Analysis analysis) {
        long apartM = apartM(analysis);
        if (apartM == 0) {
            return;
        }
        List<LogSource> logs = analysis.log().sources();
        String names = logs.stream().map(LogSource::file).collect(Collectors.joining(", "));
        throw UnusableInputException.found(String.format(Locale.ROOT, "work in places %,d m apart", apartM))
                .kind(RefusalKind.APART)
                .inFile(names)
                .expected("the logs of one field")
                .hint(
                        logs.size() > 1
                                ? "run the report for each field on its own; if it is one field, put its logs into a folder of "
                                        + "their own and run rowledger batch FOLDER --each folder"
                                : "cut the log between the fields" + cut(analysis)
                                        + " and run the report for each part; if it is one field, put the log into a folder of its own and run rowledger batch FOLDER --each folder");
    }

    private static Envelope driven(Analysis analysis, Pass pass) {
        Envelope part = new Envelope();
        for (int i = pass.firstStep(); i <= pass.endStep(); i++) {
            if ((i - pass.firstStep()) % STRIDE == 0 || i == pass.endStep()) {
                part.expandToInclude(
                        analysis.track().poses().dropEastM(i),
                        analysis.track().poses().dropNorthM(i));
            }
        }
        return part;
    }
}
