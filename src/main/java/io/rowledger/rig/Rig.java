package io.rowledger.rig;

import io.rowledger.log.header.LogHints;
import java.util.List;
import java.util.Map;

/**
 * The machine as its owner measured it, in SI. All lengths in metres; see {@code README.md} for where each is taken.
 *
 * @param name what the records print
 * @param antennaAheadM rear axle forward to the antenna
 * @param antennaRightM tractor's centre line right to the antenna
 * @param axleToHitchM rear axle back to the hitch pin
 * @param towing drawn or carried
 * @param hitchToWheelsM hitch pin back to the wheel line; NaN for a carried bar
 * @param hitchToDropM hitch pin back to the drop line
 * @param barRightM the bar's side offset, positive right
 * @param bands one per outlet, from the left
 * @param products the liquids, in the order of the rig file
 * @param columns quantity to header, for logs whose headers are not recognised
 * @param hints what else the logs leave open: the {@code log:} block
 * @param job what the log can't know: the {@code job:} block
 * @param toleranceM how far each measured length may be off; NaN where the rig file doesn't say
 */
public record Rig(
        String name,
        double antennaAheadM,
        double antennaRightM,
        double axleToHitchM,
        Towing towing,
        double hitchToWheelsM,
        double hitchToDropM,
        double barRightM,
        List<Band> bands,
        List<Product> products,
        Map<String, String> columns,
        LogHints hints,
        Job job,
        double toleranceM) {
    /** Copies the lists and checks that there is something to meter and somewhere to put it. */
    public Rig {
        bands = List.copyOf(bands);
        products = List.copyOf(products);
        columns = java.util.Collections.unmodifiableMap(new java.util.LinkedHashMap<>(columns));
        if (bands.isEmpty() || products.isEmpty()) {
            throw new IllegalArgumentException("a rig has at least one outlet and one product");
        }
    }

    /** A machine whose logs leave nothing open. */
    public Rig(
            String name,
            double antennaAheadM,
            double antennaRightM,
            double axleToHitchM,
            Towing towing,
            double hitchToWheelsM,
            double hitchToDropM,
            double barRightM,
            List<Band> bands,
            List<Product> products,
            Map<String, String> columns,
            Job job,
            double toleranceM) {
        this(
                name,
                antennaAheadM,
                antennaRightM,
                axleToHitchM,
                towing,
                hitchToWheelsM,
                hitchToDropM,
                barRightM,
                bands,
                products,
                columns,
                LogHints.NONE,
                job,
                toleranceM);
    }

    /** A machine of which nobody said how well it was measured. */
    public Rig(
            String name,
            double antennaAheadM,
            double antennaRightM,
            double axleToHitchM,
            Towing towing,
            double hitchToWheelsM,
            double hitchToDropM,
            double barRightM,
            List<Band> bands,
            List<Product> products,
            Map<String, String> columns,
            Job job) {
        this(
                name,
                antennaAheadM,
                antennaRightM,
                axleToHitchM,
                towing,
                hitchToWheelsM,
                hitchToDropM,
                barRightM,
                bands,
                products,
                columns,
                job,
                Double.NaN);
    }

    /** Number of outlets. */
    public int rows() {
        return bands.size();
    }

    /** Sum of the band widths, m. */
    public double widthM() {
        double sum = 0;
        for (Band band : bands) {
            sum += band.widthM();
        }
        return sum;
    }

    /** Left edge of the leftmost band, m right of the bar's centre. */
    public double leftM() {
        return bands.stream().mapToDouble(Band::leftM).min().orElseThrow();
    }

    /** Right edge of the rightmost band, m right of the bar's centre. */
    public double rightM() {
        return bands.stream().mapToDouble(Band::rightM).max().orElseThrow();
    }
}
