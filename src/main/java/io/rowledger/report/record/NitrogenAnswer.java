package io.rowledger.report.record;

import io.rowledger.coverage.CoverageDefect;
import io.rowledger.document.text.Messages;
import io.rowledger.document.text.TextTruncation;
import io.rowledger.finding.Finding;
import io.rowledger.rate.Nutrients;
import io.rowledger.report.common.Limits;
import io.rowledger.report.findings.FindingTitles;
import io.rowledger.report.record.NitrogenGrid.Shares;
import io.rowledger.report.record.NitrogenRecord.Sentence;
import io.rowledger.report.sections.CoveragePhrases;
import io.rowledger.report.sections.SetbackSection;
import io.rowledger.text.Argument;
import io.rowledger.text.Message;
import io.rowledger.uncertainty.Interval;
import io.rowledger.uncertainty.MeterFault;
import io.rowledger.uncertainty.UncertaintyBudget;
import io.rowledger.units.QuantityKind;
import io.rowledger.units.UnitSystem;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** What was applied where, in sentences for a reader who does not farm. */
final class NitrogenAnswer {
    /** Share of the worked ground without a flow from which the amount is called a part (1). */
    private static final double MIN_UNKNOWN_SHARE = 0.01;

    private final RecordInput in;
    private final Messages messages;
    private final boolean us;

    NitrogenAnswer(RecordInput in, Messages messages) {
        this.in = in;
        this.messages = messages;
        this.us = messages.units().system() == UnitSystem.US;
    }

    List<Sentence> sentences() {
        if (!in.anythingApplied()) {
            return List.of(new Sentence(messages.text(nothing()), true));
        }
        List<Sentence> sentences = new ArrayList<>();
        sentences.add(new Sentence(messages.text(amount()), !in.nitrogenKnown()));
        Message part = part();
        if (part != null) {
            sentences.add(new Sentence(messages.text(part), true));
        }
        for (String warning : in.files().warnings()) {
            sentences.add(new Sentence(TextTruncation.sentence(in.files().withoutFolders(warning)), true));
        }
        String uncertainty = new RecordUncertainty(in, messages).sentence();
        if (!uncertainty.isEmpty()) {
            sentences.add(new Sentence(uncertainty, false));
        }
        List<Finding> findings = in.machineFindings();
        if (!findings.isEmpty()) {
            sentences.add(new Sentence(messages.text(faults(findings)), true));
        }
        sentences.addAll(new BudgetSection(in, messages).sentences());
        sentences.add(new Sentence(messages.text(evenness()), false));
        sentences.add(new Sentence(messages.text(places()), false));
        SetbackSection setbacks = in.sections().setbacks();
        if (setbacks != null) {
            sentences.add(new Sentence(TextTruncation.sentence(setbacks.summary()), setbacks.anythingInside()));
        }
        return sentences;
    }

    /** Where the log lacks flow, the amount is a part and no total; null where it lacks next to none. */
    private @Nullable Message part() {
        double unknownShare = in.intervals().basis().liquids().stream()
                .mapToDouble(UncertaintyBudget.Liquid::unknownShare)
                .max()
                .orElse(0);
        Interval nitrogenKg = in.intervals().nitrogenKg();
        if (unknownShare < MIN_UNKNOWN_SHARE || !nitrogenKg.known()) {
            return null;
        }
        return Message.of(
                "record.answer.part",
                Message.percent(100 * unknownShare),
                Message.value(QuantityKind.NITROGEN, nitrogenKg.low()),
                Message.value(QuantityKind.NITROGEN, nitrogenKg.high()),
                RecordUncertainty.TIMES_IN_TEN);
    }

    /** What was wrong with the machine, with what it cost; as many as have room on the first page. */
    private Message faults(List<Finding> findings) {
        int named = Math.min(Limits.ROWS_IN_A_SENTENCE, findings.size());
        List<String> faults = new ArrayList<>();
        for (Finding finding : findings.subList(0, named)) {
            faults.add(messages.text("record.answer.finding", FindingTitles.of(finding), in.cost(finding)));
        }
        return Message.of("record.answer.findings", String.join(" ", faults), findings.size() - named);
    }

    /** Why no ground was covered: no flow in the log, liquid outside of the work, or nothing at all. */
    private Message nothing() {
        if (!in.nitrogenKnown()) {
            return Message.of("record.answer.unlogged", UnknownNitrogen.reasons(in));
        }
        List<Message> outside = new ArrayList<>();
        for (int p = 0; p < in.outsideWorkL().size(); p++) {
            if (in.outsideWorkL().get(p) > 0) {
                outside.add(Message.of(
                        "record.answer.liquid",
                        Message.value(QuantityKind.VOLUME, in.outsideWorkL().get(p)),
                        in.product(p)));
            }
        }
        return outside.isEmpty() ? Message.of("record.answer.nothing") : Message.of("record.answer.outside", outside);
    }

    private Message amount() {
        Nutrients nutrients = in.nutrients();
        Argument area = Message.value(QuantityKind.AREA, in.coverage().coveredAreaM2());
        if (!in.nitrogenKnown()) {
            return Message.of("record.answer.unknown", UnknownNitrogen.reasons(in), liquids(), area, areas());
        }
        return Message.of(
                in.areas()
                        ? (us ? "record.answer.areas.amountUs" : "record.answer.areas.amountMetric")
                        : (us ? "record.answer.amountUs" : "record.answer.amountMetric"),
                Message.value(QuantityKind.NITROGEN_RATE, nutrients.jobNitrogenKgPerM2()),
                area,
                Message.value(QuantityKind.NITROGEN, nutrients.jobKg().nitrogenKg()),
                liquids());
    }

    private Message areas() {
        return us ? Message.of("record.unit.acres") : Message.of("record.unit.hectares");
    }

    private List<Message> liquids() {
        List<Message> parts = new ArrayList<>();
        for (Nutrients.OfProduct one : in.nutrients().products()) {
            parts.add(Message.of(
                    "record.answer.liquid",
                    Message.value(QuantityKind.VOLUME, one.volumeL()),
                    TextTruncation.name(one.product().name())));
        }
        return parts;
    }

    private Message evenness() {
        PlanComparison plan = in.plan();
        if (!plan.known()) {
            return Message.of("record.answer.noPlan");
        }
        if (in.amountsInQuestion()) {
            return Message.of("record.answer.evennessUnknown");
        }
        QuantityKind kind = in.ground().isNitrogen() ? QuantityKind.NITROGEN_RATE : QuantityKind.RATE;
        Shares shares = plan.shares();
        double[] exact = {shares.within(), shares.under(), shares.over()};
        int[] whole = ofHundred(exact);
        return Message.of(
                !plan.isPlan()
                        ? "record.answer.evennessTarget"
                        : plan.earlierPerM2() > 0 ? "record.answer.evennessPlanAll" : "record.answer.evennessPlan",
                areas(),
                counted(whole[0], exact[0]),
                NitrogenGrid.ON_PLAN_PCT,
                Message.value(kind, plan.perM2()),
                counted(whole[1], exact[1]),
                counted(whole[2], exact[2]));
    }

    private static Message counted(int n, double pct) {
        if (n == 100 && pct < 100) {
            return Message.of("record.answer.moreThan99");
        }
        if (n == 0) {
            return pct > 0 ? Message.of("record.answer.fewerThan1") : Message.of("record.answer.none");
        }
        return Message.of("record.answer.count", n);
    }

    /** Percentages as whole numbers that add up to 100: what rounding down leaves goes to the largest remainders. */
    static int[] ofHundred(double... exact) {
        int[] whole = new int[exact.length];
        int left = 100;
        for (int i = 0; i < exact.length; i++) {
            whole[i] = (int) Math.floor(exact[i] + 1e-9);
            left -= whole[i];
        }
        for (; left > 0; left--) {
            int largest = 0;
            for (int i = 1; i < exact.length; i++) {
                largest = exact[i] - whole[i] > exact[largest] - whole[largest] ? i : largest;
            }
            whole[largest]++;
        }
        return whole;
    }

    /** Ground where the log does not tell what flowed, or a meter read zero, is neither covered nor skipped. */
    private static Message open(CoveragePhrases skips, Message where) {
        CoveragePhrases known = skips.known();
        return known == null
                ? Message.of("record.answer.open", skips.openArea(), where)
                : Message.of("record.answer.skipAndOpen", known.area(), where, skips.openArea());
    }

    /** A row that read nothing looks skipped; where its meter is in question, the bounds tell how much of it is known. */
    private Message skipped(CoveragePhrases skips, Message where) {
        List<CoverageDefect> places = new ArrayList<>(in.coverage().skips());
        places.addAll(in.coverage().doubtfulSkips());
        List<Integer> rows = silentRows(places, in.intervals().basis().faults());
        boolean flowKnown = places.stream().noneMatch(skip -> skip.cause() == CoverageDefect.Cause.FLOW_NOT_KNOWN);
        if (flowKnown && !rows.isEmpty() && !skips.bounds().isEmpty()) {
            return Message.of(
                    "record.answer.skipInQuestion",
                    skips.area(),
                    where,
                    skips.bounds(),
                    RecordUncertainty.TIMES_IN_TEN,
                    rows);
        }
        return skips.open() ? open(skips, where) : Message.of("record.answer.skip", skips.area(), where);
    }

    /** Returns the rows, ascending, that left a skip by applying nothing and whose meters are in question. */
    static List<Integer> silentRows(List<CoverageDefect> skips, List<MeterFault> faults) {
        Set<Integer> inQuestion =
                faults.stream().flatMap(fault -> fault.rows().stream()).collect(Collectors.toSet());
        return skips.stream()
                .filter(skip -> skip.cause() == CoverageDefect.Cause.ROW_NOT_DELIVERING
                        || skip.cause() == CoverageDefect.Cause.METER_READS_ZERO)
                .flatMap(skip -> skip.rows().stream())
                .filter(inQuestion::contains)
                .distinct()
                .sorted()
                .toList();
    }

    private Message places() {
        CoveragePhrases skips = in.sections().skips();
        CoveragePhrases overlap = in.sections().overlap();
        Message where = in.coverage().boundary() == null
                ? Message.of("record.answer.betweenPasses")
                : Message.of("record.answer.insideBoundary");
        Message skipped = skips.none() ? Message.of("record.answer.noSkip", where) : skipped(skips, where);
        Message twice = overlap.none()
                ? Message.of("record.answer.noOverlap")
                : Message.of("record.answer.overlap", overlap.area());
        return Message.of("record.answer.places", skipped, twice);
    }
}
