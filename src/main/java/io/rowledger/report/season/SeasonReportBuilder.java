package io.rowledger.report.season;

import io.rowledger.document.text.Wording;
import io.rowledger.rate.NutrientKg;
import io.rowledger.report.common.Caution;
import io.rowledger.report.common.IntervalPhrases;
import io.rowledger.report.common.ReportOptions;
import io.rowledger.report.season.SeasonReport.FieldLine;
import io.rowledger.report.season.SeasonReport.JobLine;
import io.rowledger.report.season.SeasonReport.ProductLine;
import io.rowledger.report.season.SeasonReport.Units;
import io.rowledger.units.QuantityKind;
import io.rowledger.units.UnitFormat;
import java.util.ArrayList;
import java.util.List;

/** Rounds and labels a season. */
public final class SeasonReportBuilder {
    private static final String NONE = "\u2013";

    private final Season season;
    private final ReportOptions options;
    private final UnitFormat f;

    private SeasonReportBuilder(Season season, ReportOptions options) {
        this.season = season;
        this.options = options;
        this.f = options.format();
    }

    /** The ledger as printed. */
    public static SeasonReport build(Season season, ReportOptions options) {
        return new SeasonReportBuilder(season, options).report();
    }

    private SeasonReport report() {
        double startS = season.jobs().stream()
                .mapToDouble(SeasonJob::startS)
                .filter(Double::isFinite)
                .min()
                .orElse(Double.NaN);
        double endS = season.jobs().stream()
                .mapToDouble(SeasonJob::endS)
                .filter(Double::isFinite)
                .max()
                .orElse(Double.NaN);
        String days = f.date(startS).equals(f.date(endS)) ? f.date(startS) : f.date(startS) + " to " + f.date(endS);
        List<FieldLine> fields = season.fields().stream().map(this::field).toList();
        List<ProductLine> products =
                season.products().stream().map(this::product).toList();
        String mass = f.unit(QuantityKind.NITROGEN).replace(" N", "");
        return new SeasonReport(
                "Nitrogen ledger: " + days,
                days,
                endS,
                "Rowledger " + options.programVersion(),
                answer(),
                new Units(
                        f.unit(QuantityKind.AREA),
                        f.unit(QuantityKind.VOLUME),
                        mass,
                        f.unit(QuantityKind.NITROGEN_RATE)),
                products,
                season.products().stream().anyMatch(product -> holdsOthers(product.kg())),
                fields,
                total(),
                jobs(),
                season.notes(),
                List.of(Caution.RULES, Caution.METERS));
    }

    private static boolean holdsOthers(NutrientKg kg) {
        return kg.phosphateKg() > 0 || kg.potashKg() > 0 || kg.sulfurKg() > 0;
    }

    private List<String> answer() {
        int jobs = season.jobs().size();
        int fields = season.fields().size();
        List<String> answer = new ArrayList<>();
        double nitrogenKg = season.kg().nitrogenKg();
        answer.add((jobs == 1 ? "1 job" : jobs + " jobs") + " on " + (fields == 1 ? "1 field" : fields + " fields")
                + ": "
                + f.text(QuantityKind.NITROGEN, nitrogenKg) + " put on " + f.text(QuantityKind.AREA, season.workedM2())
                + " of worked ground by the meters.");
        IntervalPhrases words = new IntervalPhrases(f);
        if (season.nitrogenWithin().known() && season.workedWithin().known()) {
            answer.add("Meters, tape and receivers leave it at "
                    + words.within(QuantityKind.NITROGEN, nitrogenKg, season.nitrogenWithin()) + " on "
                    + words.within(QuantityKind.AREA, season.workedM2(), season.workedWithin())
                    + " (nine in ten). Bounds add up from job to job, since the same meters and the same tape err the same way"
                    + " on every field; the tables keep all digits so that they add up.");
        }
        double beforeKg = season.earlierKg() + season.creditKg();
        if (beforeKg != 0) {
            answer.add("With earlier applications and credits as entered by the user, "
                    + f.text(QuantityKind.NITROGEN, nitrogenKg + beforeKg) + " in all.");
        }
        for (SeasonField field : season.fields()) {
            if (field.totalKgPerM2() > field.capKgPerM2()) {
                answer.add(
                        field.field() + " is above its cap: " + f.text(QuantityKind.NITROGEN_RATE, field.totalKgPerM2())
                                + " against " + f.text(QuantityKind.NITROGEN_RATE, field.capKgPerM2()) + ".");
            }
        }
        return answer;
    }

    private ProductLine product(Season.Product product) {
        NutrientKg kg = product.kg();
        return new ProductLine(
                product.name(),
                f.count(product.jobs()),
                number(QuantityKind.VOLUME, product.volumeL()),
                number(QuantityKind.NITROGEN, kg.nitrogenKg()),
                number(QuantityKind.NITROGEN, kg.phosphateKg()),
                number(QuantityKind.NITROGEN, kg.potashKg()),
                number(QuantityKind.NITROGEN, kg.sulfurKg()));
    }

    private FieldLine field(SeasonField field) {
        return new FieldLine(
                field.farm(),
                field.field(),
                f.count(field.jobs().size()),
                number(QuantityKind.AREA, field.areaM2()),
                number(QuantityKind.NITROGEN, field.kg().nitrogenKg()),
                orNone(QuantityKind.NITROGEN, field.earlierKg()),
                orNone(QuantityKind.NITROGEN, field.creditKg()),
                number(QuantityKind.NITROGEN, field.totalKg()),
                number(QuantityKind.NITROGEN_RATE, field.totalKgPerM2()),
                limit(field.planKgPerM2()),
                limit(field.capKgPerM2()),
                field.totalKgPerM2() > field.capKgPerM2());
    }

    private FieldLine total() {
        double totalKg = season.kg().nitrogenKg() + season.earlierKg() + season.creditKg();
        return new FieldLine(
                "",
                "Season",
                f.count(season.jobs().size()),
                "",
                number(QuantityKind.NITROGEN, season.kg().nitrogenKg()),
                orNone(QuantityKind.NITROGEN, season.earlierKg()),
                orNone(QuantityKind.NITROGEN, season.creditKg()),
                number(QuantityKind.NITROGEN, totalKg),
                "",
                "",
                "",
                false);
    }

    private List<JobLine> jobs() {
        List<JobLine> lines = new ArrayList<>();
        for (SeasonField field : season.fields()) {
            for (SeasonJob job : field.jobs()) {
                UnitFormat local = new UnitFormat(options.units(), job.zone());
                boolean first = true;
                for (SeasonJob.Put put : job.products()) {
                    lines.add(new JobLine(
                            first ? field.field() : "",
                            first ? local.date(job.startS()) : "",
                            first ? number(QuantityKind.AREA, job.coveredM2()) : "",
                            put.name(),
                            number(QuantityKind.VOLUME, put.volumeL()),
                            number(QuantityKind.NITROGEN, put.kg().nitrogenKg()),
                            number(QuantityKind.NITROGEN_RATE, put.kg().nitrogenKg() / job.coveredM2()),
                            first ? Wording.fileName(job.folder()) : ""));
                    first = false;
                }
            }
        }
        return lines;
    }

    private String number(QuantityKind measure, double si) {
        return Double.isFinite(si) ? f.number(measure, si) : UnitFormat.UNKNOWN;
    }

    private String orNone(QuantityKind measure, double si) {
        return si == 0 ? NONE : number(measure, si);
    }

    private String limit(double kgPerM2) {
        return Double.isNaN(kgPerM2) ? NONE : f.number(QuantityKind.NITROGEN_RATE, kgPerM2);
    }
}
