package io.rowledger.analysis;

import io.rowledger.coverage.Coverage;
import io.rowledger.log.LogTable;
import io.rowledger.rig.Product;
import io.rowledger.rig.Rig;
import io.rowledger.zones.Zones;
import java.util.List;
import java.util.Locale;

/** What a reader must know of how a prescription was used. */
final class ZoneNotes {
    /** Less covered ground than this share outside all zones is the ragged edge of a map. */
    private static final double MUCH_OUTSIDE = 0.005;

    private ZoneNotes() {}

    static void add(Zones zones, LogTable log, Rig rig, Coverage coverage, List<String> notes) {
        String file = zones.prescription().file();
        if (zones.prescription().repaired()) {
            notes.add(file + ": a zone's outline was not valid (it crosses or touches itself) and was repaired.");
        }
        if (zones.prescription().sliverM2() > 0) {
            notes.add(String.format(
                    Locale.ROOT,
                    "%s: %.0f m2 lie in two zones in thin slivers along their edges; the zone that stands first in the"
                            + " file has them.",
                    file,
                    Math.ceil(zones.prescription().sliverM2())));
        }
        double outside = zones.outsideCoveredM2() / coverage.coveredAreaM2();
        for (int p = 0; p < rig.products().size(); p++) {
            Product product = rig.products().get(p);
            if (log.hasTarget(p)) {
                notes.add(product.name() + ": the log has a target of its own, so rows and ground are held against what"
                        + " the machine was asked; only the zones' table holds them against the prescription.");
            } else if (outside > 0 && Double.isNaN(product.targetLPerM2())) {
                notes.add(product.name() + ": " + share(outside) + " of the covered ground lies in no zone of the"
                        + " prescription and the rig file has no target to fill in, so rows that went there can't be held"
                        + " against a target. A line 'target:' under the product in the rig file mends it.");
            } else if (outside > MUCH_OUTSIDE) {
                notes.add(product.name() + ": " + share(outside) + " of the covered ground lies in no zone of the"
                        + " prescription; there the rig file's target counts.");
            }
        }
    }

    private static String share(double outside) {
        return outside < 0.001 ? "less than 0.1%" : String.format(Locale.ROOT, "%.1f%%", 100 * outside);
    }
}
