package io.rowledger.log.header;

import java.util.ArrayList;
import java.util.List;

/**
 * The parts of the rig file that turn rates and shared meters into flows of rows.
 *
 * @param widthsM band width of each row, m, from the left; empty without a rig file
 * @param meters rows (from 1) that each meter feeds; empty if each row has its own meter
 * @param sections rows (from 1) of each named shut-off section; empty if the rig file names none
 * @param nitrogenKgPerL nitrogen per volume of each product, kg/L; NaN if unknown
 */
public record BarLayout(
        List<Double> widthsM, List<List<Integer>> meters, List<List<Integer>> sections, List<Double> nitrogenKgPerL) {
    /** No rig file. */
    public static final BarLayout UNKNOWN = new BarLayout(List.of(), List.of(), List.of(), List.of());

    /** Row width where there is no rig file, m: 30 in, the commonest spacing (common practice, no source). */
    public static final double DEFAULT_WIDTH_M = 0.762;

    /** Copies the lists. */
    public BarLayout {
        widthsM = List.copyOf(widthsM);
        meters = meters.stream().map(List::copyOf).toList();
        sections = sections.stream().map(List::copyOf).toList();
        nitrogenKgPerL = List.copyOf(nitrogenKgPerL);
    }

    /** Returns the width of a row (from 1), m. */
    public double widthM(int row) {
        return row <= widthsM.size() ? widthsM.get(row - 1) : DEFAULT_WIDTH_M;
    }

    /** Returns the width of several rows, m. */
    public double widthM(List<Integer> rows) {
        return rows.stream().mapToDouble(this::widthM).sum();
    }

    /** Returns the nitrogen per volume of a product (from 0), kg/L; NaN if unknown. */
    public double nitrogenKgPerL(int product) {
        return product < nitrogenKgPerL.size() ? nitrogenKgPerL.get(product) : Double.NaN;
    }

    /** Returns rows 1 to {@code rows} in groups of equal size. */
    public static List<List<Integer>> equalGroups(int rows, int groups) {
        List<List<Integer>> equal = new ArrayList<>();
        for (int g = 0; g < groups; g++) {
            List<Integer> group = new ArrayList<>();
            for (int row = g * rows / groups + 1; row <= (g + 1) * rows / groups; row++) {
                group.add(row);
            }
            equal.add(group);
        }
        return equal;
    }
}
