package io.rowledger.analysis;

import io.rowledger.finding.RefusalKind;
import io.rowledger.finding.UnusableInputException;
import io.rowledger.geo.WorkParts;
import io.rowledger.log.source.LogSource;
import io.rowledger.track.Pass;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.locationtech.jts.geom.Envelope;

/** Parts of a job's work that lie so far from each other that they may be several fields. */
public final class FieldParts {
    /** Every n-th pose is looked at: at most a few meters apart. */
    private static final int STRIDE = 8;

    private FieldParts() {}

    /** Returns the distance between two parts of the work, m; 0 if all of it can be one field. */
    public static long apartM(Analysis analysis) {
        return parts(analysis).apartM();
    }

    private static WorkParts parts(Analysis analysis) {
        WorkParts parts = new WorkParts();
        if (analysis.log().isAreas()) {
            analysis.coverage()
                    .strips()
                    .forEach(strip -> parts.add(strip.polygon().getEnvelopeInternal()));
        }
        for (Pass pass : analysis.track().passes()) {
            parts.add(driven(analysis, pass));
        }
        return parts;
    }

    /** Returns " (before TIME UTC)" with the time at which work began far from where it began first; empty without times. */
    private static String beforeSecondPart(Analysis analysis) {
        List<Pass> passes = analysis.track().passes();
        if (!analysis.log().isTimed() || passes.isEmpty()) {
            return "";
        }
        Envelope begun = driven(analysis, passes.get(0));
        Envelope place = parts(analysis).nearest(begun);
        return passes.stream()
                .filter(pass -> place.distance(driven(analysis, pass)) > WorkParts.MAX_APART_M)
                .findFirst()
                .map(pass -> analysis.track().poses().timeS(pass.firstStep()))
                .map(timeS -> " (before "
                        + Instant.ofEpochSecond((long) Math.floor(timeS))
                                .toString()
                                .replace('T', ' ')
                                .replace("Z", " UTC)"))
                .orElse("");
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
                                : "cut the log between the fields" + beforeSecondPart(analysis)
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
