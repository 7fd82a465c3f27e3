package io.rowledger.report.findings;

import io.rowledger.coverage.Coverage;
import io.rowledger.diagnose.Diagnosis;
import io.rowledger.finding.Finding;
import io.rowledger.rig.Rig;
import io.rowledger.strip.Strips;
import io.rowledger.track.Pass;
import io.rowledger.track.Track;
import io.rowledger.uncertainty.Interval;
import io.rowledger.uncertainty.Intervals;
import io.rowledger.uncertainty.UncertaintyBudget;
import java.util.stream.IntStream;

/**
 * The uncertainty of each finding's ground and liquid.
 *
 * <p>The liquid of a finding is a difference: what rows metered less what the other rows imply. Each meter's own calibration
 * enters with the whole volume that was due, V·a/√6 a row over √n rows, however small the difference; the calibration error
 * that all meters share enters with the difference alone. A finding of the whole bar is compared with the target, so the
 * whole error of the bar's volume counts. Late starts and early stops are known to half a record on either side, pass by
 * pass. The onset is taken as found: no interval includes its error.
 */
public record FindingUncertainties(
        Rig rig, Strips strips, Track track, Coverage coverage, Diagnosis diagnosis, Intervals intervals) {
    /** From one standard deviation to the half width that holds 90 of 100 normal errors. */
    private static final double NORMAL_90 = 1.645;
    /** From the half width of a uniform error to the half width that holds 90 of 100. */
    private static final double UNIFORM_90 = 0.9;

    /** The uncertainty of finding i. */
    public FindingUncertainty of(int i) {
        Finding finding = diagnosis.findings().get(i);
        UncertaintyBudget basis = intervals.basis();
        if (basis.liquids().isEmpty()) {
            return FindingUncertainty.unknown(finding);
        }
        int p = diagnosis.windows().get(i).product();
        return switch (finding.kind()) {
            // Findings about the setup: the setup check has an interval of its own.
            case FLOW_LAG, DROP_OFFSET, SIDE_OFFSET -> FindingUncertainty.unknown(finding);
            case LATE_ON, EARLY_OFF -> {
                double areaM2 = Math.hypot(relativeArea(finding) * finding.areaM2(), endsM2(finding));
                double share = finding.areaM2() > 0 ? areaM2 / finding.areaM2() : Double.NaN;
                yield of(finding, p, areaM2, share * finding.volumeL());
            }
            default -> of(finding, p, relativeArea(finding) * finding.areaM2(), halfL(finding, p));
        };
    }

    private FindingUncertainty of(Finding finding, int p, double halfM2, double halfL) {
        UncertaintyBudget.Liquid liquid = intervals.basis().liquids().get(p);
        double density = UNIFORM_90 * liquid.densityAccuracy() * finding.volumeL();
        double halfKg = Math.hypot(halfL, density) * rig.products().get(p).nitrogenKgPerL();
        return new FindingUncertainty(
                about(finding.areaM2(), halfM2),
                about(finding.volumeL(), Math.abs(halfL)),
                about(finding.nitrogenKg(), halfKg));
    }

    private static Interval about(double value, double half) {
        return Double.isFinite(value) && Double.isFinite(half) && half > 0
                ? new Interval(value, value - half, value + half)
                : Interval.unknown(value);
    }

    /** Half width of swept ground, of a row or of the bar, as a fraction of it. */
    private double relativeArea(Finding finding) {
        if (finding.rows().isEmpty()) {
            return relative(intervals.sweptAreaM2());
        }
        return finding.rows().stream()
                .mapToDouble(row -> relative(intervals.rows().get(row - 1).sweptAreaM2()))
                .max()
                .orElse(Double.NaN);
    }

    private static double relative(Interval interval) {
        return interval.known() ? (interval.high() - interval.low()) / 2 / interval.value() : Double.NaN;
    }

    /** Late starts and early stops: each edge known to half a record, the same for all rows of a pass; half width, m². */
    private double endsM2(Finding finding) {
        double widthM = rows(finding)
                .mapToDouble(r -> strips.rightM(r) - strips.leftM(r))
                .sum();
        double square = 0;
        for (Pass pass : track.passes()) {
            if (pass.endS() > finding.fromS() && pass.startS() < finding.toS()) {
                double recordM = pass.lengthM()
                        / (pass.endS() - pass.startS())
                        * intervals.basis().intervalS();
                square += recordM * recordM / 6;
            }
        }
        return NORMAL_90 * widthM * Math.sqrt(square);
    }

    private IntStream rows(Finding finding) {
        return finding.rows().isEmpty()
                ? IntStream.range(0, rig.rows())
                : finding.rows().stream().mapToInt(row -> row - 1);
    }

    private double halfL(Finding finding, int p) {
        double dueL = finding.areaM2() * coverage.received().get(p).meanRateLPerM2();
        if (finding.rows().isEmpty()) {
            return relative(intervals.products().get(p).volumeL()) * dueL;
        }
        double accuracy = intervals.basis().liquids().get(p).meterAccuracy();
        double own = NORMAL_90 * accuracy / Math.sqrt(6.0 * rows(finding).toArray().length) * dueL;
        return Math.hypot(own, UNIFORM_90 * accuracy / Math.sqrt(2) * finding.volumeL());
    }
}
