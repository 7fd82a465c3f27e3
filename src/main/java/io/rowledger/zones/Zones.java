package io.rowledger.zones;

import io.rowledger.field.Prescription;
import java.util.List;

/**
 * The prescription against what was done, zone by zone.
 *
 * @param prescription the map
 * @param zones in the prescription's order
 * @param outsideCoveredM2 covered ground outside all zones, m²
 * @param outsideReceivedL per product, volume put down there, L; shared, read only
 * @param changes per product, how the rate changed where rows crossed from one zone into another
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
     * One zone.
     *
     * @param zone the zone
     * @param areaM2 of the zone, m²
     * @param coveredM2 of it covered, m²
     * @param products per product in rig order
     */
    public record ZoneSums(Prescription.Zone zone, double areaM2, double coveredM2, List<ZoneProduct> products) {
        /** Copies the list. */
        public ZoneSums {
            products = List.copyOf(products);
        }
    }

    /**
     * One product in one zone. PrescribedRates figures are NaN where the prescription says nothing of the product there.
     *
     * @param planLPerM2 the rate the prescription asks for, L/m²
     * @param plannedCoveredL that rate × covered area, L
     * @param plannedZoneL that rate × the zone's area, L
     * @param loggedTargetL the log's own target × covered area, L; NaN where the log has no target column
     * @param receivedL volume put down, L
     * @param meanRateLPerM2 received volume ÷ covered area; NaN where nothing was covered
     * @param within5Pct share of covered ground whose received rate is within 5 % of the plan, percent; NaN where there is
     *     none to judge or the plan is 0
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
