package io.rowledger.zones;

import io.rowledger.coverage.Coverage;
import io.rowledger.field.Prescription;
import io.rowledger.log.LogTable;
import io.rowledger.rate.Delivery;
import io.rowledger.rate.PrescribedRates;
import io.rowledger.strip.Strips;
import io.rowledger.text.Message;
import io.rowledger.track.Pass;
import io.rowledger.zones.Zones.ZoneProduct;
import io.rowledger.zones.Zones.ZoneSums;
import java.util.Collections;
import java.util.List;
import java.util.stream.IntStream;

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
        boolean[] hasTarget = log.hasTargets();
        ZoneLines lines = new ZoneLines(passes, strips, delivery, prescribed, finder, prescription);
        List<ZoneChanges> changes =
                IntStream.range(0, hasTarget.length).mapToObj(lines::changes).toList();
        return compared(prescription, coverage, hasTarget, changes);
    }

    /**
     * Returns the comparison of ground that a map hands in. Where the rate changed at lines between zones is unknown: the map
     * has no path.
     *
     * @param hasTarget per product, whether the map has a target
     */
    public static Zones ofAreas(Prescription prescription, Coverage coverage, boolean[] hasTarget) {
        ZoneChanges unknown = ZoneChanges.unknown(Message.of("notes.zone_changes.no_path"));
        return compared(prescription, coverage, hasTarget, Collections.nCopies(hasTarget.length, unknown));
    }

    private static Zones compared(
            Prescription prescription, Coverage coverage, boolean[] hasTarget, List<ZoneChanges> changes) {
        List<ZoneSums> sums = new ZoneLedger(coverage.grid(), hasTarget).sums(prescription);
        double outsideM2 = coverage.coveredAreaM2();
        double[] outsideL = new double[hasTarget.length];
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
        for (int p = 0; p < outsideL.length; p++) {
            outsideL[p] = Math.max(0, outsideL[p]);
        }
        return new Zones(prescription, sums, Math.max(0, outsideM2), outsideL, changes);
    }
}
