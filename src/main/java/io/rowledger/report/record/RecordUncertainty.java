package io.rowledger.report.record;

import io.rowledger.document.text.Messages;
import io.rowledger.document.text.TextTruncation;
import io.rowledger.report.record.NitrogenRecord.Item;
import io.rowledger.text.Argument;
import io.rowledger.text.Message;
import io.rowledger.uncertainty.Interval;
import io.rowledger.uncertainty.Intervals;
import io.rowledger.uncertainty.UncertaintyBudget;
import io.rowledger.units.QuantityKind;
import io.rowledger.units.UnitFormat;
import java.util.ArrayList;
import java.util.List;

/** The uncertainty of the record's figures in words. */
final class RecordUncertainty {
    /** Bounds below this, in the reader's unit, keep a decimal. */
    private static final double MAX_DECIMAL = 20;
    /** Jobs of ten in which the bounds hold the truth. */
    static final int TIMES_IN_TEN = Math.toIntExact(Math.round(Intervals.LEVEL_PCT / 10.0));

    private final RecordInput in;
    private final Intervals intervals;
    private final Messages messages;

    RecordUncertainty(RecordInput in, Messages messages) {
        this.in = in;
        this.intervals = in.intervals();
        this.messages = messages;
    }

    /** The bounds of the mean nitrogen rate in a sentence; empty if they are not known. */
    String sentence() {
        Interval mean = intervals.nitrogenKgPerM2();
        if (!mean.known()) {
            return "";
        }
        return messages.text(
                in.setupContradicted() ? "record.sure.meanContradicted" : "record.sure.mean",
                TIMES_IN_TEN,
                bound(mean.low(), false),
                bound(mean.high(), true),
                Message.value(QuantityKind.NITROGEN_RATE, mean.value()));
    }

    /** A bound rounded outward, so that rounding never narrows the interval. */
    private Argument bound(double kgPerM2, boolean up) {
        double value = QuantityKind.NITROGEN_RATE.from(kgPerM2, messages.units().system());
        double step = value < MAX_DECIMAL ? 0.1 : 1;
        double outward = (up ? Math.ceil(value / step) : Math.floor(value / step)) * step;
        return Message.decimal(outward, value < MAX_DECIMAL ? 1 : 0);
    }

    /** The figures with their bounds, and what the bounds rest on; empty if no bounds are known. */
    List<Item> items() {
        List<String> figures = new ArrayList<>();
        add(figures, "record.sure.nitrogen", QuantityKind.NITROGEN, intervals.nitrogenKg());
        add(figures, "record.sure.nitrogen", QuantityKind.NITROGEN_RATE, intervals.nitrogenKgPerM2());
        for (int p = 0; p < intervals.products().size(); p++) {
            Interval volumeL = intervals.products().get(p).volumeL();
            if (volumeL.known()) {
                figures.add(messages.text("record.sure.product", within(QuantityKind.VOLUME, volumeL), in.product(p)));
            }
        }
        add(figures, "record.sure.covered", QuantityKind.AREA, intervals.coveredAreaM2());
        addArea(figures, "record.sure.skipped", intervals.skipAreaM2());
        addArea(figures, "record.sure.overlap", intervals.overlapAreaM2());
        if (figures.isEmpty()) {
            return List.of();
        }
        return List.of(new Item(
                messages.text("record.sure.label"),
                messages.text(
                        in.areas() ? "record.sure.areas" : "record.sure.text",
                        String.join("; ", figures),
                        TIMES_IN_TEN,
                        basis()),
                false));
    }

    private void addArea(List<String> figures, String key, Interval interval) {
        UnitFormat f = messages.units();
        add(
                figures,
                key,
                f.kindBeside(interval.value(), intervals.coveredAreaM2().value()),
                interval);
    }

    private void add(List<String> figures, String key, QuantityKind kind, Interval interval) {
        if (interval.known()) {
            figures.add(messages.text(key, within(kind, interval)));
        }
    }

    private static Argument within(QuantityKind kind, Interval interval) {
        return Message.within(kind, interval.value(), interval.low(), interval.high());
    }

    private List<Message> basis() {
        UncertaintyBudget budget = intervals.basis();
        boolean several = budget.liquids().size() > 1;
        List<Message> parts = new ArrayList<>();
        for (UncertaintyBudget.Liquid liquid : budget.liquids()) {
            String name = TextTruncation.name(liquid.name());
            parts.add(given(
                    liquid.meterGiven(),
                    several
                            ? Message.of("record.sure.metersOf", percent(liquid.meterAccuracy()), name)
                            : Message.of("record.sure.meters", percent(liquid.meterAccuracy()))));
            parts.add(given(
                    liquid.densityGiven(),
                    several
                            ? Message.of("record.sure.densityOf", percent(liquid.densityAccuracy()), name)
                            : Message.of("record.sure.density", percent(liquid.densityAccuracy()))));
        }
        if (Double.isFinite(budget.toleranceM())) {
            parts.add(given(
                    budget.toleranceGiven(),
                    Message.of("record.sure.lengths", Message.value(QuantityKind.SMALL_LENGTH, budget.toleranceM()))));
        }
        List<Integer> faulty = budget.faults().stream()
                .flatMap(fault -> fault.rows().stream())
                .distinct()
                .sorted()
                .toList();
        if (!faulty.isEmpty()) {
            parts.add(Message.of("record.sure.meterFaults", faulty));
        }
        double unknownShare = budget.liquids().stream()
                .mapToDouble(UncertaintyBudget.Liquid::unknownShare)
                .max()
                .orElse(0);
        if (unknownShare > 0) {
            parts.add(Message.of("record.sure.unknownFlow", percent(unknownShare)));
        }
        return parts;
    }

    private static Argument percent(double share) {
        return Message.percent(share * 100);
    }

    private static Message given(boolean given, Message part) {
        return given ? Message.of("record.sure.entered", part) : Message.of("record.sure.assumed", part);
    }
}
