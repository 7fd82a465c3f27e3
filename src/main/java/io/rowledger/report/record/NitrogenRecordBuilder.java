package io.rowledger.report.record;

import io.rowledger.coverage.Coverage;
import io.rowledger.document.text.Messages;
import io.rowledger.document.text.TextTruncation;
import io.rowledger.document.text.Wording;
import io.rowledger.finding.Finding;
import io.rowledger.report.common.Limits;
import io.rowledger.report.common.ReportHeaders;
import io.rowledger.report.common.ReportOptions;
import io.rowledger.report.findings.FindingTitles;
import io.rowledger.report.record.NitrogenGrid.Shares;
import io.rowledger.report.record.NitrogenRecord.Head;
import io.rowledger.report.record.NitrogenRecord.Item;
import io.rowledger.report.record.NitrogenRecord.MapKey;
import io.rowledger.report.record.NitrogenRecord.Units;
import io.rowledger.report.sections.CoveragePhrases;
import io.rowledger.rig.Band;
import io.rowledger.rig.Job;
import io.rowledger.rig.Rig;
import io.rowledger.text.Message;
import io.rowledger.units.QuantityKind;
import io.rowledger.units.UnitFormat;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;

/** Rounds and labels the figures of a nitrogen record. */
final class NitrogenRecordBuilder {
    /** Job facts that other parts of the page hold. */
    private static final Set<String> ELSEWHERE = Set.of("field", "zone", "method", "depth", "knives", "plan", "cap");

    /** Job facts of the page's head, in its order. */
    private static final List<String> PLACE = List.of("farm", "tract", "county", "state");

    /** Job facts that are listed only if the head cut them. */
    private static final Set<String> HEAD = Set.of("farm", "tract", "county", "state", "applicator");

    /** Smallest difference between two shares of a row's width that counts. */
    private static final double MIN_SHARE_DIFFERENCE = 0.01;

    private final RecordInput in;
    private final ReportOptions options;
    private final Messages messages;
    private final UnitFormat f;
    private final Job job;

    NitrogenRecordBuilder(RecordInput in, ReportOptions options, Messages messages) {
        this.in = in;
        this.options = options;
        this.messages = messages;
        this.f = messages.units();
        this.job = in.job();
    }

    NitrogenRecord build() {
        LiquidSection liquids = new LiquidSection(in, messages);
        MissingFacts missing = MissingFacts.of(in, messages);
        return new NitrogenRecord(
                head(),
                new NitrogenAnswer(in, messages).sentences(),
                in.coverage().coveredAreaM2() > 0,
                map(),
                liquids.lines(),
                liquids.notes(),
                new BudgetSection(in, messages).build(),
                RecordedDays.of(in, messages),
                RecordTables.setbacks(in, messages),
                RecordTables.zones(in, messages),
                ground(),
                method(),
                entered(),
                missing.items(),
                missing.intro(),
                new RecordBasis(in, options, messages).build(),
                cautions());
    }

    private Head head() {
        double startS = in.work().times().startS();
        double endS = in.work().times().endS();
        String field = job.fact("field").orElse("").strip();
        boolean named = !field.isEmpty();
        List<String> place = new ArrayList<>();
        for (String key : PLACE) {
            job.fact(key).ifPresent(value -> place.add(withLabel(key, TextTruncation.name(value))));
        }
        return new Head(
                title(named ? TextTruncation.title(field) : "", startS, endS),
                named ? TextTruncation.title(field) : messages.text("record.head.noField"),
                named,
                String.join(", ", place),
                ReportHeaders.when(in.work().times(), messages),
                new Item(
                        messages.text("record.head.appliedBy"),
                        job.fact("applicator").map(TextTruncation::name).orElse(notRecorded()),
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

    /** The field and the local day or days of the work, where they are known. */
    private String title(String field, double startS, double endS) {
        if (!UnitFormat.isKnown(startS)) {
            return field.isEmpty()
                    ? messages.text("record.head.titleUndated")
                    : messages.text("record.head.titleOfUndated", field);
        }
        if (field.isEmpty()) {
            return messages.text("record.head.title", Message.time(startS));
        }
        return f.sameDay(startS, endS)
                ? messages.text("record.head.titleOf", field, Message.time(startS))
                : messages.text("record.head.titleDays", field, Message.time(startS), Message.time(endS));
    }

    private String notRecorded() {
        return messages.text("words.notRecorded");
    }

    /** {@code Tract 7}, and not "Tract Tract 7" if the user wrote the word too. */
    private String withLabel(String key, String value) {
        return value.toLowerCase(Locale.ROOT).contains(key)
                ? value
                : messages.text("record.head.labeled", Wording.label(key), value);
    }

    private MapKey map() {
        NitrogenMapKey key = new NitrogenMapKey(in.ground(), messages);
        PlanComparison plan = in.plan();
        String title = mapTitle();
        if (plan.known()) {
            Message middle = plan.isPlan() ? Message.of("record.map.plan") : Message.of("record.map.target");
            return key.build(title, plan.perM2(), plan.earlierPerM2(), middle);
        }
        return key.build(title, in.ground().meanPerM2(), 0, Message.of("record.map.mean"));
    }

    private String mapTitle() {
        if (!in.ground().isNitrogen()) {
            return messages.text("record.map.titleLiquid", in.product(0));
        }
        return in.rig().products().size() > 1
                ? messages.text("record.map.titleAll")
                : messages.text("record.map.title");
    }

    private List<Item> ground() {
        Coverage c = in.coverage();
        List<Item> items = new ArrayList<>();
        items.add(new Item(
                messages.text("record.ground.covered"),
                messages.text(
                        in.areas() ? "record.ground.coveredAreas" : "record.ground.coveredText",
                        Message.value(QuantityKind.AREA, c.coveredAreaM2())),
                false));
        boolean bounded = c.boundary() != null;
        items.add(new Item(
                messages.text("record.ground.boundary"),
                bounded
                        ? messages.text(
                                "record.ground.boundaryText", Message.value(QuantityKind.AREA, c.boundaryAreaM2()))
                        : messages.text("record.ground.noBoundary"),
                bounded));
        items.add(new Item(
                messages.text("record.ground.skipped"), patches(in.sections().skips()), false));
        items.add(new Item(
                messages.text("record.ground.overlap"), patches(in.sections().overlap()), false));
        PlanComparison plan = in.plan();
        if (plan.known() && !in.amountsInQuestion()) {
            Shares shares = plan.shares();
            items.add(new Item(
                    plan.isPlan()
                            ? messages.text("record.ground.againstPlan")
                            : messages.text("record.ground.againstTarget"),
                    messages.text(
                            "record.ground.shares",
                            Message.percent(shares.within()),
                            NitrogenGrid.ON_PLAN_PCT,
                            Message.percent(shares.under()),
                            Message.percent(shares.over())),
                    false));
        }
        return items;
    }

    private String patches(CoveragePhrases area) {
        return area.none() ? area.area() : messages.text("record.ground.patches", area.area(), area.where());
    }

    private List<Item> method() {
        Rig rig = in.rig();
        return List.of(
                new Item(
                        messages.text("record.field.method"),
                        job.fact("method").map(TextTruncation::value).orElse(notRecorded()),
                        job.fact("method").isPresent()),
                new Item(
                        messages.text("record.field.depth"),
                        job.fact("depth").map(TextTruncation::value).orElse(notRecorded()),
                        job.fact("depth").isPresent()),
                new Item(messages.text("record.method.rows"), rows(rig), true),
                new Item(messages.text("record.field.knives"), knives(rig), true));
    }

    private String rows(Rig rig) {
        double[] widthsM =
                rig.bands().stream().mapToDouble(Band::widthM).sorted().toArray();
        return messages.text(
                "record.method.rowsText",
                rig.rows(),
                Message.value(QuantityKind.SMALL_LENGTH, widthsM[widthsM.length / 2]),
                Message.value(QuantityKind.LENGTH, rig.widthM()));
    }

    private String knives(Rig rig) {
        String pattern = messages.text(knifePattern(rig));
        return job.fact("knives")
                .map(text -> messages.text("record.method.knivesEntered", TextTruncation.value(text), pattern))
                .orElse(pattern);
    }

    private static Message knifePattern(Rig rig) {
        double left = rig.bands().get(0).share();
        double right = rig.bands().get(rig.rows() - 1).share();
        boolean even = rig.rows() > 2
                && rig.bands().subList(1, rig.rows() - 1).stream().allMatch(band -> isSame(band.share(), 1))
                && isSame(left, right);
        if (!even) {
            return Message.of("record.method.knivesCustom");
        }
        if (isSame(left, 1)) {
            return Message.of("record.method.knivesFull");
        }
        return Message.of(
                left < 1 ? "record.method.knivesShared" : "record.method.knivesWide", Message.decimal(left, 1));
    }

    private static boolean isSame(double share, double other) {
        return Math.abs(share - other) < MIN_SHARE_DIFFERENCE;
    }

    /** The facts that a record should hold, in its order, then whatever else was entered. */
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
                items.add(new Item(messages.text(field.label()), TextTruncation.value(value), true));
            }
        }
        left.forEach((key, value) ->
                items.add(new Item(Wording.label(key.replace('.', ' ')), TextTruncation.value(value), true)));
        return items;
    }

    /** What makes the figures uncertain, then what the record is not. */
    private List<String> cautions() {
        List<String> cautions = new ArrayList<>(in.sections().reservations());
        List<Finding> findings = in.machineFindings();
        if (!findings.isEmpty()) {
            int named = Math.min(findings.size(), Limits.ROWS_IN_A_SENTENCE);
            List<String> titles = messages.texts(
                    findings.subList(0, named).stream().map(FindingTitles::of).toList());
            cautions.add(messages.text("record.caution.findings", String.join(". ", titles), findings.size() - named));
        }
        cautions.add(messages.text("cautions.record.scope"));
        cautions.add(messages.text("cautions.record.rules"));
        return cautions;
    }
}
