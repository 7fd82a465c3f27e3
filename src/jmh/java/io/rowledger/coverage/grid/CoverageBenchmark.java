package io.rowledger.coverage.grid;

import io.rowledger.bench.BenchJob;
import io.rowledger.coverage.CoverageOptions;
import io.rowledger.coverage.Coverages;
import io.rowledger.coverage.CoveredArea;
import io.rowledger.coverage.OverlapFinder;
import io.rowledger.coverage.strips.VisitIndex;
import java.util.concurrent.TimeUnit;
import org.locationtech.jts.geom.Geometry;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;

/** Ground: cutting the strips, their union, ground done twice, the received grid; on one thread but for the last. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
public class CoverageBenchmark {
    private final CoverageOptions options = CoverageOptions.defaults(1);
    private BenchJob job;
    private VisitIndex index;
    private Geometry covered;

    /** Reads the job and takes it as far as the covered ground. */
    @Setup
    public void prepare() {
        job = BenchJob.read();
        index = new VisitIndex(Coverages.visits(job.track.passes(), job.strips, job.delivery, options.simplifyM(), 1));
        covered = CoveredArea.of(index, 1);
    }

    /** Polygons of runs, simplified. */
    @Benchmark
    public int strips() {
        return Coverages.visits(job.track.passes(), job.strips, job.delivery, options.simplifyM(), 1)
                .size();
    }

    /** Covered ground. */
    @Benchmark
    public double union() {
        return CoveredArea.of(index, 1).getArea();
    }

    /** Ground done already, visit by visit. */
    @Benchmark
    public int overlap() {
        return OverlapFinder.perVisit(index, 1).size();
    }

    /** One product's volume, laid on the grid and read off it: {@code StripDeposit} and {@code AreaAccumulator}. */
    @Benchmark
    public int gridDeposit() {
        return new ReceivedGridBuilder(job.strips, job.delivery, covered, options.cellM(), options.maxCells(), 1)
                .build(covered)
                .cols();
    }

    /** The whole room, on all cores. */
    @Benchmark
    public double whole() {
        CoverageOptions all = CoverageOptions.defaults(Runtime.getRuntime().availableProcessors());
        return Coverages.of(job.track, job.strips, job.delivery, job.boundary, all)
                .coveredAreaM2();
    }
}
