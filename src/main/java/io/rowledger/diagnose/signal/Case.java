package io.rowledger.diagnose.signal;

import io.rowledger.finding.FindingKind;
import io.rowledger.text.Message;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A finding before its cost and place are worked out.
 *
 * @param kind what it is
 * @param rows rows from 0, ascending; empty for the whole bar
 * @param fromS first sign
 * @param toS last sign
 * @param confidence 0 to 1
 * @param words text about it
 * @param figures figures that need a unit
 * @param cost what it cost where the detector knows better than the sums over from-to; else null
 */
public record Case(
        FindingKind kind,
        List<Integer> rows,
        double fromS,
        double toS,
        double confidence,
        Words words,
        List<Figure> figures,
        @Nullable Cost cost) {
    /** Evidence, next best explanation, and the checks, cheapest and safest first, parted by semicolons. */
    public record Words(Message evidence, Message alternative, Message check) {}

    /** Ground touched, m², and liquid too much or (negative) too little, L. */
    public record Cost(double areaM2, double volumeL) {}

    /** A case whose cost is summed over its rows and time. */
    public Case(
            FindingKind kind,
            List<Integer> rows,
            double fromS,
            double toS,
            double confidence,
            Words words,
            List<Figure> figures) {
        this(kind, rows, fromS, toS, confidence, words, figures, null);
    }

    public Case {
        rows = List.copyOf(rows);
        figures = List.copyOf(figures);
    }

    /** The same case with another confidence. */
    public Case withConfidence(double value) {
        return new Case(kind, rows, fromS, toS, value, words, figures, cost);
    }

    /** True where the case concerns row r. */
    public boolean concerns(int r) {
        return rows.isEmpty() || rows.contains(r);
    }
}
