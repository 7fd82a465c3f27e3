package io.rowledger.analysis;

/** Rig files of a mounted bar behind a tractor that differ in their rows and target. */
final class MountedRig {
    private MountedRig() {}

    /**
     * The text of a rig file; the product is UAN 32-0-0 of 11.06 lb/gal.
     *
     * @param rows number of rows
     * @param spacing with its unit
     * @param target with its unit
     */
    static String text(int rows, String spacing, String target) {
        return """
                rig:
                  antenna: {ahead_of_axle: 1.6 m, right_of_center: 0 m}
                  axle_to_hitch: 0.9 m
                  hitch: mounted
                  hitch_to_drop: 1.2 m
                  bar_right_of_center: 0 m
                rows: {count: %d, spacing: %s, outer_share: 1}
                products:
                  uan: {name: UAN 32-0-0, density: 11.06 lb/gal, analysis: 32-0-0, target: %s}
                """.formatted(rows, spacing, target);
    }
}
