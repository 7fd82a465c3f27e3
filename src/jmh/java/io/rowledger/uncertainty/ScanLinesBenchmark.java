package io.rowledger.uncertainty;

import java.util.Arrays;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;

/** One sample of moved ground: ten thousand quadrangles of 12 m by 18 m in passes that overlap by half a meter. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
public class ScanLinesBenchmark {
    private static final int PASSES = 100;
    private static final int STEPS = 100;
    private static final double WIDTH_M = 18.5;
    private static final double APART_M = 18;
    private static final double STEP_M = 12;
    /** From the passes to the scan lines, rad. */
    private static final double ASLANT_RAD = 0.55;

    private double[][] u;
    private double[][] v;
    private double[][] domain;
    private ScanLines lines;

    /** Lays the passes. */
    @Setup
    public void prepare() {
        u = new double[PASSES * STEPS][4];
        v = new double[PASSES * STEPS][4];
        double cos = Math.cos(ASLANT_RAD);
        double sin = Math.sin(ASLANT_RAD);
        for (int i = 0; i < u.length; i++) {
            double eastM = i / STEPS * APART_M;
            double northM = i % STEPS * STEP_M;
            for (int corner = 0; corner < 4; corner++) {
                double x = eastM + (corner == 1 || corner == 2 ? WIDTH_M : 0);
                double y = northM + (corner > 1 ? STEP_M : 0);
                u[i][corner] = cos * x + sin * y;
                v[i][corner] = cos * y - sin * x;
            }
        }
        lines = new ScanLines(-sin * PASSES * APART_M, cos * STEPS * STEP_M, 300);
        domain = new double[lines.lines()][];
        Arrays.fill(domain, new double[] {-1e6, 1e6});
    }

    /** Adds them all and sums the lines. */
    @Benchmark
    public double sample() {
        lines.clear();
        for (int i = 0; i < u.length; i++) {
            lines.add(u[i], v[i]);
        }
        lines.sum(domain, 0);
        return lines.coveredM2();
    }
}
