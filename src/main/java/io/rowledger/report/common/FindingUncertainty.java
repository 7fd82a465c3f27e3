package io.rowledger.report.common;

import io.rowledger.analysis.Analysis;
import io.rowledger.finding.Finding;
import io.rowledger.track.Pass;
import io.rowledger.uncertainty.Interval;
import io.rowledger.uncertainty.Intervals;
import io.rowledger.uncertainty.UncertaintyBudget;
import java.util.stream.IntStream;

/**
 * How sure a finding's ground and liquid are.
 *
 * <p>Its liquid is a difference: what rows metered less what their siblings imply. Each meter's own calibration enters with all
 * that was due, V·a/√6 a row over √n rows, however small the difference; what all meters share only with the difference
 * itself. A finding of the whole bar is held against the target, so the whole error of the bar's volume counts. Bare ends are
 * known to half a record on either side, pass by pass. When a fault began is taken as found: no bounds hold that.
 *
 * @param areaM2 ground, m²
 * @param volumeL liquid, L
 * @param nitrogenKg nitrogen, kg
 */
public record FindingUncertainty(Interval areaM2, Interval volumeL, Interval nitrogenKg) {
    /** From one standard deviation of a normal error to what 90 of 100 stay within. */
    private static final double NORMAL_90 = 1.645;
    /** From the half width of an even error to what 90 of 100 stay within. */
    private static final double EVEN_90 = 0.9;

    /** Nothing can be said. */
    public static FindingUncertainty unknown(Finding finding) {
        return new FindingUncertainty(
                Interval.unknown(finding.areaM2()),
                Interval.unknown(finding.volumeL()),
                Interval.unknown(finding.nitrogenKg()));
    }

    /** Of finding i of an analysis. */
    public static FindingUncertainty of(Analysis a, int i) {
        Finding finding = a.findings().get(i);
        UncertaintyBudget basis = a.intervals().basis();
        if (basis.liquids().isEmpty()) {
            return unknown(finding);
        }
        int p = a.diagnosis().windows().get(i).product();
        return switch (finding.kind()) {
            // Places where the setup is taken to be wrong: the setup check's own interval says how sure that is.
            case FLOW_LAG, DROP_OFFSET, SIDE_OFFSET -> unknown(finding);
            case LATE_ON, EARLY_OFF -> {
                double areaM2 = Math.hypot(relativeArea(a, finding) * finding.areaM2(), endsM2(a, finding));
                double share = finding.areaM2() > 0 ? areaM2 / finding.areaM2() : Double.NaN;
                yield of(a, finding, p, areaM2, share * finding.volumeL());
            }
            default -> of(a, finding, p, relativeArea(a, finding) * finding.areaM2(), halfL(a, finding, p));
        };
    }

    private static FindingUncertainty of(Analysis a, Finding finding, int p, double halfM2, double halfL) {
        UncertaintyBudget.Liquid liquid = a.intervals().basis().liquids().get(p);
        double density = EVEN_90 * liquid.densityAccuracy() * finding.volumeL();
        double halfKg = Math.hypot(halfL, density) * a.rig().products().get(p).nitrogenKgPerL();
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

    /** Half of what swept ground may be off by, as a share: of one row, or of the bar. */
    private static double relativeArea(Analysis a, Finding finding) {
        Intervals in = a.intervals();
        if (finding.rows().isEmpty()) {
            return relative(in.sweptAreaM2());
        }
        return finding.rows().stream()
                .mapToDouble(row -> relative(in.rows().get(row - 1).sweptAreaM2()))
                .max()
                .orElse(Double.NaN);
    }

    private static double relative(Interval interval) {
        return interval.known() ? (interval.high() - interval.low()) / 2 / interval.value() : Double.NaN;
    }

    /** Both edges of a bare end within half a record of their own, the same for all rows of a pass. */
    private static double endsM2(Analysis a, Finding finding) {
        double widthM = rows(a, finding)
                .mapToDouble(r -> a.strips().rightM(r) - a.strips().leftM(r))
                .sum();
        double square = 0;
        for (Pass pass : a.track().passes()) {
            if (pass.endS() > finding.fromS() && pass.startS() < finding.toS()) {
                double recordM = pass.lengthM()
                        / (pass.endS() - pass.startS())
                        * a.intervals().basis().intervalS();
                square += recordM * recordM / 6;
            }
        }
        return NORMAL_90 * widthM * Math.sqrt(square);
    }

    private static IntStream rows(Analysis a, Finding finding) {
        return finding.rows().isEmpty()
                ? IntStream.range(0, a.rig().rows())
                : finding.rows().stream().mapToInt(row -> row - 1);
    }

    private static double halfL(Analysis a, Finding finding, int p) {
        double dueL = finding.areaM2() * a.coverage().received().get(p).meanRateLPerM2();
        if (finding.rows().isEmpty()) {
            return relative(a.intervals().products().get(p).volumeL()) * dueL;
        }
        double accuracy = a.intervals().basis().liquids().get(p).meterAccuracy();
        double own = NORMAL_90 * accuracy / Math.sqrt(6.0 * rows(a, finding).toArray().length) * dueL;
        return Math.hypot(own, EVEN_90 * accuracy / Math.sqrt(2) * finding.volumeL());
    }
}
