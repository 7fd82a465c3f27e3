package io.rowledger.batch;

import io.rowledger.analysis.Analysis;
import io.rowledger.finding.UnusableInputException;
import io.rowledger.track.Pass;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Envelope;

/** Logs that somebody put into one folder need not be of one field: a folder may be a day. */
final class OneField {
    /** Two parts of one field may lie on either side of a road, a creek or a yard, m; more apart is asked about. */
    private static final double APART_M = 400;
    /** Poses between those looked at: at most a few metres. */
    private static final int STRIDE = 8;

    private OneField() {}

    /**
     * Asks where the work of a folder's logs falls into parts that lie far from each other.
     *
     * @param folder of the logs
     */
    static void require(Analysis analysis, Path folder) {
        List<Envelope> parts = new ArrayList<>();
        for (Pass pass : analysis.track().passes()) {
            Envelope part = driven(analysis, pass);
            for (int i = 0; i < parts.size(); ) {
                // A part that grew may now be near one that was passed over, so the search starts again.
                if (parts.get(i).distance(part) <= APART_M) {
                    part.expandToInclude(parts.remove(i));
                    i = 0;
                } else {
                    i++;
                }
            }
            parts.add(part);
        }
        if (parts.size() > 1) {
            long apartM = Math.round(parts.get(0).distance(parts.get(1)));
            throw UnusableInputException.found(
                            analysis.log().sources().size() + " logs whose work lies " + apartM + " m apart")
                    .inFile(folder.toString())
                    .expected("the logs of one field in a folder")
                    .hint("put each field's logs into a folder of their own; or call with --each folder if it is one"
                            + " field, with --each log if every log is a field");
        }
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
