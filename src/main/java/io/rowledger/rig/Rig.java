package io.rowledger.rig;

import io.rowledger.log.header.BarLayout;
import io.rowledger.log.header.LogHints;
import io.rowledger.log.header.LogOptions;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * The machine as its owner measured it, with what else the rig file says.
 *
 * @param name what the records print
 * @param lengths of tractor and bar, m
 * @param bands one per outlet, from the left
 * @param meters the rows that each meter feeds, meters in the order of their numbers in the log, rows ascending; empty
 *     if each row has its own meter
 * @param products the liquids, in the order of the rig file
 * @param hints how to read logs and maps
 * @param job what the log can't know: the {@code job:} block
 */
public record Rig(
        String name,
        BarLengths lengths,
        List<Band> bands,
        List<List<Integer>> meters,
        List<Product> products,
        FileHints hints,
        Job job) {
    /** Copies the lists and checks that there is at least one outlet and one product. */
    public Rig {
        bands = List.copyOf(bands);
        meters = meters.stream().map(List::copyOf).toList();
        products = List.copyOf(products);
        if (bands.isEmpty() || products.isEmpty()) {
            throw new IllegalArgumentException("a rig has at least one outlet and one product");
        }
    }

    /** A rig with a meter for each row and no hints. */
    public static Rig of(String name, BarLengths lengths, List<Band> bands, List<Product> products, Job job) {
        return new Rig(name, lengths, bands, List.of(), products, FileHints.NONE, job);
    }

    /** Rear axle forward to the antenna, m. */
    public double antennaAheadM() {
        return lengths.antennaAheadM();
    }

    /** Tractor's centerline right to the antenna, m. */
    public double antennaRightM() {
        return lengths.antennaRightM();
    }

    /** Rear axle back to the hitch pin, m. */
    public double axleToHitchM() {
        return lengths.axleToHitchM();
    }

    /** Pull-type or mounted. */
    public Hitch hitch() {
        return lengths.hitch();
    }

    /** Hitch pin back to the wheel line, m; NaN for a mounted bar. */
    public double hitchToWheelsM() {
        return lengths.hitchToWheelsM();
    }

    /** Hitch pin back to the drop line, m. */
    public double hitchToDropM() {
        return lengths.hitchToDropM();
    }

    /** Side offset of the bar's center, m, positive right. */
    public double barRightM() {
        return lengths.barRightM();
    }

    /** How far each measured length may be off, m; NaN if the rig file gives no tolerance. */
    public double toleranceM() {
        return lengths.toleranceM();
    }

    /** Quantity to header, for logs whose headers are not recognized. */
    public Map<String, String> columns() {
        return hints.columns();
    }

    /** Clock and units of the logs. */
    public LogHints logHints() {
        return hints.log();
    }

    /** Returns what the reader of logs needs to know. */
    public LogOptions logOptions() {
        Map<String, List<Integer>> sections = new LinkedHashMap<>();
        for (Band band : bands) {
            if (band.section() != null) {
                sections.computeIfAbsent(band.section(), name -> new ArrayList<>())
                        .add(band.row());
            }
        }
        boolean named = bands.stream().allMatch(band -> band.section() != null);
        BarLayout bar = new BarLayout(
                bands.stream().map(Band::widthM).toList(),
                meters,
                named ? List.copyOf(sections.values()) : List.of(),
                products.stream().map(Product::nitrogenKgPerL).toList());
        return new LogOptions(columns(), products.stream().map(Product::key).toList(), rows(), logHints(), bar);
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

    /** Left edge of the leftmost band, m right of the bar's center. */
    public double leftM() {
        return bands.stream().mapToDouble(Band::leftM).min().orElseThrow();
    }

    /** Right edge of the rightmost band, m right of the bar's center. */
    public double rightM() {
        return bands.stream().mapToDouble(Band::rightM).max().orElseThrow();
    }
}
