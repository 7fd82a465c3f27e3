package io.rowledger.rate;

import io.rowledger.bench.BenchJob;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;

/** Sums over all strips: the areas alone, what the outlets delivered, and everything per row and pass. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
public class RatesBenchmark {
    private BenchJob job;

    /** Reads the job. */
    @Setup
    public void prepare() {
        job = BenchJob.read();
    }

    /** The signed area of every strip. */
    @Benchmark
    public double signedAreas() {
        double sum = 0;
        for (int k = 0; k < job.strips.poses().steps(); k++) {
            for (int r = 0; r < job.strips.rows(); r++) {
                sum += job.strips.signedAreaM2(k, r);
            }
        }
        return sum;
    }

    /** Flows and targets by step, and who delivers. */
    @Benchmark
    public int delivery() {
        return DeliveryBuilder.build(job.table, job.rig, job.strips).products();
    }

    /** Areas, volumes and turn errors. */
    @Benchmark
    public double rates() {
        return RatesBuilder.build(job.track, job.strips, job.delivery).sweptAreaM2();
    }
}
