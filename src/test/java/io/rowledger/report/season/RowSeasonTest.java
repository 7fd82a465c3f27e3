package io.rowledger.report.season;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.finding.FindingKind;
import io.rowledger.report.season.RowSeason.Drift;
import io.rowledger.report.season.RowSeason.OfJob;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class RowSeasonTest {
    private static final double NAN = Double.NaN;

    /** Jobs whose middles lie 1, 2, 3 ... working hours after the start of the season, of rows that don't scatter. */
    private static RowSeason row(double... ratios) {
        List<OfJob> jobs = new ArrayList<>();
        for (double ratio : ratios) {
            jobs.add(new OfJob(3600.0 * (jobs.size() + 1), ratio, ratio, 0, 1, 3000, List.of()));
        }
        return new RowSeason(5, jobs);
    }

    /**
     * By hand: ratios 1.00, 0.98, 0.97 and 0.95 at hours 1 to 4 fall by 0.016 an hour, 4.8 % over the three hours from the first to
     * the last. With 0.5 % a job, σ of the slope is 0.005/√5 = 0.002236, and 1.645 of that over three hours 1.10 %. Twelve rows want
     * the normal quantile of 1 − 0.1/24, 2.638: 0.0059 an hour, which 0.016 exceeds.
     */
    @Test
    void a_drift_is_told_where_it_exceeds_its_uncertainty() {
        Drift drift = row(1.00, 0.98, 0.97, 0.95).ratioDrift(12);
        assertEquals(-0.048, drift.change(), 1e-9);
        assertEquals(0.0110, drift.uncertainty(), 5e-5);
        assertTrue(drift.told());
        assertTrue(row(1.00, 0.98, 0.97, 0.95).toCalibrate(12));
    }

    /** 0.004 an hour is within the 0.0059 that twelve rows show by chance. */
    @Test
    void a_small_change_is_not_told() {
        Drift drift = row(1.000, 0.996, 0.992, 0.988).ratioDrift(12);
        assertEquals(-0.012, drift.change(), 1e-9);
        assertFalse(drift.told());
        assertFalse(row(1.000, 0.996, 0.992, 0.988).toCalibrate(12));
    }

    /** Up and down by 10 % is no drift: the scatter widens the error. */
    @Test
    void a_row_that_jumps_is_not_said_to_drift() {
        assertFalse(row(1, 0.9, 1, 0.9, 1).ratioDrift(12).told());
    }

    @Test
    void two_jobs_tell_no_drift() {
        assertTrue(Double.isNaN(row(1, 0.9).ratioDrift(12).change()));
    }

    /** A plugged job says nothing about the meter; a constant share does. */
    @Test
    void a_constant_share_counts_and_a_plugged_row_does_not() {
        OfJob plugged = new OfJob(3600, NAN, 0.03, NAN, NAN, 0, List.of(FindingKind.PLUGGED));
        OfJob scaled = new OfJob(3600, NAN, 0.91, NAN, NAN, 0, List.of(FindingKind.METER_SCALE));
        assertTrue(Double.isNaN(plugged.level()));
        assertEquals(0.91, scaled.level());
        assertFalse(new RowSeason(1, List.of(plugged)).toCalibrate(12));
        assertTrue(new RowSeason(1, List.of(scaled)).toCalibrate(12));
        assertEquals(1, new RowSeason(1, List.of(scaled, plugged)).meterFindings());
    }

    /** 1.2533 × 2 % ÷ √(1000 s ÷ 10 s) = 0.2507 %; with 0.5 % from job to job 0.5593 %. */
    @Test
    void the_error_of_a_job_has_two_parts() {
        OfJob job = new OfJob(3600, 1, 1, 0.02, 1, 1000, List.of());
        assertEquals(0.005593, job.sigma(), 1e-6);
    }
}
