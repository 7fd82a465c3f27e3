package io.rowledger.zones;

import io.rowledger.coverage.Coverage;
import io.rowledger.field.Prescription;
import io.rowledger.log.LogTable;
import io.rowledger.rate.Delivery;
import io.rowledger.rate.PrescribedRates;
import io.rowledger.strip.Strips;
import io.rowledger.track.Pass;
import io.rowledger.zones.Zones.ZoneProduct;
import io.rowledger.zones.Zones.ZoneSums;
import java.util.ArrayList;
import java.util.List;

/**
 * Compares a prescription with the received rates: first {@link #prescribedRates}, which the delivery's targets need, then
 * {@link #zones}.
 */
public final class ZonesBuilder {
    private final Prescription prescription;
    private final Strips strips;
    private final ZoneFinder finder;
    private final PrescribedRates prescribed;

    /** Finds the zone of each strip. */
    public ZonesBuilder(Prescription prescription, Strips strips, int products) {
        this.prescription = prescription;
        this.strips = strips;
        this.finder = new ZoneFinder(prescription, products);
        this.prescribed = finder.along(strips);
    }

    /** Returns the prescribed rate of each strip. */
    public PrescribedRates prescribedRates() {
        return prescribed;
    }

    /**
     * Returns the comparison, zone by zone.
     *
     * @param log tells for which products it has a target
     */
    public Zones zones(LogTable log, List<Pass> passes, Delivery delivery, Coverage coverage) {
        boolean[] hasTarget = new boolean[delivery.products()];
        for (int p = 0; p < hasTarget.length; p++) {
            hasTarget[p] = log.hasTarget(p);
        }
        List<ZoneSums> sums = new ZoneLedger(coverage.grid(), hasTarget).sums(prescription);
        double outsideM2 = coverage.coveredAreaM2();
        double[] outsideL = new double[delivery.products()];
        for (int p = 0; p < outsideL.length; p++) {
            outsideL[p] = coverage.received().get(p).gridVolumeL();
        }
        for (ZoneSums zone : sums) {
            outsideM2 -= zone.coveredM2();
            for (int p = 0; p < outsideL.length; p++) {
                ZoneProduct product = zone.products().get(p);
                outsideL[p] -= product.receivedL();
            }
        }
        List<ZoneChanges> changes = new ArrayList<>();
        ZoneLines lines = new ZoneLines(passes, strips, delivery, prescribed, finder, prescription);
        for (int p = 0; p < outsideL.length; p++) {
            changes.add(lines.changes(p));
            outsideL[p] = Math.max(0, outsideL[p]);
        }
        return new Zones(prescription, sums, Math.max(0, outsideM2), outsideL, changes);
    }
}
