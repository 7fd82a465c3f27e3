package io.rowledger.diagnose.signal;

import io.rowledger.text.Argument;
import io.rowledger.text.Message;
import java.util.List;

/** Parts of sentences that several detectors use. Rows are counted from 0 here and from 1 in the text. */
public final class FindingMessages {
    private static final Message NONE = Message.of("findings.none");

    /** Relative deviation from which a pressure has moved (1). */
    private static final double PRESSURE_MOVED = 0.05;

    private FindingMessages() {}

    /** Nothing: stands where a part of a sentence does not apply. */
    public static Message none() {
        return NONE;
    }

    /** A fraction as a percentage. */
    public static Argument percent(double fraction) {
        return Message.percent(100 * fraction);
    }

    /** "Row 7", "Rows 1-4, 9"; "All rows" for an empty list. */
    public static Message rows(List<Integer> rows) {
        return rows.isEmpty()
                ? Message.of("findings.rows.all")
                : Message.of("findings.rows.some", rows.stream().map(r -> r + 1).toList());
    }

    /** What rows that failed together share: nothing for one row, else a section or a hose. */
    public static Message shared(Evidence e, List<Integer> rows) {
        if (rows.size() < 2) {
            return NONE;
        }
        String section = e.ratios.rig.bands().get(rows.get(0)).section();
        for (int r : rows) {
            if (section == null || !section.equals(e.ratios.rig.bands().get(r).section())) {
                return Message.of("findings.shared.hose");
            }
        }
        return section == null ? Message.of("findings.shared.hose") : Message.of("findings.shared.section", section);
    }

    /**
     * Whether the total meter followed.
     *
     * @param mismatch row meters less total meter as a fraction of what the row should give; NaN without a total meter
     * @param deviation the row's own deviation, as the same fraction
     */
    public static Message total(double mismatch, double deviation) {
        if (Double.isNaN(mismatch)) {
            return NONE;
        }
        return Math.abs(mismatch - deviation) < 0.5 * Math.abs(deviation)
                ? Message.of("findings.total.still")
                : Message.of("findings.total.moved");
    }

    /** How the row's pressure stood to the other rows', as a ratio; nothing for NaN. */
    public static Message pressure(double ratio) {
        if (Double.isNaN(ratio)) {
            return NONE;
        }
        return ratio > 1 + PRESSURE_MOVED
                ? Message.of("findings.pressure.above", percent(ratio - 1))
                : ratio < 1 - PRESSURE_MOVED
                        ? Message.of("findings.pressure.below", percent(1 - ratio))
                        : Message.of("findings.pressure.same");
    }

    /** The side of the bar on which these rows lie. */
    public static Message side(Evidence e, List<Integer> rows) {
        if (rows.isEmpty()) {
            return Message.of("findings.side.bar");
        }
        double y = rows.stream().mapToDouble(r -> e.work.atM[r]).average().orElse(0);
        return y < 0 ? Message.of("findings.side.left") : Message.of("findings.side.right");
    }
}
