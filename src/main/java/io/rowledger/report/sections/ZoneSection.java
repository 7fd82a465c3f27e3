package io.rowledger.report.sections;

import java.util.List;

/**
 * The prescription compared with the work, zone by zone, in the reader's units.
 *
 * @param products one table a product the prescription speaks of, in rig order; empty without a prescription
 * @param outside covered ground outside all zones, a sentence, or empty
 */
public record ZoneSection(List<ZoneTable> products, String outside) {
    /** Copies the list. */
    public ZoneSection {
        products = List.copyOf(products);
    }

    /** True if there is a prescription. */
    public boolean hasZones() {
        return !products.isEmpty();
    }

    /**
     * One product.
     *
     * @param name the product's
     * @param hasLoggedTarget true if the log has a target of its own
     * @param zones largest covered ground first, as many as are listed
     * @param rest what the list leaves out, a sentence, or empty
     * @param changes how early or late the rate changed at the lines between zones, or why that can't be told: a sentence
     * @param pairs the same for each pair of zones in the direction of travel, with enough evaluated crossings
     */
    public record ZoneTable(
            String name,
            boolean hasLoggedTarget,
            List<ZoneLine> zones,
            String rest,
            String changes,
            List<ChangeLine> pairs) {
        /** Copies the lists. */
        public ZoneTable {
            zones = List.copyOf(zones);
            pairs = List.copyOf(pairs);
        }
    }

    /**
     * One zone and product. Volumes are over the covered ground of the zone.
     *
     * @param zone its name
     * @param area of the zone
     * @param covered ground of it
     * @param planRate the prescription's rate
     * @param planned that rate × covered ground
     * @param loggedTarget the log's own target × covered ground, or a dash
     * @param received volume on the ground
     * @param rate received ÷ covered ground
     * @param deviation received against planned
     * @param deviationPct raw, NaN unknown
     * @param mark how far off: empty, "watch" beyond 5 %, "act" beyond 10 %
     * @param within10 share of the covered ground within 10 % of the plan
     * @param nitrogen in the received volume
     * @param nitrogenRate nitrogen ÷ covered ground
     */
    public record ZoneLine(
            String zone,
            String area,
            String covered,
            String planRate,
            String planned,
            String loggedTarget,
            String received,
            String rate,
            String deviation,
            double deviationPct,
            String mark,
            String within10,
            String nitrogen,
            String nitrogenRate) {}

    /** Where the rate changed on the way from one zone into another. */
    public record ChangeLine(String from, String to, String crossings, String changed) {}
}
