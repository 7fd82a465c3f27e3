package io.rowledger.batch;

import io.rowledger.analysis.Analysis;
import io.rowledger.analysis.FieldParts;
import io.rowledger.finding.UnusableInputException;
import java.nio.file.Path;

/** Logs that somebody put into one folder need not be of one field: a folder may be a day. */
final class OneField {
    private OneField() {}

    /**
     * Asks where the work of a folder's logs falls into parts that lie far from each other.
     *
     * @param folder of the logs
     */
    static void require(Analysis analysis, Path folder) {
        long apartM = FieldParts.apartM(analysis);
        if (apartM > 0) {
            throw UnusableInputException.found(
                            analysis.log().sources().size() + " logs whose work lies " + apartM + " m apart")
                    .inFile(folder.toString())
                    .expected("the logs of one field in a folder")
                    .hint("put each field's logs into a folder of their own; or call with --each folder if it is one"
                            + " field, with --each log if every log is a field");
        }
    }
}
