package io.rowledger.report.record;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.analysis.Analysis;
import io.rowledger.coverage.grid.ReceivedStatistics;
import io.rowledger.document.pdf.Paper;
import io.rowledger.report.common.ReportOptions;
import io.rowledger.report.common.SyntheticJob;
import io.rowledger.report.map.RateClasses;
import io.rowledger.units.UnitSystem;
import java.time.ZoneOffset;
import org.junit.jupiter.api.Test;

/** Figures worked by hand from the job described at {@link SyntheticJob}. */
class NitrogenGridTest {
    /** 160 m² overlap of 19,000 m² covered; the rest on target or 6 % over. */
    private static final double OVERLAP_PCT = 100.0 * 160 / 19_000;

    private static NitrogenGrid ground(Analysis a) {
        return NitrogenRecordReport.input(
                        a, new ReportOptions(UnitSystem.US, Paper.LETTER, ZoneOffset.UTC, null, "test"))
                .ground();
    }

    @Test
    void shares_against_the_target_are_those_of_the_liquid() {
        Analysis a = new SyntheticJob().cell(0.2).build();
        NitrogenGrid.Shares shares = ground(a).againstTarget();
        assertEquals(OVERLAP_PCT, shares.over(), 0.01);
        assertEquals(0, shares.under(), 1e-9);
        assertEquals(100 - OVERLAP_PCT, shares.within(), 0.01);
        ReceivedStatistics liquid = a.coverage().received().get(0);
        assertEquals(liquid.within10Pct(), shares.within(), 0.01);
        assertEquals(liquid.overPct(), shares.over(), 0.01);
    }

    @Test
    void what_came_before_counts_toward_the_plan() {
        NitrogenGrid ground = ground(new SyntheticJob().cell(0.2).build());
        // Ground on target has 0.04 L/m² x 0.424 kg/L = 0.01696 kg/m²; with 0.003 before it has 0.01996: on a plan of
        // 0.02,
        // and 50 % over one of 0.0133.
        assertEquals(100 - OVERLAP_PCT, ground.against(0.02, 0.003).within(), 0.01);
        assertEquals(100, ground.against(0.0133, 0.003).over(), 1e-9);
        // Without what came before all but the overlap ground and row 3 is more than 10 % short of 0.02: row 3 has
        // 0.01798, a little less than 10 % short of... 0.018 is the limit, so it is short too.
        assertEquals(100 - OVERLAP_PCT, ground.against(0.02, 0).under(), 0.01);
    }

    @Test
    void two_products_are_added_up_place_by_place() {
        NitrogenGrid ground =
                ground(new SyntheticJob().cell(0.2).even().withSecondProduct().build());
        // The grid holds the same 0.04 L/m² of both: 0.04 x (0.424 + 1.32 x 0.12) = 0.023296 kg/m², on 20,000 m² with
        // 160
        // overlap ones left out of this even job.
        assertTrue(ground.isNitrogen());
        assertEquals(0.04 * (0.424 + 1.32 * 0.12), ground.meanPerM2(), 1e-6);
    }

    @Test
    void without_a_density_the_ground_shows_the_liquid() {
        NitrogenGrid ground =
                ground(new SyntheticJob().cell(0.2).even().withoutDensity().build());
        assertFalse(ground.isNitrogen());
        assertEquals(0.04, ground.meanPerM2(), 1e-6);
    }

    @Test
    void classes_split_the_covered_ground() {
        NitrogenGrid ground = ground(new SyntheticJob().cell(0.2).build());
        // Up to 0.0175: the eight rows on target; to 0.03: row 3; above: the overlap ground, in which row 3 lies too.
        double[] areas = ground.areaPerClass(new double[] {0.0175, 0.03});
        assertEquals(19_000, areas[0] + areas[1] + areas[2], 1);
        assertEquals(160, areas[2], 0.5);
        assertEquals(OVERLAP_PCT, ground.abovePct(0.03), 0.01);
    }

    @Test
    void a_rate_on_a_bound_belongs_to_the_class_below() {
        double[] bounds = {1, 2};
        assertArrayEquals(new int[] {0, 0, 1, 1, 2}, new int[] {
            RateClasses.classOf(0, bounds),
            RateClasses.classOf(1, bounds),
            RateClasses.classOf(1.1, bounds),
            RateClasses.classOf(2, bounds),
            RateClasses.classOf(2.1, bounds)
        });
    }
}
