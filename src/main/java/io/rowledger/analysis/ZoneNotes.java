package io.rowledger.analysis;

import io.rowledger.coverage.Coverage;
import io.rowledger.rig.Product;
import io.rowledger.rig.Rig;
import io.rowledger.text.Argument;
import io.rowledger.text.Message;
import io.rowledger.units.QuantityKind;
import io.rowledger.zones.Zones;
import java.util.ArrayList;
import java.util.List;

/** What a reader must know of how a prescription was used. */
final class ZoneNotes {
    /** Share of covered ground outside all zones up to which it is the ragged edge of a map (1); common practice, no source. */
    private static final double MAX_RAGGED_EDGE = 0.005;

    /** Smallest share that is printed as a figure (1). */
    private static final double MIN_PRINTED = 0.001;

    private ZoneNotes() {}

    /**
     * Returns the notes.
     *
     * @param hasTarget per product, whether the log has a target
     */
    static List<Message> of(Zones zones, boolean[] hasTarget, Rig rig, Coverage coverage) {
        List<Message> notes = new ArrayList<>();
        String file = zones.prescription().file();
        if (zones.prescription().repaired()) {
            notes.add(Message.of("notes.zones.repaired", file));
        }
        if (zones.prescription().sliverM2() > 0) {
            double sliverM2 = zones.prescription().sliverM2();
            notes.add(Message.of("notes.zones.slivers", file, Message.value(QuantityKind.PATCH, sliverM2)));
        }
        double outside = zones.outsideCoveredM2() / coverage.coveredAreaM2();
        for (int p = 0; p < rig.products().size(); p++) {
            Product product = rig.products().get(p);
            if (hasTarget[p]) {
                notes.add(Message.of("notes.zones.log_target", product.name()));
            } else if (outside > 0 && Double.isNaN(product.targetLPerM2())) {
                notes.add(Message.of("notes.zones.no_target", product.name(), share(outside)));
            } else if (outside > MAX_RAGGED_EDGE) {
                notes.add(Message.of("notes.zones.rig_target", product.name(), share(outside)));
            }
        }
        return notes;
    }

    private static Argument share(double outside) {
        return outside < MIN_PRINTED ? Message.of("notes.zones.share.little") : Message.percent(100 * outside);
    }
}
