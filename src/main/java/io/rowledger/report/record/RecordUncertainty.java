package io.rowledger.report.record;

import io.rowledger.analysis.Analysis;
import io.rowledger.document.text.TextTruncation;
import io.rowledger.report.record.NitrogenRecord.Item;
import io.rowledger.uncertainty.Interval;
import io.rowledger.uncertainty.Intervals;
import io.rowledger.uncertainty.UncertaintyBudget;
import io.rowledger.units.QuantityKind;
import io.rowledger.units.UnitFormat;
import java.util.ArrayList;
import java.util.List;

/** How sure the record's figures are, in words. */
public final class RecordUncertainty {
    /** Below this a bound keeps a decimal. */
    private static final double FINE_BELOW = 20;

    private final Analysis a;
    private final Intervals intervals;
    private final UnitFormat f;

    public RecordUncertainty(Analysis a, UnitFormat f) {
        this.a = a;
        this.intervals = a.intervals();
        this.f = f;
    }

    /** {@code In 9 of 10 jobs logged like this one ...}, or empty where nothing can be said. */
    public String sentence() {
        Interval mean = intervals.nitrogenKgPerM2();
        if (!mean.known()) {
            return "";
        }
        boolean doubtful = a.setup().contradicted();
        return "In 9 of 10 jobs logged like this one" + (doubtful ? " and set up right" : "")
                + " the true mean lies between " + bound(mean.low(), false) + " and "
                + bound(mean.high(), true) + " " + f.unit(QuantityKind.NITROGEN_RATE)
                + (doubtful ? "; this log contradicts the setup in the rig file, so it may lie outside." : ".");
    }

    /** Rounded outward, so that rounding never narrows the interval. */
    private String bound(double kgPerM2, boolean up) {
        double value = QuantityKind.NITROGEN_RATE.from(kgPerM2, f.system());
        double step = value < FINE_BELOW ? 0.1 : 1;
        double outward = (up ? Math.ceil(value / step) : Math.floor(value / step)) * step;
        return f.fixed(outward, value < FINE_BELOW ? 1 : 0);
    }

    /** The figures with their bounds, and what the bounds rest on; empty where nothing can be said. */
    public List<Item> items() {
        List<String> figures = new ArrayList<>();
        add(figures, "nitrogen ", QuantityKind.NITROGEN, intervals.nitrogenKg());
        add(figures, "nitrogen ", QuantityKind.NITROGEN_RATE, intervals.nitrogenKgPerM2());
        for (int p = 0; p < intervals.products().size(); p++) {
            add(
                    figures,
                    TextTruncation.name(a.rig().products().get(p).name()) + " ",
                    QuantityKind.VOLUME,
                    intervals.products().get(p).volumeL());
        }
        add(figures, "ground covered ", QuantityKind.AREA, intervals.coveredAreaM2());
        addGround(figures, "skipped ", intervals.skipAreaM2());
        addGround(figures, "covered twice ", intervals.overlapAreaM2());
        if (figures.isEmpty()) {
            return List.of();
        }
        return List.of(new Item("How sure", String.join("; ", figures) + ". " + basis(), false));
    }

    private void addGround(List<String> figures, String what, Interval interval) {
        add(
                figures,
                what,
                f.kindBeside(interval.value(), intervals.coveredAreaM2().value()),
                interval);
    }

    private void add(List<String> figures, String what, QuantityKind measure, Interval interval) {
        if (interval.known()) {
            figures.add(what + f.within(measure, interval.value(), interval.low(), interval.high()));
        }
    }

    private String basis() {
        UncertaintyBudget basis = intervals.basis();
        List<String> parts = new ArrayList<>();
        for (UncertaintyBudget.Liquid liquid : basis.liquids()) {
            String of = basis.liquids().size() > 1 ? " of " + TextTruncation.name(liquid.name()) : "";
            parts.add(
                    "meters" + of + " within " + f.percent(liquid.meterAccuracy() * 100) + given(liquid.meterGiven()));
            parts.add("density" + of + " within " + f.percent(liquid.densityAccuracy() * 100)
                    + given(liquid.densityGiven()));
        }
        parts.add("lengths within " + f.text(QuantityKind.SMALL_LENGTH, basis.toleranceM())
                + given(basis.toleranceGiven()));
        return "Holds 9 times in 10 if " + String.join(", ", parts) + " and the receiver errs as its fixes usually do";
    }

    private static String given(boolean given) {
        return given ? "\u2020" : " (assumed)";
    }
}
