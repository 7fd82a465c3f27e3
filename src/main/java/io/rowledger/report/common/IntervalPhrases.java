package io.rowledger.report.common;

import io.rowledger.document.text.Messages;
import io.rowledger.text.Argument;
import io.rowledger.text.Message;
import io.rowledger.uncertainty.Interval;
import io.rowledger.uncertainty.Intervals;
import io.rowledger.uncertainty.UncertaintyBudget;
import io.rowledger.units.QuantityKind;
import io.rowledger.units.UnitFormat;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

/** Values with their intervals, and the sentences on what the intervals include. */
public final class IntervalPhrases {
    /** Fix types rarer than this fraction of the records are not named. */
    private static final double MIN_FIX_SHARE = 0.01;

    private final Messages messages;
    private final UnitFormat f;

    public IntervalPhrases(Messages messages) {
        this.messages = messages;
        this.f = messages.units();
    }

    /** {@code 61.3 ac}: the value without digits below its uncertainty. */
    public String value(QuantityKind kind, double si, Interval interval) {
        return f.valueWithin(kind, si, interval.low(), interval.high());
    }

    /** {@code ± 0.4 ac} or {@code 60.8 to 61.5 ac}; empty without bounds. */
    public String bounds(QuantityKind kind, double si, Interval interval) {
        return f.bounds(kind, si, interval.low(), interval.high());
    }

    /** {@code 61.3 ± 0.4 ac} or {@code 61.3 ac (60.8 to 61.5 ac)}. */
    public String within(QuantityKind kind, double si, Interval interval) {
        return f.within(kind, si, interval.low(), interval.high());
    }

    /** Bounds and a note: {@code ± 0.4 ac; of 61.8 ac in the boundary}. */
    public String before(String bounds, String note) {
        return bounds.isEmpty() ? note : note.isEmpty() ? bounds : bounds + "; " + note;
    }

    /** Uncertainty of a single row's and pass's values of product p, in a sentence; empty without bounds. */
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
        if (volumePct <= 0) {
            return "";
        }
        double rowGroundPct = intervals.rows().stream()
                .mapToDouble(row -> halfPct(row.sweptAreaM2()))
                .max()
                .orElse(0);
        return messages.text(
                "words.interval.ofRows",
                Message.percent(volumePct),
                Message.percent(ratePct),
                rowGroundPct > 0 ? Message.of("words.interval.rowGround", Message.percent(rowGroundPct)) : "",
                ofPasses(intervals, p));
    }

    /** The median pass: short passes are less certain, since they are all start and stop. */
    private static Argument ofPasses(Intervals intervals, int p) {
        double areaPct = medianPct(intervals.passes().stream().map(Intervals.OfPass::sweptAreaM2));
        double volumePct = medianPct(
                intervals.passes().stream().map(pass -> pass.products().get(p).volumeL()));
        return areaPct > 0 && volumePct > 0
                ? Message.of("words.interval.passes", Message.percent(volumePct), Message.percent(areaPct))
                : new Argument.Text("");
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

    /** What the intervals say and include, sentence by sentence; empty if there are none. */
    public List<Message> includes(UncertaintyBudget budget) {
        if (budget.samples() == 0) {
            return List.of();
        }
        List<Message> sentences = new ArrayList<>();
        sentences.add(Message.of("words.interval.level", Intervals.LEVEL_PCT));
        for (UncertaintyBudget.Liquid liquid : budget.liquids()) {
            sentences.add(liquid(liquid, budget.liquids().size() > 1));
        }
        sentences.add(Message.of(
                "words.interval.lengths",
                Message.value(QuantityKind.SMALL_LENGTH, budget.toleranceM()),
                given(budget.toleranceGiven(), "words.interval.commonPractice")));
        Argument driftMin = Message.decimal(budget.driftTauS() / 60, 0);
        sentences.add(
                Double.isNaN(budget.intervalS())
                        ? Message.of("words.interval.positionsUntimed", fixes(budget), driftMin)
                        : Message.of(
                                "words.interval.positions",
                                fixes(budget),
                                driftMin,
                                Message.decimal(budget.intervalS(), 2)));
        sentences.add(
                Message.of("words.interval.coverage", budget.samples(), Long.toUnsignedString(budget.seed(), 16)));
        List<Integer> faulty = budget.faults().stream()
                .flatMap(fault -> fault.rows().stream())
                .distinct()
                .sorted()
                .toList();
        if (!faulty.isEmpty()) {
            sentences.add(Message.of("words.interval.meterFaults", faulty));
        }
        double unknownShare = budget.liquids().stream()
                .mapToDouble(UncertaintyBudget.Liquid::unknownShare)
                .max()
                .orElse(0);
        if (unknownShare > 0) {
            sentences.add(Message.of("words.interval.unknownFlow", Message.percent(unknownShare * 100)));
        }
        sentences.add(Message.of("words.interval.excluded"));
        return sentences;
    }

    private static Message liquid(UncertaintyBudget.Liquid liquid, boolean named) {
        Object[] values = {
            Message.percent(liquid.meterAccuracy() * 100),
            given(liquid.meterGiven(), "words.interval.commonPractice"),
            Message.percent(liquid.densityAccuracy() * 100),
            given(liquid.densityGiven(), "words.interval.densitySpread"),
            liquid.name()
        };
        return Message.of(named ? "words.interval.liquidNamed" : "words.interval.liquid", values);
    }

    private static Message given(boolean given, String reasonKey) {
        return given
                ? Message.of("words.interval.fromRigFile")
                : Message.of("words.interval.default", Message.of(reasonKey));
    }

    private static List<Message> fixes(UncertaintyBudget budget) {
        int all =
                budget.fixes().stream().mapToInt(UncertaintyBudget.Fix::records).sum();
        List<Message> parts = new ArrayList<>();
        for (UncertaintyBudget.Fix fix : budget.fixes()) {
            if (fix.records() >= MIN_FIX_SHARE * all) {
                Argument drift = Message.value(QuantityKind.SMALL_LENGTH, fix.driftM());
                parts.add(
                        fix.digit() > 8
                                ? Message.of("words.interval.fixUnknown", drift)
                                : Message.of("words.interval.fix", Message.of("words.fix." + fix.digit()), drift));
            }
        }
        return parts;
    }
}
