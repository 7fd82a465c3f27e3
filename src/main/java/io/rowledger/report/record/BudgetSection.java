package io.rowledger.report.record;

import io.rowledger.document.text.Messages;
import io.rowledger.document.text.TextTruncation;
import io.rowledger.rate.Nutrients;
import io.rowledger.report.record.NitrogenRecord.Budget;
import io.rowledger.report.record.NitrogenRecord.BudgetLine;
import io.rowledger.report.record.NitrogenRecord.Sentence;
import io.rowledger.rig.Credit;
import io.rowledger.rig.EarlierApplication;
import io.rowledger.rig.Job;
import io.rowledger.text.Argument;
import io.rowledger.text.Message;
import io.rowledger.units.QuantityKind;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Adds the nitrogen of all sources up and compares the total with plan and cap. */
final class BudgetSection {
    /** Smallest share of the covered ground above the cap that is printed, percent: less would read 0.0 %. */
    private static final double MIN_ABOVE_CAP_PCT = 0.05;

    private final RecordInput in;
    private final Nutrients nutrients;
    private final Job job;
    private final Messages messages;

    BudgetSection(RecordInput in, Messages messages) {
        this.in = in;
        this.nutrients = in.nutrients();
        this.job = in.job();
        this.messages = messages;
    }

    /** An upper or intended amount that the user entered. */
    private enum Limit {
        PLAN("record.budget.plan.short", "record.budget.plan.full"),
        CAP("record.budget.cap.short", "record.budget.cap.full");

        private final String shortKey;
        private final String fullKey;

        Limit(String shortKey, String fullKey) {
            this.shortKey = shortKey;
            this.fullKey = fullKey;
        }
    }

    Budget build() {
        List<BudgetLine> lines = new ArrayList<>();
        lines.add(BudgetLine.computed(
                messages.text("record.budget.job"), dates(), rate(nutrients.jobNitrogenKgPerM2()), jobRemark()));
        for (EarlierApplication earlier : job.earlier()) {
            lines.add(BudgetLine.entered(
                    TextTruncation.name(earlier.what()),
                    TextTruncation.name(earlier.date()),
                    rate(earlier.nitrogenKgPerM2()),
                    TextTruncation.value(earlier.entered())));
        }
        for (Credit credit : job.credits()) {
            lines.add(BudgetLine.entered(
                    messages.text("record.budget.credit", TextTruncation.name(credit.what())),
                    NitrogenRecord.NONE,
                    rate(credit.nitrogenKgPerM2()),
                    TextTruncation.value(credit.entered())));
        }
        if (in.hasEarlierNitrogen()) {
            lines.add(BudgetLine.computed(
                            messages.text("record.budget.total"),
                            "",
                            rate(nutrients.totalNitrogenKgPerM2()),
                            messages.text("record.budget.even"))
                    .asTotal());
        }
        return new Budget(lines, limits());
    }

    private String jobRemark() {
        return in.nitrogenKnown()
                ? messages.text(
                        in.areas() ? "record.budget.byMap" : "record.budget.metered",
                        Message.value(QuantityKind.NITROGEN, nutrients.jobKg().nitrogenKg()))
                : messages.text("record.budget.unknown", UnknownNitrogen.reasons(in));
    }

    private List<BudgetLine> limits() {
        List<BudgetLine> limits = new ArrayList<>();
        double plan = job.planKgPerM2();
        double cap = job.capKgPerM2();
        if (Double.isFinite(plan)) {
            limits.add(BudgetLine.entered(
                    messages.text("record.budget.planLabel"),
                    "",
                    rate(plan),
                    messages.text(compared(Limit.PLAN, plan, Message.of(Limit.PLAN.shortKey)))));
        }
        if (Double.isFinite(cap)) {
            BudgetLine line = BudgetLine.entered(
                    messages.text("record.budget.capLabel"),
                    "",
                    rate(cap),
                    messages.text(compared(Limit.CAP, cap, Message.of(Limit.CAP.shortKey))));
            limits.add(nutrients.totalNitrogenKgPerM2() > cap ? line.asStrong() : line);
        }
        return limits;
    }

    /** The total compared with plan and cap in sentences; empty if neither was entered and nothing came before. */
    List<Sentence> sentences() {
        double plan = job.planKgPerM2();
        double cap = job.capKgPerM2();
        double total = nutrients.totalNitrogenKgPerM2();
        if (!in.hasEarlierNitrogen() && Double.isNaN(plan) && Double.isNaN(cap)) {
            return List.of();
        }
        if (!Double.isFinite(total)) {
            return List.of(new Sentence(messages.text("record.budget.totalUnknown"), true));
        }
        boolean exceeded = total > cap;
        List<Message> parts = new ArrayList<>();
        if (Double.isFinite(plan)) {
            parts.add(comparedInFull(Limit.PLAN, plan));
        }
        if (Double.isFinite(cap) && !exceeded) {
            parts.add(comparedInFull(Limit.CAP, cap));
        }
        List<Sentence> sentences = new ArrayList<>();
        totalSentence(total, parts).ifPresent(text -> sentences.add(new Sentence(messages.text(text), false)));
        if (exceeded) {
            sentences.add(new Sentence(messages.text("record.budget.capExceeded", rateOf(total), rateOf(cap)), true));
        }
        addPlacesAboveCap(sentences, exceeded);
        return sentences;
    }

    private Optional<Message> totalSentence(double total, List<Message> parts) {
        if (in.hasEarlierNitrogen()) {
            return Optional.of(
                    parts.isEmpty()
                            ? Message.of("record.budget.sentence.total", rateOf(total))
                            : Message.of("record.budget.sentence.totalCompared", rateOf(total), parts));
        }
        return parts.isEmpty() ? Optional.empty() : Optional.of(Message.of("record.budget.sentence.compared", parts));
    }

    /** Places above the cap although the mean keeps to it. */
    private void addPlacesAboveCap(List<Sentence> sentences, boolean exceeded) {
        if (Double.isFinite(job.capKgPerM2()) && !exceeded && in.ground().isNitrogen()) {
            double abovePct = in.ground().abovePct(job.capKgPerM2() - Nutrients.beforeKgPerM2(job));
            if (abovePct >= MIN_ABOVE_CAP_PCT) {
                sentences.add(
                        new Sentence(messages.text("record.budget.placesAboveCap", Message.percent(abovePct)), false));
            }
        }
    }

    /** {@code 23 lb N/ac below the plan of 200 lb N/ac}. */
    private Message comparedInFull(Limit limit, double kgPerM2) {
        return compared(limit, kgPerM2, Message.of(limit.fullKey, rateOf(kgPerM2)));
    }

    /** {@code 23 lb N/ac below the plan}, of the total. */
    private Message compared(Limit limit, double limitKgPerM2, Message name) {
        double differenceKgPerM2 = nutrients.totalNitrogenKgPerM2() - limitKgPerM2;
        if (!Double.isFinite(differenceKgPerM2)) {
            return Message.of("words.notKnown");
        }
        double size = Math.abs(differenceKgPerM2);
        if (isPrintedZero(size)) {
            return Message.of("record.budget.exactly", name);
        }
        boolean above = differenceKgPerM2 > 0;
        if (limit == Limit.PLAN && size <= NitrogenGrid.ON_PLAN_SHARE * limitKgPerM2) {
            return Message.of(
                    above ? "record.budget.nearAbove" : "record.budget.nearBelow",
                    rateOf(size),
                    name,
                    NitrogenGrid.ON_PLAN_PCT);
        }
        return Message.of(above ? "record.budget.above" : "record.budget.below", rateOf(size), name);
    }

    private boolean isPrintedZero(double kgPerM2) {
        return messages.units().number(QuantityKind.NITROGEN_RATE, kgPerM2).matches("0(\\.0)?");
    }

    private static Argument rateOf(double kgPerM2) {
        return Message.value(QuantityKind.NITROGEN_RATE, kgPerM2);
    }

    private String rate(double kgPerM2) {
        return messages.units().number(QuantityKind.NITROGEN_RATE, kgPerM2);
    }

    /** The local day of the work, or the first and the last one. */
    private String dates() {
        double startS = in.work().times().startS();
        double endS = in.work().times().endS();
        return messages.units().sameDay(startS, endS)
                ? messages.units().day(startS)
                : messages.text("record.budget.days", Message.time(startS), Message.time(endS));
    }
}
