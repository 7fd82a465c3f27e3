package io.rowledger.report.common;

import io.rowledger.track.TrackQuality;
import io.rowledger.uncertainty.Interval;
import io.rowledger.uncertainty.Intervals;
import io.rowledger.uncertainty.UncertaintyBudget;
import io.rowledger.units.QuantityKind;
import io.rowledger.units.UnitFormat;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

/** Figures with their intervals as people read them, and what the intervals rest on. */
public final class IntervalPhrases {
    /** Fix types rarer than this share say nothing of the whole. */
    private static final double RARE = 0.01;

    private final UnitFormat f;

    public IntervalPhrases(UnitFormat f) {
        this.f = f;
    }

    /** {@code 61.3 ac}: the figure without the digits its interval denies. */
    public String value(QuantityKind measure, double si, Interval interval) {
        return f.valueWithin(measure, si, interval.low(), interval.high());
    }

    /** {@code \u00b1 0.4 ac} or {@code 60.8 to 61.5 ac}; empty where nothing can be said. */
    public String bounds(QuantityKind measure, double si, Interval interval) {
        return f.bounds(measure, si, interval.low(), interval.high());
    }

    /** {@code 61.3 \u00b1 0.4 ac} or {@code 61.3 ac (60.8 to 61.5 ac)}. */
    public String within(QuantityKind measure, double si, Interval interval) {
        return f.within(measure, si, interval.low(), interval.high());
    }

    /** The same for an area of any size. */
    String anyArea(double areaM2, Interval interval) {
        return interval.known() ? within(f.kindBeside(areaM2, areaM2), areaM2, interval) : f.anyArea(areaM2);
    }

    /** The same for the size of a figure whose sign is said in words. */
    String size(QuantityKind measure, Interval interval) {
        double sign = interval.value() < 0 ? -1 : 1;
        return interval.known()
                ? f.within(
                        measure,
                        sign * interval.value(),
                        Math.min(sign * interval.low(), sign * interval.high()),
                        Math.max(sign * interval.low(), sign * interval.high()))
                : f.text(measure, sign * interval.value());
    }

    /** Bounds before a note: {@code \u00b1 0.4 ac; of 61.8 ac in the boundary}. */
    public String before(String bounds, String note) {
        return bounds.isEmpty() ? note : note.isEmpty() ? bounds : bounds + "; " + note;
    }

    /** How good one row's figures are, in a sentence; empty where nothing can be said. */
    public String ofRows(Intervals intervals, int p) {
        double volumePct = 0;
        double ratePct = 0;
        for (Intervals.OfRow row : intervals.rows()) {
            Intervals.OfRowProduct product = row.products().get(p);
            if (product.volumeL().known() && product.volumeL().value() > 0) {
                volumePct = Math.max(volumePct, halfPct(product.volumeL()));
                ratePct = Math.max(ratePct, halfPct(product.meanRateLPerM2()));
            }
        }
        return volumePct > 0
                ? "A row's own volume is good to \u00b1 " + f.percent(volumePct) + ", its rate to \u00b1 "
                        + f.percent(ratePct) + ofGround(intervals, p) + " (nine in ten)."
                : "";
    }

    /** The widest of the rows' ground, and what half of the passes keep to: a short one is all start and stop. */
    private String ofGround(Intervals intervals, int p) {
        double rowPct = intervals.rows().stream()
                .mapToDouble(row -> halfPct(row.sweptAreaM2()))
                .max()
                .orElse(0);
        double areaPct = medianPct(intervals.passes().stream().map(Intervals.OfPass::sweptAreaM2));
        double volumePct = medianPct(
                intervals.passes().stream().map(pass -> pass.products().get(p).volumeL()));
        return (rowPct > 0 ? ", its ground to \u00b1 " + f.percent(rowPct) : "")
                + (areaPct > 0 && volumePct > 0
                        ? "; a usual pass's volume to \u00b1 " + f.percent(volumePct) + ", its ground to \u00b1 "
                                + f.percent(areaPct) + ", a short one's less well"
                        : "");
    }

    private static double medianPct(Stream<Interval> intervals) {
        double[] halves = intervals
                .filter(interval -> interval.known() && interval.value() > 0)
                .mapToDouble(IntervalPhrases::halfPct)
                .sorted()
                .toArray();
        return halves.length == 0 ? 0 : halves[halves.length / 2];
    }

    private static double halfPct(Interval interval) {
        return interval.known() ? (interval.high() - interval.low()) / 2 / interval.value() * 100 : 0;
    }

    /** What the intervals say and rest on, sentence by sentence; empty where there are none. */
    public List<String> restsOn(UncertaintyBudget basis) {
        if (basis.samples() == 0) {
            return List.of();
        }
        List<String> out = new ArrayList<>();
        out.add("Bounds beside a figure, \u00b1 or from-to, should hold the truth in " + Intervals.LEVEL_PCT
                + " of 100 jobs like this one.");
        for (UncertaintyBudget.Liquid liquid : basis.liquids()) {
            String of = basis.liquids().size() > 1 ? liquid.name() + ": meters" : "Meters";
            out.add(of + " are taken as right within " + f.percent(liquid.meterAccuracy() * 100)
                    + given(liquid.meterGiven(), "common practice, no source")
                    + ", half of that doubt an error they all share; the density within "
                    + f.percent(liquid.densityAccuracy() * 100)
                    + given(
                            liquid.densityGiven(),
                            "printed densities of one product and its temperature differ so much")
                    + "; the analysis as entered.");
        }
        out.add("Lengths of the setup and the place of each knife are taken as measured within "
                + f.text(QuantityKind.SMALL_LENGTH, basis.toleranceM())
                + given(basis.toleranceGiven(), "common practice, no source") + ".");
        out.add("Positions: " + fixes(basis) + "; such drift comes and goes in about "
                + f.fixed(basis.driftTauS() / 60, 0)
                + " minutes and cannot be seen in a log (from published pass-to-pass accuracies). Starts and stops are known to"
                + " half of the " + f.fixed(basis.intervalS(), 2) + "\u00a0s between records.");
        out.add(
                "Skipped and doubled ground looks larger than it was where the receiver erred, and smaller where the tractor was"
                        + " steered by it; their bounds, and those of the covered ground, allow for both ("
                        + basis.samples() + " drawn variants, seed " + Long.toUnsignedString(basis.seed(), 16)
                        + "). The boundary is taken as drawn.");
        out.add(
                "In no bounds: a wrong line in the rig file, a faulty meter, and what happened while the log was silent. Without"
                        + " bounds of their own: single places, zones, setbacks, rows shut off alone, shares of the ground.");
        return out;
    }

    private static String given(boolean given, String why) {
        return given ? " (rig file)" : " (the program's own figure: " + why + ")";
    }

    private String fixes(UncertaintyBudget basis) {
        double all =
                basis.fixes().stream().mapToInt(UncertaintyBudget.Fix::records).sum();
        List<String> parts = new ArrayList<>();
        for (UncertaintyBudget.Fix fix : basis.fixes()) {
            if (fix.records() >= RARE * all) {
                parts.add("fixes " + name(fix.digit()) + " drift by " + f.text(QuantityKind.SMALL_LENGTH, fix.driftM())
                        + " (1 sigma)");
            }
        }
        return String.join(", ", parts);
    }

    private static String name(int digit) {
        return digit > 8 ? "of unknown type" : "of type " + TrackQuality.fixName(digit);
    }
}
