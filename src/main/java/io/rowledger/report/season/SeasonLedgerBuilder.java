package io.rowledger.report.season;

import io.rowledger.document.text.Messages;
import io.rowledger.finding.RegularFile;
import io.rowledger.rate.NutrientKg;
import io.rowledger.report.common.Cautions;
import io.rowledger.report.common.ReportOptions;
import io.rowledger.report.findings.FindingTitles;
import io.rowledger.report.season.SeasonLedger.BarSection;
import io.rowledger.report.season.SeasonLedger.FieldLine;
import io.rowledger.report.season.SeasonLedger.JobLine;
import io.rowledger.report.season.SeasonLedger.ProductLine;
import io.rowledger.text.Argument;
import io.rowledger.text.Message;
import io.rowledger.uncertainty.Interval;
import io.rowledger.uncertainty.MeterFault;
import io.rowledger.units.QuantityKind;
import io.rowledger.units.UnitFormat;
import java.util.ArrayList;
import java.util.List;

/** Rounds and labels the figures of a season. */
final class SeasonLedgerBuilder {
    /** Findings of a job that its line names. */
    private static final int MAX_TITLES = 2;

    private final Season season;
    private final ReportOptions options;
    private final Messages messages;
    private final UnitFormat f;
    private final LedgerCells cells;

    SeasonLedgerBuilder(Season season, ReportOptions options) {
        this.season = season;
        this.options = options;
        this.messages = options.messages();
        this.f = options.format();
        this.cells = new LedgerCells(messages);
    }

    SeasonLedger build() {
        double endS = season.jobs().stream()
                .mapToDouble(SeasonJob::endS)
                .filter(Double::isFinite)
                .max()
                .orElse(Double.NaN);
        String days = cells.days(season.jobs());
        return new SeasonLedger(
                messages.text("season.head.title", days),
                days,
                endS,
                "Rowledger " + options.programVersion(),
                messages.texts(answer()),
                cells.units(),
                season.products().stream().map(this::product).toList(),
                season.products().stream().anyMatch(product -> holdsOthers(product.kg())),
                season.fields().stream().map(this::field).toList(),
                total(),
                jobs(),
                bars(),
                messages.texts(season.notes()),
                messages.texts(List.of(Cautions.RULES, Cautions.METERS)));
    }

    private static boolean holdsOthers(NutrientKg kg) {
        return kg.phosphateKg() > 0 || kg.potashKg() > 0 || kg.sulfurKg() > 0;
    }

    private List<Message> answer() {
        List<Message> answer = new ArrayList<>();
        double nitrogenKg = season.kg().nitrogenKg();
        answer.add(Message.of(
                Double.isNaN(nitrogenKg) ? "season.answer.unknown" : "season.answer.total",
                season.jobs().size(),
                season.fields().size(),
                Message.value(QuantityKind.NITROGEN, nitrogenKg),
                Message.value(QuantityKind.AREA, season.coveredM2())));
        Interval nitrogen = season.nitrogenWithin();
        Interval covered = season.coveredWithin();
        if (nitrogen.known() && covered.known()) {
            answer.add(cells.bounds(nitrogen, covered));
            answer.add(Message.of("season.answer.boundsAddUp"));
        }
        int inQuestion = (int)
                season.jobs().stream().filter(job -> !question(job).isEmpty()).count();
        if (inQuestion > 0) {
            answer.add(Message.of(
                    "season.answer.question", inQuestion, season.jobs().size()));
        }
        for (BarSeason bar : BarSeason.of(season.jobs())) {
            List<Integer> meters = bar.rows().stream()
                    .filter(row -> row.toCalibrate(bar.rows().size()))
                    .map(RowSeason::row)
                    .toList();
            if (!meters.isEmpty()) {
                answer.add(Message.of("season.answer.meters", meters, bar.rig()));
            }
        }
        double earlierKg = season.earlierKg() + season.creditKg();
        if (earlierKg != 0) {
            answer.add(Message.of(
                    "season.answer.withEarlier", Message.value(QuantityKind.NITROGEN, nitrogenKg + earlierKg)));
        }
        for (SeasonField field : season.fields()) {
            if (field.totalKgPerM2() > field.capKgPerM2()) {
                answer.add(Message.of(
                        "season.answer.aboveCap", field.field(), rate(field.totalKgPerM2()), rate(field.capKgPerM2())));
            }
        }
        return answer;
    }

    private static Argument rate(double kgPerM2) {
        return Message.value(QuantityKind.NITROGEN_RATE, kgPerM2);
    }

    private ProductLine product(Season.Product product) {
        NutrientKg kg = product.kg();
        return new ProductLine(
                product.name(),
                f.count(product.jobs()),
                cells.number(QuantityKind.VOLUME, product.volumeL()),
                cells.number(QuantityKind.NITROGEN, kg.nitrogenKg()),
                cells.number(QuantityKind.NITROGEN, kg.phosphateKg()),
                cells.number(QuantityKind.NITROGEN, kg.potashKg()),
                cells.number(QuantityKind.NITROGEN, kg.sulfurKg()));
    }

    private FieldLine field(SeasonField field) {
        return new FieldLine(
                field.farm(),
                field.field(),
                f.count(field.jobs().size()),
                cells.number(QuantityKind.AREA, field.areaM2()),
                cells.number(QuantityKind.NITROGEN, field.kg().nitrogenKg()),
                cells.numberOrNone(QuantityKind.NITROGEN, field.earlierKg()),
                cells.numberOrNone(QuantityKind.NITROGEN, field.creditKg()),
                cells.number(QuantityKind.NITROGEN, field.totalKg()),
                cells.number(QuantityKind.NITROGEN_RATE, field.totalKgPerM2()),
                limit(field.planKgPerM2()),
                limit(field.capKgPerM2()),
                field.totalKgPerM2() > field.capKgPerM2());
    }

    private FieldLine total() {
        double totalKg = season.kg().nitrogenKg() + season.earlierKg() + season.creditKg();
        return new FieldLine(
                "",
                messages.text("season.fields.total"),
                f.count(season.jobs().size()),
                "",
                cells.number(QuantityKind.NITROGEN, season.kg().nitrogenKg()),
                cells.numberOrNone(QuantityKind.NITROGEN, season.earlierKg()),
                cells.numberOrNone(QuantityKind.NITROGEN, season.creditKg()),
                cells.number(QuantityKind.NITROGEN, totalKg),
                "",
                "",
                "",
                false);
    }

    /** The jobs, field by field; a job of several products has a line for each. */
    private List<JobLine> jobs() {
        List<JobLine> lines = new ArrayList<>();
        for (SeasonField field : season.fields()) {
            for (SeasonJob job : field.jobs()) {
                for (int p = 0; p < job.products().size(); p++) {
                    lines.add(job(field, job, job.products().get(p), p == 0));
                }
            }
        }
        return lines;
    }

    private List<BarSection> bars() {
        RowSeasonSection section = new RowSeasonSection(messages);
        List<BarSection> sections = new ArrayList<>();
        for (BarSeason bar : BarSeason.of(season.jobs())) {
            sections.add(section.of(bar, sections.size() + 1));
        }
        return sections;
    }

    /** What puts the amounts of a job in question: its findings that meters may have read wrong, as many as have room. */
    private String question(SeasonJob job) {
        List<Message> titles = job.findings().stream()
                .filter(JobFinding::isNamed)
                .filter(finding -> MeterFault.mayMean(finding.kind()))
                .map(finding -> FindingTitles.of(finding.kind(), finding.rows(), finding.meters()))
                .toList();
        int named = Math.min(MAX_TITLES, titles.size());
        String text = String.join("; ", messages.texts(titles.subList(0, named)));
        return titles.size() > named ? messages.text("season.jobs.more", text, titles.size() - named) : text;
    }

    private String bounds(Interval nitrogenKg) {
        return nitrogenKg.known()
                ? messages.text(
                        "season.jobs.bounds",
                        cells.number(QuantityKind.NITROGEN, nitrogenKg.low()),
                        cells.number(QuantityKind.NITROGEN, nitrogenKg.high()))
                : LedgerCells.NONE;
    }

    /** Only the first line of a job names it. */
    private JobLine job(SeasonField field, SeasonJob job, SeasonJob.AppliedProduct product, boolean first) {
        double nitrogenKg = product.kg().nitrogenKg();
        return new JobLine(
                first ? field.field() : "",
                first ? cells.day(job, job.startS()) : "",
                first ? cells.number(QuantityKind.AREA, job.coveredM2()) : "",
                product.name(),
                cells.number(QuantityKind.VOLUME, product.volumeL()),
                cells.number(QuantityKind.NITROGEN, nitrogenKg),
                cells.number(QuantityKind.NITROGEN_RATE, nitrogenKg / job.coveredM2()),
                first ? bounds(job.nitrogenWithin()) : "",
                first ? question(job) : "",
                first ? RegularFile.name(job.folder()) : "");
    }

    private String limit(double kgPerM2) {
        return Double.isNaN(kgPerM2) ? LedgerCells.NONE : cells.number(QuantityKind.NITROGEN_RATE, kgPerM2);
    }
}
