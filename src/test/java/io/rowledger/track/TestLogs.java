package io.rowledger.track;

import io.rowledger.geo.LocalPlane;
import io.rowledger.log.LogColumns;
import io.rowledger.log.LogTable;
import io.rowledger.rig.Band;
import io.rowledger.rig.BarLengths;
import io.rowledger.rig.Hitch;
import io.rowledger.rig.Job;
import io.rowledger.rig.Product;
import io.rowledger.rig.Rig;
import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleFunction;

/** Logs of an antenna on a known path, without noise, for checks against closed forms. */
public final class TestLogs {
    private TestLogs() {}

    /** A log of n records at hz; {@code path} gives {east, north} in meters around 42 N, 93 W for seconds from the start. */
    public static LogTable along(DoubleFunction<double[]> path, int n, double hz, int outlets, double flowLPerS) {
        LocalPlane plane = new LocalPlane(42, -93);
        LogColumns c = new LogColumns();
        c.products = List.of("uan");
        c.timeS = new double[n];
        c.latDeg = new double[n];
        c.lonDeg = new double[n];
        c.breakBefore = new boolean[n];
        c.fix = new byte[n];
        c.down = new byte[n];
        c.flowLPerS = new double[1][outlets][n];
        c.targetLPerM2 = new double[1][0];
        c.totalLPerS = new double[1][0];
        double[] out = new double[2];
        for (int i = 0; i < n; i++) {
            double[] place = path.apply(i / hz);
            plane.inverse(place[0], place[1], out);
            c.timeS[i] = 1_750_000_000 + i / hz;
            c.latDeg[i] = out[0];
            c.lonDeg[i] = out[1];
            c.fix[i] = 4;
            c.down[i] = 1;
            for (int r = 0; r < outlets; r++) {
                c.flowLPerS[0][r][i] = flowLPerS;
            }
        }
        c.breakBefore[0] = true;
        return new LogTable(c, List.of());
    }

    /** A bar of equal bands; drawbar NaN for a carried one. */
    public static Rig rig(double aheadM, double axleToHitchM, double drawbarM, double hitchToDropM, int rows) {
        double spacing = 0.762;
        List<Band> bands = new ArrayList<>();
        for (int r = 0; r < rows; r++) {
            double left = (r - rows / 2.0) * spacing;
            bands.add(new Band(r + 1, left + spacing / 2, left, left + spacing, 1, null));
        }
        Product uan = new Product("uan", "UAN 32-0-0", 1.32528, 0.32, 0, 0, 0, 4e-2, 0);
        Hitch hitch = Double.isNaN(drawbarM) ? Hitch.MOUNTED : Hitch.PULL_TYPE;
        BarLengths lengths = new BarLengths(aheadM, 0, axleToHitchM, hitch, drawbarM, hitchToDropM, 0, Double.NaN);
        return Rig.of("test", lengths, bands, List.of(uan), Job.NONE);
    }
}
