package io.rowledger.report.rows;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.analysis.Analysis;
import io.rowledger.diagnose.HandMadePicture;
import io.rowledger.document.pdf.Paper;
import io.rowledger.rate.Delivery;
import io.rowledger.rate.HandMadeDelivery;
import io.rowledger.report.common.ReportOptions;
import io.rowledger.report.common.SyntheticJob;
import io.rowledger.report.findings.RowPicture;
import io.rowledger.units.UnitSystem;
import java.time.ZoneOffset;
import org.junit.jupiter.api.Test;

/**
 * {@link SyntheticJob}: ten rows of 0.8 m, ten passes of 250 m in 125 s. On 0.04 L/m² a row of 0.8 m at 2 m/s gives 0.064 L/s; here
 * row 3 gives 6 % more and row 7 nothing.
 */
class JobTracesTest {
    private static final double TARGET = 0.04;
    private static final double FLOW = 0.064;

    private static Delivery delivery(Analysis a) {
        double[] flows = {FLOW, FLOW, 1.06 * FLOW, FLOW, FLOW, FLOW, 0, FLOW, FLOW, FLOW};
        return HandMadeDelivery.steady(flows, TARGET, a.track().poses().steps());
    }

    private static JobTraces traces() {
        Analysis a = new SyntheticJob().build();
        return JobTraces.of(a.log(), a.track(), a.strips(), delivery(a), 0);
    }

    @Test
    void a_rows_rate_is_its_volume_over_the_ground_it_swept() {
        JobTraces traces = traces();
        RowPicture picture = traces.againstTarget(
                new SyntheticJob().build().diagnosis().pictures().get(0));
        for (int s = 0; s < traces.slices(); s++) {
            assertEquals(TARGET, traces.targetLPerM2[0][s], 1e-9);
            assertEquals(1.06 * TARGET, traces.rateLPerM2[2][s], 1e-4);
            assertEquals(0.06, picture.deviation()[2][s], 1e-3);
            assertEquals(0, picture.deviation()[0][s], 1e-3);
            assertEquals(-1, picture.deviation()[6][s], 1e-6);
            // Row 7 is no measure for row 1, and row 3 doesn't move the median.
            assertEquals(TARGET, traces.peersLPerM2(0)[s], 1e-4);
        }
    }

    /** Row 2 alone could not be held against the others for a pass: it was shut off, which is not off its target. */
    @Test
    void a_row_that_was_shut_off_is_not_drawn_as_off_its_target() {
        JobTraces traces = traces();
        double startS = traces.startS[0];
        double endS = traces.endS[traces.slices() - 1];
        float[][] ratio = new float[10][1];
        for (float[] row : ratio) {
            row[0] = 1;
        }
        ratio[1][0] = Float.NaN;
        RowPicture picture = traces.againstTarget(
                HandMadePicture.of(new double[] {startS}, new double[] {endS}, new int[] {1}, ratio));
        assertTrue(Float.isNaN(picture.deviation()[1][3]));
        assertEquals(0, picture.deviation()[0][3], 1e-3);
        for (float[] row : ratio) {
            row[0] = Float.NaN;
        }
        RowPicture empty = traces.againstTarget(
                HandMadePicture.of(new double[] {startS}, new double[] {endS}, new int[] {1}, ratio));
        assertEquals(0, empty.deviation()[1][3], 1e-3, "where no row is compared the target still is");
    }

    /** No slice lies across two passes, and together they are the working time. */
    @Test
    void slices_keep_within_their_pass() {
        Analysis a = new SyntheticJob().build();
        JobTraces traces = traces();
        double sumS = 0;
        for (int s = 0; s < traces.slices(); s++) {
            int number = traces.pass[s];
            var pass = a.track().passes().get(number - 1);
            assertTrue(traces.startS[s] >= pass.startS() - 1e-6 && traces.endS[s] <= pass.endS() + 1e-6, "slice " + s);
            sumS += traces.endS[s] - traces.startS[s];
        }
        assertEquals(new WorkClock(a.track().passes()).workingS(), sumS, 1e-3);
    }

    /** 0.04 L/m² × 2 m/s × 0.8 m × 60 s = 3.84 L/min, and 1.92 L in 30 s. */
    @Test
    void a_timed_catch_has_the_figure_of_target_speed_and_width() {
        Analysis a = new SyntheticJob().build();
        Analysis steady = new Analysis(
                a.rig(),
                a.log(),
                a.track(),
                a.strips(),
                delivery(a),
                a.rates(),
                a.coverage(),
                a.diagnosis(),
                a.intervals(),
                a.notes());
        String figure = RowDiagnosisReport.of(
                        steady, new ReportOptions(UnitSystem.METRIC, Paper.A4, ZoneOffset.UTC, null, "test"))
                .content()
                .catchFigure()
                .replace('\u00a0', ' ');
        assertTrue(figure.endsWith("each row must give 3.84 L/min: 1.92 L in 30 s."), figure);
        assertTrue(figure.startsWith("At 400 L/ha, 7.2 km/h and a row width of 80.0 cm"), figure);
    }
}
