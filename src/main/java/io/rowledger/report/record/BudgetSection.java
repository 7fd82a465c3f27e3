package io.rowledger.report.record;

import io.rowledger.analysis.Analysis;
import io.rowledger.document.text.TextTruncation;
import io.rowledger.report.common.JobTimes;
import io.rowledger.report.record.NitrogenRecord.Budget;
import io.rowledger.report.record.NitrogenRecord.BudgetLine;
import io.rowledger.report.record.NitrogenRecord.Sentence;
import io.rowledger.rig.Credit;
import io.rowledger.rig.EarlierApplication;
import io.rowledger.rig.Job;
import io.rowledger.units.QuantityKind;
import io.rowledger.units.UnitFormat;
import java.util.ArrayList;
import java.util.List;

/** Nitrogen from all sources to a total, against plan and cap. */
final class BudgetSection {
    /** Closer than this to the plan is on it, for the words; the same tenth as on the ground. */
    private static final double ON_PLAN = 0.10;

    private final Analysis a;
    private final UnitFormat f;
    private final NitrogenSums sums;
    private final NitrogenGrid ground;
    private final Job job;

    BudgetSection(Analysis a, UnitFormat f, NitrogenSums sums, NitrogenGrid ground) {
        this.a = a;
        this.f = f;
        this.sums = sums;
        this.ground = ground;
        this.job = a.rig().job();
    }

    Budget build() {
        List<BudgetLine> lines = new ArrayList<>();
        String day = f.date(JobTimes.startS(a));
        lines.add(new BudgetLine(
                "This job",
                day,
                rate(sums.jobKgPerM2()),
                sums.known()
                        ? f.text(QuantityKind.NITROGEN, sums.jobKg()) + " by the meters"
                        : "not known: " + sums.unknown(),
                false,
                false,
                false));
        for (EarlierApplication earlier : job.earlier()) {
            lines.add(new BudgetLine(
                    TextTruncation.name(earlier.what()),
                    TextTruncation.name(earlier.date()),
                    rate(earlier.nitrogenKgPerM2()),
                    TextTruncation.value(earlier.entered()),
                    true,
                    false,
                    false));
        }
        for (Credit credit : job.credits()) {
            lines.add(new BudgetLine(
                    "Credit: " + TextTruncation.name(credit.what()),
                    "\u2013",
                    rate(credit.nitrogenKgPerM2()),
                    TextTruncation.value(credit.entered()),
                    true,
                    false,
                    false));
        }
        if (NitrogenSums.hasBefore(job)) {
            lines.add(new BudgetLine(
                    "Total",
                    "",
                    rate(sums.totalKgPerM2()),
                    "earlier nitrogen taken as spread evenly",
                    false,
                    true,
                    false));
        }
        return new Budget(lines, limits(), "");
    }

    private List<BudgetLine> limits() {
        List<BudgetLine> limits = new ArrayList<>();
        if (Double.isFinite(job.planKgPerM2())) {
            limits.add(new BudgetLine(
                    "Plan", "", rate(job.planKgPerM2()), apart(job.planKgPerM2(), "the plan"), true, false, false));
        }
        if (Double.isFinite(job.capKgPerM2())) {
            limits.add(new BudgetLine(
                    "Cap: not to be exceeded",
                    "",
                    rate(job.capKgPerM2()),
                    apart(job.capKgPerM2(), "the cap"),
                    true,
                    false,
                    sums.totalKgPerM2() > job.capKgPerM2()));
        }
        return limits;
    }

    /** The total against plan and cap in words; empty where neither was entered. */
    List<Sentence> sentences() {
        List<Sentence> sentences = new ArrayList<>();
        if (!NitrogenSums.hasBefore(job) && Double.isNaN(job.planKgPerM2()) && Double.isNaN(job.capKgPerM2())) {
            return sentences;
        }
        if (!Double.isFinite(sums.totalKgPerM2())) {
            sentences.add(new Sentence(
                    "The total from all sources is not known, so it can't be held against a plan or a cap.", true));
            return sentences;
        }
        String total = NitrogenSums.hasBefore(job)
                ? "With what came before, the total is " + f.text(QuantityKind.NITROGEN_RATE, sums.totalKgPerM2())
                : "That is";
        List<String> parts = new ArrayList<>();
        if (Double.isFinite(job.planKgPerM2())) {
            parts.add(apartOf(job.planKgPerM2(), "the plan"));
        }
        boolean exceeded = sums.totalKgPerM2() > job.capKgPerM2();
        if (Double.isFinite(job.capKgPerM2()) && !exceeded) {
            parts.add(apartOf(job.capKgPerM2(), "the cap"));
        }
        if (!parts.isEmpty() || NitrogenSums.hasBefore(job)) {
            String joined = String.join(" and ", parts);
            sentences.add(new Sentence(
                    total + (joined.isEmpty() ? "" : (NitrogenSums.hasBefore(job) ? ", " : " ") + joined) + ".",
                    false));
        }
        if (exceeded) {
            sentences.add(new Sentence(
                    "The cap is exceeded: " + f.text(QuantityKind.NITROGEN_RATE, sums.totalKgPerM2())
                            + " against a cap of " + f.text(QuantityKind.NITROGEN_RATE, job.capKgPerM2()) + ".",
                    true));
        }
        addPlacesAboveCap(sentences, exceeded);
        return sentences;
    }

    /** The mean may keep to the cap while places don't. */
    private void addPlacesAboveCap(List<Sentence> sentences, boolean exceeded) {
        if (Double.isFinite(job.capKgPerM2()) && !exceeded && ground.isNitrogen()) {
            double abovePct = ground.aboveShare(job.capKgPerM2() - sums.beforeKgPerM2());
            if (abovePct >= 0.05) {
                sentences.add(new Sentence(
                        "The mean keeps to the cap, but " + f.percent(abovePct)
                                + " of the covered ground, where passes overlap or a row ran high, is above it.",
                        false));
            }
        }
    }

    /** {@code 23 lb N/ac below the plan of 200 lb N/ac}. */
    private String apartOf(double limit, String name) {
        return apart(limit, name + " of " + f.text(QuantityKind.NITROGEN_RATE, limit));
    }

    /** {@code 23 lb N/ac below the plan}. */
    private String apart(double limit, String name) {
        double off = sums.totalKgPerM2() - limit;
        if (!Double.isFinite(off)) {
            return "not known";
        }
        String size = f.text(QuantityKind.NITROGEN_RATE, Math.abs(off));
        if (f.number(QuantityKind.NITROGEN_RATE, Math.abs(off)).matches("0(\\.0)?")) {
            return "exactly " + name;
        }
        boolean near = Math.abs(off) <= ON_PLAN * limit && name.startsWith("the plan");
        return size + (off > 0 ? " above " : " below ") + name + (near ? " (within 10%)" : "");
    }

    private String rate(double kgPerM2) {
        return Double.isFinite(kgPerM2) ? f.number(QuantityKind.NITROGEN_RATE, kgPerM2) : "not known";
    }
}
