package io.rowledger.zones;

import io.rowledger.field.Prescription;
import java.util.List;

/**
 * Received against prescribed rates, zone by zone.
 *
 * @param prescription the prescription map
 * @param zones in the prescription's order
 * @param outsideCoveredM2 covered area outside all zones, m²
 * @param outsideReceivedL per product, volume received there, L; not copied
 * @param changes per product, changes of the rate where rows crossed from one zone into another
 */
public record Zones(
        Prescription prescription,
        List<ZoneSums> zones,
        double outsideCoveredM2,
        double[] outsideReceivedL,
        List<ZoneChanges> changes) {
    /** Copies the lists. */
    public Zones {
        zones = List.copyOf(zones);
        changes = List.copyOf(changes);
    }

    /**
     * Sums of one zone.
     *
     * @param zone the zone
     * @param areaM2 area of the zone, m²
     * @param coveredM2 its covered area, m²
     * @param products per product in rig order
     */
    public record ZoneSums(Prescription.Zone zone, double areaM2, double coveredM2, List<ZoneProduct> products) {
        /** Copies the list. */
        public ZoneSums {
            products = List.copyOf(products);
        }
    }

    /**
     * Sums of one product in one zone. Planned values are NaN if the prescription has no rate for the product there.
     *
     * @param planLPerM2 prescribed rate, L/m²
     * @param plannedCoveredL prescribed rate × covered area, L
     * @param plannedZoneL prescribed rate × the zone's area, L
     * @param loggedTargetL the log's target × covered area, L; NaN if the log has no target
     * @param receivedL received volume, L
     * @param meanRateLPerM2 received volume ÷ covered area, L/m²; NaN if nothing was covered
     * @param within5Pct share of covered area whose received rate is within 5 % of the plan, percent; NaN if no cell
     *     lies wholly in the zone or the plan is 0
     * @param within10Pct the same for 10 %
     * @param within20Pct the same for 20 %
     */
    public record ZoneProduct(
            double planLPerM2,
            double plannedCoveredL,
            double plannedZoneL,
            double loggedTargetL,
            double receivedL,
            double meanRateLPerM2,
            double within5Pct,
            double within10Pct,
            double within20Pct) {}
}
