package io.rowledger.report.record;

import io.rowledger.analysis.Analysis;
import io.rowledger.coverage.Coverage;
import io.rowledger.document.text.TextTruncation;
import io.rowledger.report.common.CoveragePhrases;
import io.rowledger.report.common.CoverageSectionBuilder;
import io.rowledger.report.common.ProductSums;
import io.rowledger.report.common.SetbackSection;
import io.rowledger.report.record.NitrogenGrid.Shares;
import io.rowledger.report.record.NitrogenRecord.Sentence;
import io.rowledger.rig.Job;
import io.rowledger.rig.Product;
import io.rowledger.units.QuantityKind;
import io.rowledger.units.UnitFormat;
import io.rowledger.units.UnitSystem;
import java.util.ArrayList;
import java.util.List;

/** What was put where, in sentences a reader who does not farm can follow. */
final class NitrogenAnswer {
    private final Analysis a;
    private final UnitFormat f;
    private final NitrogenSums sums;
    private final NitrogenGrid ground;
    private final Plan plan;

    NitrogenAnswer(Analysis a, UnitFormat f, NitrogenSums sums, NitrogenGrid ground) {
        this.a = a;
        this.f = f;
        this.sums = sums;
        this.ground = ground;
        this.plan = Plan.of(a, sums, ground);
    }

    /**
     * What a place's amount is held against.
     *
     * @param perM2 the plan; without one the mean target; NaN for neither
     * @param beforePerM2 what came before and counts toward it
     * @param entered true for a plan in the job block
     * @param shares of the covered ground on, under and over it
     */
    record Plan(double perM2, double beforePerM2, boolean entered, Shares shares) {
        static Plan of(Analysis a, NitrogenSums sums, NitrogenGrid ground) {
            Job job = a.rig().job();
            double before = sums.beforeKgPerM2();
            if (ground.isNitrogen() && Double.isFinite(job.planKgPerM2()) && Double.isFinite(before)) {
                return new Plan(job.planKgPerM2(), before, true, ground.against(job.planKgPerM2(), before));
            }
            double targetPerM2 = 0;
            for (int p = 0; p < a.rig().products().size(); p++) {
                double perL = ground.isNitrogen() ? a.rig().products().get(p).nitrogenKgPerL() : p == 0 ? 1 : 0;
                targetPerM2 += perL == 0 ? 0 : perL * ProductSums.of(a, p).meanTargetLPerM2();
            }
            return new Plan(targetPerM2, 0, false, ground.againstTarget());
        }

        boolean known() {
            return Double.isFinite(perM2) && Double.isFinite(shares.within());
        }

        String name() {
            return entered ? "plan" : "target";
        }
    }

    Plan plan() {
        return plan;
    }

    List<Sentence> sentences() {
        if (a.track().passes().isEmpty() || a.coverage().coveredAreaM2() <= 0) {
            return List.of(new Sentence(
                    "The log shows no liquid put on: there is nothing to record but that it was looked at.", true));
        }
        List<Sentence> sentences = new ArrayList<>();
        sentences.add(new Sentence(amount(), !sums.known()));
        String doubt = new RecordUncertainty(a, f).sentence();
        if (!doubt.isEmpty()) {
            sentences.add(new Sentence(doubt, false));
        }
        sentences.addAll(new BudgetSection(a, f, sums, ground).sentences());
        sentences.add(new Sentence(evenness(), false));
        if (plan.known()) {
            sentences.add(new Sentence(places(), false));
        }
        SetbackSection setbacks = SetbackSection.of(a, f);
        if (setbacks != null) {
            sentences.add(new Sentence(TextTruncation.sentence(setbacks.summary()), setbacks.anythingInside()));
        }
        return sentences;
    }

    private String amount() {
        String area = f.number(QuantityKind.AREA, a.coverage().coveredAreaM2()) + " " + areas();
        if (!sums.known()) {
            return "How much nitrogen went on is not known, because " + sums.unknown() + ". By the flow meters, "
                    + liquids() + " went onto " + area + ".";
        }
        boolean us = f.system() == UnitSystem.US;
        String unit = us ? " pounds" : " kilograms";
        return "By the flow meters, " + f.number(QuantityKind.NITROGEN_RATE, sums.jobKgPerM2()) + unit + " of nitrogen "
                + (us ? "an acre" : "a hectare") + " went onto " + area + ", "
                + f.number(QuantityKind.NITROGEN, sums.jobKg()) + unit + " in all: " + liquids() + ".";
    }

    private String areas() {
        return f.system() == UnitSystem.US ? "acres" : "hectares";
    }

    private String liquids() {
        List<String> parts = new ArrayList<>();
        for (int p = 0; p < a.rig().products().size(); p++) {
            Product product = a.rig().products().get(p);
            parts.add(f.text(QuantityKind.VOLUME, ProductSums.of(a, p).volumeL()) + " of "
                    + TextTruncation.name(product.name()));
        }
        return String.join(" and ", parts);
    }

    private String evenness() {
        if (!plan.known()) {
            return "Nobody entered a plan or a target rate, so how close the ground came to it can't be said. "
                    + places();
        }
        QuantityKind measure = ground.isNitrogen() ? QuantityKind.NITROGEN_RATE : QuantityKind.RATE;
        Coverage c = a.coverage();
        double covered = c.coveredAreaM2() / (c.coveredAreaM2() + c.skipAreaM2());
        Shares shares = plan.shares();
        double[] exact = {
            shares.within() * covered, shares.under() * covered, shares.over() * covered, 100 * (1 - covered)
        };
        int[] parts = ofHundred(exact);
        String what = plan.beforePerM2() > 0 ? "the total from all sources" : "what the ground received";
        return "On " + counted(parts[0], exact[0]) + " of every 100 " + areas() + ", " + what
                + " was within 10% of the "
                + plan.name() + " of " + f.text(measure, plan.perM2()) + "; on " + counted(parts[1], exact[1])
                + " it was less, on " + counted(parts[2], exact[2]) + " more, and " + counted(parts[3], exact[3])
                + (parts[3] == 1 ? " was" : " were") + " skipped.";
    }

    private static String counted(int n, double pct) {
        if (n == 100 && pct < 100) {
            return "more than 99";
        }
        return n == 0 ? (pct > 0 ? "fewer than 1" : "none") : Integer.toString(n);
    }

    /** Shares as whole numbers that add up to 100: what rounding down leaves goes to the largest remainders. */
    static int[] ofHundred(double... exact) {
        int[] whole = new int[exact.length];
        int left = 100;
        for (int i = 0; i < exact.length; i++) {
            whole[i] = (int) Math.floor(exact[i] + 1e-9);
            left -= whole[i];
        }
        for (; left > 0; left--) {
            int most = 0;
            for (int i = 1; i < exact.length; i++) {
                most = exact[i] - whole[i] > exact[most] - whole[most] ? i : most;
            }
            whole[most]++;
        }
        return whole;
    }

    private String places() {
        Coverage c = a.coverage();
        CoveragePhrases skips = CoverageSectionBuilder.skips(a, f);
        CoveragePhrases overlap = CoverageSectionBuilder.overlap(a, f);
        String where = c.boundary() == null ? "between the passes" : "inside the boundary";
        String skipped = skips.none() ? "No ground " + where + " was skipped" : skips.area() + " was skipped " + where;
        String twice = overlap.none() ? "none was covered twice" : overlap.area() + " was covered twice";
        return skipped + (skips.none() == overlap.none() ? " and " : "; ") + twice + ".";
    }
}
