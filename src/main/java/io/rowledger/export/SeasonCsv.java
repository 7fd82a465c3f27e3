package io.rowledger.export;

import io.rowledger.rate.NutrientKg;
import io.rowledger.report.season.Season;
import io.rowledger.report.season.SeasonField;
import io.rowledger.report.season.SeasonJob;
import io.rowledger.uncertainty.Interval;
import io.rowledger.units.QuantityKind;
import io.rowledger.units.UnitFormat;
import java.io.IOException;
import java.io.OutputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;
import org.jspecify.annotations.Nullable;

/**
 * {@code season.csv}: a line per job and product, per field, per product over the season, and one for the season. The column
 * {@code line} says what a line sums, so that nobody sums it twice.
 */
public final class SeasonCsv {
    private SeasonCsv() {}

    /** A line; null and NaN are empty cells. */
    private record Line(
            String line,
            @Nullable SeasonJob job,
            String farm,
            String field,
            double areaM2,
            String product,
            double volumeL,
            double massKg,
            NutrientKg kg,
            @Nullable Sums sums) {}

    /** Nitrogen with that from other sources; per area NaN for a season. */
    private record Sums(
            double earlierKg,
            double creditKg,
            double totalKg,
            double totalKgPerM2,
            double planKgPerM2,
            double capKgPerM2,
            Interval nitrogenKg) {}

    public static void write(Season season, UnitFormat format, OutputStream out) throws IOException {
        new CsvTable<Line>(format)
                .text("line", Line::line)
                .text("farm", Line::farm)
                .text("field", Line::field)
                .text("crop", line -> line.job == null ? null : line.job.crop())
                .text("folder", line -> line.job == null ? null : line.job.folder())
                .time("start", line -> line.job == null ? Double.NaN : line.job.startS())
                .time("end", line -> line.job == null ? Double.NaN : line.job.endS())
                .figure("area", QuantityKind.AREA, Line::areaM2)
                .text("product", Line::product)
                .figure("volume", QuantityKind.VOLUME, Line::volumeL)
                .figure("mass", QuantityKind.NITROGEN, Line::massKg)
                .figure("nitrogen", QuantityKind.NITROGEN, line -> line.kg.nitrogenKg())
                .figure("phosphate", QuantityKind.NITROGEN, line -> line.kg.phosphateKg())
                .figure("potash", QuantityKind.NITROGEN, line -> line.kg.potashKg())
                .figure("sulfur", QuantityKind.NITROGEN, line -> line.kg.sulfurKg())
                .figure("earlier_nitrogen", QuantityKind.NITROGEN, of(Sums::earlierKg))
                .figure("credit_nitrogen", QuantityKind.NITROGEN, of(Sums::creditKg))
                .figure("total_nitrogen", QuantityKind.NITROGEN, of(Sums::totalKg))
                .figure("total_nitrogen_per_area", QuantityKind.NITROGEN_RATE, of(Sums::totalKgPerM2))
                .figure("plan_nitrogen_per_area", QuantityKind.NITROGEN_RATE, of(Sums::planKgPerM2))
                .figure("cap_nitrogen_per_area", QuantityKind.NITROGEN_RATE, of(Sums::capKgPerM2))
                .figure("nitrogen_low", QuantityKind.NITROGEN, of(sums -> sums.nitrogenKg.low()))
                .figure("nitrogen_high", QuantityKind.NITROGEN, of(sums -> sums.nitrogenKg.high()))
                .write(lines(season), out);
    }

    private static ToDoubleFunction<Line> of(ToDoubleFunction<Sums> figure) {
        return line -> line.sums == null ? Double.NaN : figure.applyAsDouble(line.sums);
    }

    private static List<Line> lines(Season season) {
        List<Line> lines = new ArrayList<>();
        for (SeasonField field : season.fields()) {
            for (SeasonJob job : field.jobs()) {
                job.products().forEach(put -> lines.add(line(job, put)));
            }
        }
        season.fields().forEach(field -> lines.add(line(field)));
        season.products().forEach(product -> lines.add(line(product)));
        lines.add(total(season));
        return lines;
    }

    private static Line line(SeasonJob job, SeasonJob.AppliedProduct put) {
        return new Line(
                "job",
                job,
                job.farm(),
                job.field(),
                job.coveredM2(),
                put.name(),
                put.volumeL(),
                put.massKg(),
                put.kg(),
                null);
    }

    private static Line line(SeasonField field) {
        Sums sums = new Sums(
                field.earlierKg(),
                field.creditKg(),
                field.totalKg(),
                field.totalKgPerM2(),
                field.planKgPerM2(),
                field.capKgPerM2(),
                field.nitrogenWithin());
        return new Line(
                "field",
                null,
                field.farm(),
                field.field(),
                field.areaM2(),
                "",
                Double.NaN,
                Double.NaN,
                field.kg(),
                sums);
    }

    private static Line line(Season.Product product) {
        return new Line(
                "product",
                null,
                "",
                "",
                Double.NaN,
                product.name(),
                product.volumeL(),
                product.massKg(),
                product.kg(),
                null);
    }

    private static Line total(Season season) {
        double totalKg = season.kg().nitrogenKg() + season.earlierKg() + season.creditKg();
        Sums sums = new Sums(
                season.earlierKg(),
                season.creditKg(),
                totalKg,
                Double.NaN,
                Double.NaN,
                Double.NaN,
                season.nitrogenWithin());
        return new Line("season", null, "", "", season.coveredM2(), "", Double.NaN, Double.NaN, season.kg(), sums);
    }
}
