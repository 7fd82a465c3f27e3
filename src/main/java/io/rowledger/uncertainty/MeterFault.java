package io.rowledger.uncertainty;

import io.rowledger.finding.Finding;
import io.rowledger.finding.FindingKind;
import java.util.List;
import java.util.Optional;

/**
 * A finding that puts the metered volume of rows in question for a time.
 *
 * @param kind of the finding
 * @param product index in rig order
 * @param rows from 1; two for swapped channels
 * @param fromS start, epoch seconds
 * @param toS end, epoch seconds
 */
public record MeterFault(FindingKind kind, int product, List<Integer> rows, double fromS, double toS) {
    /**
     * A row that delivers too little or too much may as well have a wrong meter if the finding is less certain than this: an
     * interval that should hold the truth in {@value Intervals#LEVEL_PCT} of 100 jobs has to allow for it.
     */
    private static final double CERTAIN = Intervals.LEVEL_PCT / 100.0;

    /** Copies the rows. */
    public MeterFault {
        rows = List.copyOf(rows);
    }

    /** Returns the fault that a finding about a product means for its meters; empty if it leaves them alone. */
    public static Optional<MeterFault> of(Finding finding, int product) {
        boolean meter =
                switch (finding.kind()) {
                    case METER_DROPOUT, METER_STUCK, METER_SCALE ->
                        !finding.rows().isEmpty();
                    case CHANNELS_SWAPPED -> finding.rows().size() == 2;
                    case PLUGGED, INTERMITTENT, RESTRICTED, LEAKING ->
                        finding.confidence() < CERTAIN && !finding.rows().isEmpty();
                    default -> false;
                };
        return meter
                ? Optional.of(new MeterFault(finding.kind(), product, finding.rows(), finding.fromS(), finding.toS()))
                : Optional.empty();
    }

    boolean swapped() {
        return kind == FindingKind.CHANNELS_SWAPPED;
    }

    boolean covers(int product, int row, double timeS) {
        return product == this.product && timeS >= fromS && timeS < toS && rows.contains(row);
    }

    /** Returns the other of two swapped rows, from 1. */
    int other(int row) {
        return rows.get(0) == row ? rows.get(1) : rows.get(0);
    }
}
