package io.rowledger.uncertainty;

import io.rowledger.finding.Finding;
import io.rowledger.finding.FindingKind;
import java.util.List;
import java.util.Optional;

/**
 * A finding that puts the metered volumes of rows in question for a time, of the products in which it shows.
 *
 * @param products from 0
 * @param kind of the finding
 * @param rows from 1; two for swapped channels
 * @param fromS start, epoch seconds
 * @param toS end, epoch seconds
 */
public record MeterFault(List<Integer> products, FindingKind kind, List<Integer> rows, double fromS, double toS) {
    /**
     * A row that delivers too little or too much may as well have a wrong meter if the finding is less certain than this: an
     * interval that should hold the truth in {@value Intervals#LEVEL_PCT} of 100 jobs has to allow for it.
     */
    private static final double CERTAIN = Intervals.LEVEL_PCT / 100.0;

    /**
     * Time before the first and after the last sign of a fault that it may have lasted, s: spells come minutes apart. It costs
     * nothing while the meter is right, because a right meter gives what the other rows mean.
     */
    private static final double MARGIN_S = 120;

    /** Copies the rows. */
    public MeterFault {
        products = List.copyOf(products);
        rows = List.copyOf(rows);
    }

    /**
     * Returns the fault that a finding means for the meters; empty if it leaves them alone.
     *
     * @param products in which it shows, from 0
     * @param corroborated true if a total meter or the rows' pressures are logged: without them a dead meter looks as a plugged
     *     row does, however certain it is that the figures fell to nothing
     */
    public static Optional<MeterFault> of(Finding finding, List<Integer> products, boolean corroborated) {
        boolean meter =
                switch (finding.kind()) {
                    case METER_DROPOUT, METER_STUCK, METER_SCALE ->
                        !finding.rows().isEmpty();
                    case CHANNELS_SWAPPED -> finding.rows().size() == 2;
                    case PLUGGED, INTERMITTENT ->
                        (!corroborated || finding.confidence() < CERTAIN)
                                && !finding.rows().isEmpty();
                    case RESTRICTED, LEAKING ->
                        finding.confidence() < CERTAIN && !finding.rows().isEmpty();
                    default -> false;
                };
        return meter
                ? Optional.of(new MeterFault(products, finding.kind(), finding.rows(), finding.fromS(), finding.toS()))
                : Optional.empty();
    }

    /** Returns true for a kind of finding that may mean such a fault. */
    public static boolean mayMean(FindingKind kind) {
        return switch (kind) {
            case METER_DROPOUT,
                    METER_STUCK,
                    METER_SCALE,
                    CHANNELS_SWAPPED,
                    PLUGGED,
                    INTERMITTENT,
                    RESTRICTED,
                    LEAKING -> true;
            default -> false;
        };
    }

    boolean swapped() {
        return kind == FindingKind.CHANNELS_SWAPPED;
    }

    /** Returns true for a row of the fault while it may have lasted. */
    boolean covers(int row, double timeS) {
        return timeS >= fromS - MARGIN_S && timeS < toS + MARGIN_S && rows.contains(row);
    }

    /** Returns true from the first to the last sign of the fault. */
    boolean lasts(double timeS) {
        return timeS >= fromS && timeS < toS;
    }

    /** Returns the other of two swapped rows, from 1. */
    int other(int row) {
        return rows.get(0) == row ? rows.get(1) : rows.get(0);
    }
}
