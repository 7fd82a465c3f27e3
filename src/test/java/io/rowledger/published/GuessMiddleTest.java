package io.rowledger.published;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.coverage.Coverage;
import io.rowledger.coverage.CoverageOptions;
import io.rowledger.coverage.Coverages;
import io.rowledger.coverage.grid.ReceivedGrid;
import io.rowledger.rate.Delivery;
import io.rowledger.rate.DeliveryBuilder;
import io.rowledger.rate.RateFormula;
import io.rowledger.rate.SteadyMotion;
import io.rowledger.rig.Rig;
import io.rowledger.strip.Strips;
import io.rowledger.track.PoseColumns;
import io.rowledger.track.Track;
import io.rowledger.units.Factor;
import java.util.Arrays;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * A knife in every middle: n rows, n + 1 knives, the outer two in the guess middles that neighboring passes share. That
 * outside knives run at half rate is practice (from memory); what half, full and no flow there put on the guess middle
 * once both passes are driven is arithmetic (derived): 100, 200 and 0 %.
 */
class GuessMiddleTest {
    private static final double SPACING_M = 30 * Factor.METRES_PER_INCH;
    private static final int ROWS = 4;
    private static final double PASS_M = ROWS * SPACING_M;
    private static final double SPEED_MPS = 2;
    private static final int STEPS = 16;

    /** A sixth of a row, so that several whole cells lie within the guess middle. */
    private static final double CELL_M = SPACING_M / 6;

    @ParameterizedTest
    @CsvSource({"0.5, 100", "1, 200", "0, 0"})
    void after_both_passes_the_guess_middle_has_received(double outerFlow, double percent) {
        double target = 50 * Factor.LITRES_PER_SQUARE_METRE_PER_GPA;
        ReceivedGrid grid = twoPasses(outerFlow, target).grid();
        int guess = 0;
        int inside = 0;
        for (int row = 0; row < grid.rows(); row++) {
            for (int col = 0; col < grid.cols(); col++) {
                double west = grid.east0M() + col * grid.cellM();
                double south = grid.north0M() + row * grid.cellM();
                if (south < grid.cellM() || south > STEPS * SPEED_MPS - 2 * grid.cellM()) {
                    continue;
                }
                int cell = row * grid.cols() + col;
                double cellM2 = grid.cellM() * grid.cellM();
                double received = 100 * grid.volumeL()[0][cell] / (target * cellM2);
                if (within(west, PASS_M / 2 - SPACING_M / 2, PASS_M / 2 + SPACING_M / 2)) {
                    // The grid holds floats: seven digits, less what adding strips up costs.
                    assertEquals(percent, received, 0.01, "guess middle, " + west + " m east");
                    assertEquals(percent == 0 ? 0 : cellM2, grid.coveredM2()[cell], 1e-6);
                    guess++;
                } else if (within(west, -PASS_M / 2 + SPACING_M / 2, PASS_M / 2 - SPACING_M / 2)) {
                    assertEquals(100, received, 0.01, "inside middle, " + west + " m east");
                    inside++;
                }
            }
        }
        assertTrue(guess > 500 && inside > 1500, guess + " cells in the guess middle, " + inside + " inside");
    }

    private static boolean within(double west, double from, double to) {
        return west > from + 1e-6 && west + CELL_M < to - 1e-6;
    }

    /** Two passes north side by side, the second a pass width east of the first. */
    private static Coverage twoPasses(double outerFlow, double target) {
        PoseColumns c = SteadyMotion.columns(2 * STEPS + 1, 1);
        for (int i = 0; i <= STEPS; i++) {
            SteadyMotion.put(c, i, 0, i * SPEED_MPS, 0);
            SteadyMotion.put(c, STEPS + 1 + i, PASS_M, i * SPEED_MPS, 0);
        }
        c.pass[STEPS] = 0;
        Arrays.fill(c.pass, STEPS + 1, 2 * STEPS + 1, 2);
        double[] widths = new double[ROWS + 1];
        Arrays.fill(widths, SPACING_M);
        widths[0] = SPACING_M / 2;
        widths[ROWS] = SPACING_M / 2;
        double[] flows = new double[ROWS + 1];
        Arrays.fill(flows, RateFormula.flowLPerS(target, SPEED_MPS, SPACING_M));
        flows[0] *= outerFlow;
        flows[ROWS] *= outerFlow;
        Rig rig = SteadyMotion.rig(SteadyMotion.bandsOfWidth(widths), target, 0);
        Track track = SteadyMotion.track(c);
        Strips strips = new Strips(track.poses(), rig.bands());
        Delivery delivery =
                DeliveryBuilder.build(SteadyMotion.log(c, SteadyMotion.steadyFlows(2 * STEPS + 1, flows)), rig, strips);
        CoverageOptions usual = CoverageOptions.defaults(1);
        CoverageOptions fine = new CoverageOptions(
                CELL_M, usual.simplifyM(), 1, usual.maxCells(), usual.minPatchM2(), usual.minPatchWidthM());
        return Coverages.of(track, strips, delivery, null, fine);
    }
}
