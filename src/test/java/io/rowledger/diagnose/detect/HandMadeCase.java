package io.rowledger.diagnose.detect;

import static io.rowledger.diagnose.detect.HandMadeFlows.PERIOD_S;
import static io.rowledger.diagnose.detect.HandMadeFlows.START_S;
import static io.rowledger.diagnose.detect.HandMadeFlows.WORK_S;
import static io.rowledger.diagnose.detect.HandMadeFlows.sinceDownS;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.diagnose.Diagnosis;
import io.rowledger.diagnose.FaultField;
import io.rowledger.diagnose.detect.HandMadeFlows.Flow;
import io.rowledger.finding.Finding;
import io.rowledger.finding.FindingKind;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.io.TempDir;

/** What tests with flows written down by hand share. */
abstract class HandMadeCase {
    static final double ROUNDED = 0.1;

    /** In the middle of the second pass. */
    static final double ONSET_S = PERIOD_S + 65;

    @TempDir
    Path folder;

    static Flow row(int faulty, Flow fault) {
        return (row, timeS, due) -> row == faulty ? fault.galPerMin(row, timeS, due) : due;
    }

    static Flow share(int faulty, double fromS, double share) {
        return row(faulty, (row, timeS, due) -> timeS >= fromS ? share * due : due);
    }

    Diagnosis of(Flow flow) {
        return new HandMadeFlows(flow).diagnose(folder);
    }

    Diagnosis rounded(Flow flow) {
        return new HandMadeFlows(flow).rounded(ROUNDED).diagnose(folder);
    }

    /** The findings of a diagnosis, each as its kind and rows. */
    static Set<String> kinds(Diagnosis diagnosis) {
        return diagnosis.findings().stream().map(f -> f.kind() + "" + f.rows()).collect(Collectors.toSet());
    }

    /** The only finding: of this kind and these rows. */
    static Finding only(Diagnosis diagnosis, FindingKind kind, Integer... rows) {
        assertEquals(Set.of(kind + "" + List.of(rows)), kinds(diagnosis), FaultField.brief(diagnosis));
        return diagnosis.findings().get(0);
    }

    static void silent(Diagnosis diagnosis) {
        assertEquals(Set.of(), kinds(diagnosis), FaultField.brief(diagnosis));
    }

    static void from(double timeS, Finding found, double withinS) {
        assertEquals(timeS, found.fromS() - START_S, withinS);
    }

    /** Other kinds are another case's concern. */
    static void none(FindingKind kind, Diagnosis diagnosis) {
        assertTrue(diagnosis.findings().stream().noneMatch(f -> f.kind() == kind), () -> FaultField.brief(diagnosis));
    }

    /** In each pass true for so long from this time after lowering on. */
    static boolean spell(double timeS, double everyS, double lengthS) {
        double s = sinceDownS(timeS);
        return s >= 12 && s < WORK_S - 12 && (s - 12) % everyS < lengthS;
    }
}
