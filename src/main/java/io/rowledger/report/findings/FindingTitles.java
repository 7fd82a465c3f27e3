package io.rowledger.report.findings;

import io.rowledger.finding.Finding;
import io.rowledger.finding.FindingKind;
import io.rowledger.text.Message;
import java.util.List;

/** Findings in a clause without a full stop, such as "Row 7 looks plugged". */
public final class FindingTitles {
    private FindingTitles() {}

    /** The title of a finding. */
    public static Message of(Finding finding) {
        return of(finding.kind(), finding.rows(), finding.meters());
    }

    /** The title of a finding of this kind and these rows in rising order; no rows stand for the whole bar. */
    public static Message of(FindingKind kind, List<Integer> rows) {
        return Message.of("findings.title." + kind.jsonName(), rows);
    }

    /** The same where meters, numbered from 1, feed several rows; no meters where each row has its own. */
    public static Message of(FindingKind kind, List<Integer> rows, List<Integer> meters) {
        return meters.isEmpty() ? of(kind, rows) : Message.of("findings.metersTitle." + kind.jsonName(), meters, rows);
    }

    /** All kinds that are looked for, so that a person knows what an empty list of findings excludes. */
    public static Message lookedFor() {
        return Message.of("findings.lookedFor");
    }
}
