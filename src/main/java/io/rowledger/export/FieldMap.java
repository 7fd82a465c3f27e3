package io.rowledger.export;

import io.rowledger.analysis.Analysis;
import io.rowledger.analysis.JobClock;
import io.rowledger.coverage.Coverage;
import io.rowledger.finding.Finding;
import io.rowledger.rate.Rates;
import io.rowledger.report.common.JobTimes;
import io.rowledger.rig.Product;
import io.rowledger.setback.Setbacks;
import io.rowledger.track.Track;
import io.rowledger.zones.Zones;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What the maps for other programs are made of.
 *
 * @param products in the order of the rig file
 * @param track poses and passes
 * @param coverage strips, skips, overlaps, received grid
 * @param rates volumes by pass
 * @param findings most certain first
 * @param zones of the prescription; null without one
 * @param setbacks places to keep away from; null where no such file was given
 * @param endS when the work ended, epoch seconds; NaN in a log without times
 */
public record FieldMap(
        List<Product> products,
        Track track,
        Coverage coverage,
        Rates rates,
        List<Finding> findings,
        @Nullable Zones zones,
        @Nullable Setbacks setbacks,
        double endS) {
    /** Copies the lists. */
    public FieldMap {
        products = List.copyOf(products);
        findings = List.copyOf(findings);
    }

    /** The maps' part of a job. */
    public static FieldMap of(Analysis a) {
        return new FieldMap(
                a.rig().products(),
                a.track(),
                a.coverage(),
                a.rates(),
                a.findings(),
                a.zones(),
                a.setbacks(),
                JobTimes.of(a.track(), a.log(), JobClock.zone(a)).endS());
    }
}
