package io.rowledger.sim;

import java.util.List;

/**
 * What really happened, summed over the integrator's own steps.
 *
 * @param rows per outlet, from the left
 * @param passes in order
 * @param ground what was covered; NaN throughout where the raster was left out
 * @param sweptAreaM2 all outlets
 * @param volumeL per product, left the outlets while working
 * @param meteredL per product, metered while working (the meter's lag taken out)
 * @param strayL per product, left the outlets while not working (valves closing)
 * @param faults as put in
 * @param flaws what was done to the log
 * @param durationS from the first record to the last
 * @param zones per zone where the targets came from a {@link ZoneMap}, else empty
 */
public record Truth(
        List<Row> rows,
        List<Pass> passes,
        Ground ground,
        double sweptAreaM2,
        double[] volumeL,
        double[] meteredL,
        double[] strayL,
        List<SimFault> faults,
        Flaws flaws,
        double durationS,
        List<Zone> zones) {
    /**
     * One zone of the target map, by where the middles of the bands were.
     *
     * @param name of the zone
     * @param sweptAreaM2 forward area while working
     * @param volumeL per product, left the outlets while working
     * @param meteredL per product, metered while working
     * @param askedL per product, what the controller was told times swept area
     */
    public record Zone(String name, double sweptAreaM2, double[] volumeL, double[] meteredL, double[] askedL) {}

    /**
     * One outlet.
     *
     * @param row from 1 at the left
     * @param sweptAreaM2 forward area of its band while working (positive steps only)
     * @param appliedAreaM2 of that, steps with true flow above 5 % of what the target asks
     * @param volumeL per product, left the outlet while working
     * @param meteredL per product, metered while working
     * @param targetL per product, target times swept area
     * @param turn the turn error the row would see: bar speed over row speed less one
     * @param turnRemaining the turn error that remained in the true flows of product 0
     */
    public record Row(
            int row,
            double sweptAreaM2,
            double appliedAreaM2,
            double[] volumeL,
            double[] meteredL,
            double[] targetL,
            TurnError turn,
            TurnError turnRemaining) {}

    /**
     * Relative errors as fractions, weighted by swept area; steps with a row speed under 5 % of the bar's are left out.
     *
     * @param meanAbs mean size
     * @param maxOver largest, at least 0
     * @param maxUnder smallest, at most 0
     */
    public record TurnError(double meanAbs, double maxOver, double maxUnder) {}

    /**
     * One unbroken stretch of working steps.
     *
     * @param pass from 1
     * @param startS seconds after the first record
     * @param endS seconds after the first record
     * @param lengthM way of the bar's centre
     * @param sweptAreaM2 all outlets
     * @param volumeL per product, left the outlets
     */
    public record Pass(int pass, double startS, double endS, double lengthM, double sweptAreaM2, double[] volumeL) {}

    /**
     * Ground on the 5 cm raster, m².
     *
     * @param coveredM2 visited at least once, inside the boundary or out
     * @param overlapM2 visited twice or more
     * @param skipM2 boundary less covered; without a boundary NaN
     * @param coveredInsideM2 visited and inside the boundary; without a boundary NaN
     * @param boundaryM2 the boundary polygon by the shoelace formula; without a boundary NaN
     * @param enclosedGapsM2 unvisited cells that no chain of unvisited cells joins to the outside
     */
    public record Ground(
            double coveredM2,
            double overlapM2,
            double skipM2,
            double coveredInsideM2,
            double boundaryM2,
            double enclosedGapsM2) {
        static final Ground UNKNOWN =
                new Ground(Double.NaN, Double.NaN, Double.NaN, Double.NaN, Double.NaN, Double.NaN);
    }

    /** What was done to the log: records left out, repeated, moved away or without a fix. */
    public record Flaws(int leftOut, int repeated, int moved, int withoutFix) {}

    /** The same drive in another receiver's log. */
    Truth loggedBy(Flaws other, double otherDurationS) {
        return new Truth(
                rows, passes, ground, sweptAreaM2, volumeL, meteredL, strayL, faults, other, otherDurationS, zones);
    }
}
