package io.rowledger.report.record;

import io.rowledger.analysis.Analysis;
import io.rowledger.coverage.Coverage;
import io.rowledger.document.text.TextTruncation;
import io.rowledger.document.text.Wording;
import io.rowledger.finding.Finding;
import io.rowledger.rate.Rates.PassTotals;
import io.rowledger.report.common.CoveragePhrases;
import io.rowledger.report.common.CoverageSectionBuilder;
import io.rowledger.report.common.FaultWords;
import io.rowledger.report.common.FindingFacts;
import io.rowledger.report.common.JobTimes;
import io.rowledger.report.common.Limits;
import io.rowledger.report.common.ProductSums;
import io.rowledger.report.common.ReportHeaders;
import io.rowledger.report.common.ReportOptions;
import io.rowledger.report.common.ReviewSummary;
import io.rowledger.report.record.NitrogenAnswer.Plan;
import io.rowledger.report.record.NitrogenRecord.Day;
import io.rowledger.report.record.NitrogenRecord.Head;
import io.rowledger.report.record.NitrogenRecord.Item;
import io.rowledger.report.record.NitrogenRecord.MapKey;
import io.rowledger.report.record.NitrogenRecord.Missing;
import io.rowledger.report.record.NitrogenRecord.Units;
import io.rowledger.rig.Band;
import io.rowledger.rig.Job;
import io.rowledger.rig.Product;
import io.rowledger.rig.Rig;
import io.rowledger.track.Pass;
import io.rowledger.units.QuantityKind;
import io.rowledger.units.UnitFormat;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;

/** An {@link Analysis} to the {@link NitrogenRecord}: the one place where the record's figures are rounded and labelled. */
public final class NitrogenRecordBuilder {
    /** What the record is not. Two sentences a reader in five years must not have to look for. */
    private static final List<String> CAUTIONS = List.of(
            "This record says what the meters and the receiver logged and what a person entered. It is not legal advice and no "
                    + "license to apply; it does not certify yields or losses.",
            "The product label, the safety data sheet, local nutrient and setback rules and licensed practice come first. Which "
                    + "records must be kept, and for how long, is for your local rules to say.");

    /** Facts that stand elsewhere on the page. */
    private static final Set<String> ELSEWHERE = Set.of("field", "zone", "method", "depth", "knives", "plan", "cap");

    /** Facts of the page's head; they are listed too only where the head cut them. */
    private static final List<String> PLACE = List.of("farm", "tract", "county", "state");

    private static final Set<String> HEAD = Set.of("farm", "tract", "county", "state", "applicator");

    private final Analysis a;
    private final ReportOptions options;
    private final UnitFormat f;
    private final Job job;
    private final NitrogenGrid ground;
    private final NitrogenSums sums;
    private final NitrogenAnswer answer;

    private NitrogenRecordBuilder(Analysis a, ReportOptions options) {
        this.a = a;
        this.options = options;
        this.f = options.format();
        this.job = a.rig().job();
        this.ground = NitrogenGrid.of(a);
        this.sums = NitrogenSums.of(a);
        this.answer = new NitrogenAnswer(a, f, sums, ground);
    }

    /** The record of this analysis in the options' units and zone. */
    public static NitrogenRecord build(Analysis analysis, ReportOptions options) {
        return new NitrogenRecordBuilder(analysis, options).build();
    }

    private NitrogenRecord build() {
        LiquidSection liquids = new LiquidSection(a, f);
        return new NitrogenRecord(
                head(),
                answer.sentences(),
                a.coverage().coveredAreaM2() > 0,
                map(),
                liquids.lines(),
                liquids.notes(),
                new BudgetSection(a, f, sums, ground).build(),
                days(),
                RecordTables.setbacks(a, f),
                RecordTables.zones(a, f),
                ground(),
                how(),
                entered(),
                missing(),
                RecordFields.DEFER,
                new RecordBasis(a, options).build(),
                cautions());
    }

    private Head head() {
        double startS = JobTimes.startS(a);
        double endS = JobTimes.endS(a);
        String field = job.fact("field").orElse("").strip();
        List<String> place = new ArrayList<>();
        for (String key : PLACE) {
            job.fact(key).ifPresent(value -> place.add(named(key, TextTruncation.name(value))));
        }
        return new Head(
                "Nitrogen record: " + (field.isEmpty() ? "" : TextTruncation.title(field) + ", ") + f.date(startS),
                field.isEmpty() ? "Field: not recorded" : TextTruncation.title(field),
                !field.isEmpty(),
                String.join(", ", place),
                ReportHeaders.when(startS, endS, f),
                new Item(
                        "Applied by",
                        job.fact("applicator").map(TextTruncation::name).orElse("not recorded"),
                        job.fact("applicator").isPresent()),
                endS,
                new Units(
                        f.unit(QuantityKind.AREA),
                        f.unit(QuantityKind.VOLUME),
                        f.unit(QuantityKind.RATE),
                        f.unit(QuantityKind.NITROGEN),
                        f.unit(QuantityKind.NITROGEN_RATE)),
                "Rowledger " + options.programVersion());
    }

    /** {@code Tract 7}, and not "Tract Tract 7" where the user wrote the word too. */
    private static String named(String key, String value) {
        return value.toLowerCase(Locale.ROOT).contains(key) ? value : Wording.label(key) + " " + value;
    }

    private MapKey map() {
        Plan plan = answer.plan();
        NitrogenMapKey key = new NitrogenMapKey(ground, f);
        String what = ground.isNitrogen()
                ? "Nitrogen the ground received" + (a.rig().products().size() > 1 ? ", all products together" : "")
                : TextTruncation.name(a.rig().products().get(0).name())
                        + " the ground received (its nitrogen is not known)";
        if (plan.known()) {
            return key.build(what, plan.perM2(), plan.beforePerM2(), plan.name());
        }
        double mean = ground.meanPerM2();
        return key.build(what, mean, 0, "the mean");
    }

    /** Per local day, where there is more than one. */
    private List<Day> days() {
        Map<String, List<Integer>> byDate = new LinkedHashMap<>();
        List<Pass> passes = a.track().passes();
        for (int i = 0; i < passes.size(); i++) {
            byDate.computeIfAbsent(f.date(passes.get(i).startS()), date -> new ArrayList<>())
                    .add(i);
        }
        List<Day> days = new ArrayList<>();
        if (byDate.size() > 1) {
            byDate.forEach((date, indexes) -> days.add(day(date, indexes)));
        }
        return days;
    }

    private Day day(String date, List<Integer> indexes) {
        double sweptM2 = 0;
        double[] volumeL = new double[a.rig().products().size()];
        for (int i : indexes) {
            PassTotals totals = a.rates().passes().get(i);
            sweptM2 += totals.sweptAreaM2();
            for (int p = 0; p < volumeL.length; p++) {
                volumeL[p] += totals.volumeL()[p];
            }
        }
        List<String> volumes = new ArrayList<>();
        for (int p = 0; p < volumeL.length; p++) {
            volumes.add(f.text(QuantityKind.VOLUME, volumeL[p])
                    + (volumeL.length > 1
                            ? " "
                                    + TextTruncation.name(
                                            a.rig().products().get(p).name())
                            : ""));
        }
        List<Pass> passes = a.track().passes();
        return new Day(
                date,
                f.clock(passes.get(indexes.get(0)).startS()) + " to "
                        + f.clock(passes.get(indexes.get(indexes.size() - 1)).endS()),
                f.text(QuantityKind.AREA, sweptM2),
                String.join(", ", volumes));
    }

    private List<Item> ground() {
        Coverage c = a.coverage();
        List<Item> items = new ArrayList<>();
        items.add(new Item(
                "Ground covered",
                f.text(QuantityKind.AREA, c.coveredAreaM2())
                        + ", each place once: the rows' strips joined, from the antenna's path back to where the liquid "
                        + "meets the ground",
                false));
        items.add(
                c.boundary() == null
                        ? new Item("Field boundary", "none given", false)
                        : new Item(
                                "Field boundary",
                                f.text(QuantityKind.AREA, c.boundaryAreaM2()) + " inside the outline handed in",
                                true));
        CoveragePhrases skips = CoverageSectionBuilder.skips(a, f);
        CoveragePhrases overlap = CoverageSectionBuilder.overlap(a, f);
        items.add(new Item("Skipped", skips.area() + where(skips), false));
        items.add(new Item("Covered twice", overlap.area() + where(overlap), false));
        Plan plan = answer.plan();
        if (plan.known()) {
            items.add(new Item(
                    "Against " + plan.name(),
                    f.percent(plan.shares().within()) + " of the covered ground within 10%, "
                            + f.percent(plan.shares().under()) + " under, "
                            + f.percent(plan.shares().over()) + " over",
                    false));
        }
        return items;
    }

    private static String where(CoveragePhrases words) {
        return words.none() ? "" : " in " + words.where();
    }

    private List<Item> how() {
        Rig rig = a.rig();
        List<Item> items = new ArrayList<>();
        for (String key : List.of("method", "depth")) {
            items.add(new Item(
                    Wording.label(key),
                    job.fact(key).map(TextTruncation::value).orElse("not recorded"),
                    job.fact(key).isPresent()));
        }
        items.add(new Item("Rows", rows(rig), true));
        items.add(new Item("Knife pattern", knives(rig), true));
        return items;
    }

    private String rows(Rig rig) {
        double[] widths =
                rig.bands().stream().mapToDouble(Band::widthM).sorted().toArray();
        return rig.rows() + ", " + f.text(QuantityKind.SMALL_LENGTH, widths[widths.length / 2]) + " apart, together "
                + f.text(QuantityKind.LENGTH, rig.widthM()) + " wide";
    }

    private String knives(Rig rig) {
        String own = job.fact("knives")
                .map(text -> TextTruncation.value(text) + "; ")
                .orElse("");
        double left = rig.bands().get(0).share();
        double right = rig.bands().get(rig.rows() - 1).share();
        boolean even = rig.rows() > 2
                && rig.bands().subList(1, rig.rows() - 1).stream().allMatch(band -> Math.abs(band.share() - 1) < 0.01)
                && Math.abs(left - right) < 0.01;
        if (!even) {
            return own + "outlets answer for strips of unequal width, as listed in the rig file";
        }
        if (Math.abs(left - 1) < 0.01) {
            return own + "each outside knife feeds a full row's width, like all others";
        }
        return own + "each outside knife feeds " + f.fixed(left, 1) + " of a row's width"
                + (left < 1 ? "; neighboring passes share the middle between them" : "");
    }

    /** Facts the record looks for, in its order, then whatever else was entered. */
    private List<Item> entered() {
        Map<String, String> left = new LinkedHashMap<>(job.facts());
        left.keySet().removeAll(ELSEWHERE);
        List<Item> items = new ArrayList<>();
        for (RecordField field : RecordFields.all()) {
            String value = left.remove(field.key());
            boolean inHead = value != null
                    && HEAD.contains(field.key())
                    && TextTruncation.name(value).equals(value);
            if (value != null && !inHead) {
                items.add(
                        new Item(field.label().replaceFirst(", (where|if) .*", ""), TextTruncation.value(value), true));
            }
        }
        left.forEach((key, value) ->
                items.add(new Item(Wording.label(key.replace('.', ' ')), TextTruncation.value(value), true)));
        return items;
    }

    /** What a cited rule asks for and neither the job block nor the rig file holds. */
    private List<Missing> missing() {
        List<Missing> missing = new ArrayList<>();
        for (RecordField field : RecordFields.notRecorded(job)) {
            missing.add(new Missing(field.label(), field.askedBy()));
        }
        String asked = RecordFields.all().stream()
                .filter(field -> "rig_analysis".equals(field.key()))
                .map(RecordField::askedBy)
                .findFirst()
                .orElseThrow();
        for (Product product : a.rig().products()) {
            if (Double.isNaN(product.nitrogenFraction())) {
                missing.add(new Missing("Analysis of " + TextTruncation.name(product.name()), asked));
            }
        }
        return missing;
    }

    /** Doubts about the figures come before what the record is not. */
    private List<String> cautions() {
        List<String> cautions = new ArrayList<>();
        if (!a.track().passes().isEmpty()) {
            cautions.addAll(new ReviewSummary(a, f, List.of(ProductSums.of(a, 0))).doubts());
        }
        // What is wrong with the rig file is no fault of the machine, and said above.
        List<Finding> findings = a.findings().stream()
                .filter(finding -> !FindingFacts.onlySetup(finding.kind()))
                .toList();
        if (!findings.isEmpty()) {
            List<String> clauses = new ArrayList<>();
            int named = Math.min(findings.size(), Limits.ROWS_IN_A_SENTENCE);
            for (Finding finding : findings.subList(0, named)) {
                clauses.add(FaultWords.clause(finding));
            }
            cautions.add("The machine may not have worked as it should, by the same log: " + String.join("; ", clauses)
                    + (findings.size() > named ? "; and " + (findings.size() - named) + " more" : "")
                    + ". The row diagnosis has the details. Amounts here are as metered.");
        }
        cautions.addAll(CAUTIONS);
        return cautions;
    }
}
