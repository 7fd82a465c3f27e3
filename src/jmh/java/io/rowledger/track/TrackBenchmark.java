package io.rowledger.track;

import io.rowledger.bench.BenchJob;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;

/** From fixes to poses: the smoother and the towing chain alone, then the whole room. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
public class TrackBenchmark {
    /** RTK, as the log has it. */
    private static final double SIGMA_M = 0.012;

    private BenchJob job;
    private double[] timeS;
    private double[] eastM;
    private double[] northM;
    private double[] sigmaM;

    /** Reads the job. */
    @Setup
    public void prepare() {
        job = BenchJob.read();
        int n = job.table.records();
        timeS = new double[n];
        eastM = new double[n];
        northM = new double[n];
        sigmaM = new double[n];
        double[] out = new double[2];
        for (int i = 0; i < n; i++) {
            job.track.plane().forward(job.table.latDeg(i), job.table.lonDeg(i), out);
            timeS[i] = job.table.timeS(i);
            eastM[i] = out[0];
            northM[i] = out[1];
            sigmaM[i] = SIGMA_M;
        }
    }

    /** Smooths all fixes as one stretch. */
    @Benchmark
    public double smoother() {
        return PathSmoother.of(timeS, eastM, northM, sigmaM).pe[0];
    }

    /** Tows tractor and bar along the poses' antennas. */
    @Benchmark
    public double towingChain() {
        Poses poses = job.track.poses();
        TowingChain chain = new TowingChain(job.rig);
        chain.place(poses.antennaEastM(0), poses.antennaNorthM(0), poses.headingRad(0));
        for (int i = 1; i < poses.poses(); i++) {
            chain.moveTo(poses.antennaEastM(i), poses.antennaNorthM(i), true);
        }
        return chain.headingRad();
    }

    /** Everything, on one thread. */
    @Benchmark
    public int build() {
        return TrackBuilder.build(job.table, job.rig, TrackOptions.defaults())
                .poses()
                .poses();
    }
}
