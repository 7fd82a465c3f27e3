package io.rowledger.export;

import io.rowledger.rate.NutrientKg;
import io.rowledger.report.season.Season;
import io.rowledger.report.season.SeasonField;
import io.rowledger.report.season.SeasonJob;
import io.rowledger.results.JsonNumbers;
import io.rowledger.units.Factor;
import java.io.IOException;
import java.io.OutputStream;
import java.io.Writer;
import java.util.List;

/**
 * {@code season.csv}: a line per job and product, per field, per product over the season, and one for the season. SI, units in
 * the header; a cell nobody knows is empty. The column {@code line} says what a line sums, so that nobody sums it twice.
 */
public final class SeasonCsv {
    private final Writer out;

    private SeasonCsv(Writer out) {
        this.out = out;
    }

    public static void write(Season season, OutputStream stream) throws IOException {
        Writer out = Cells.writer(stream);
        new SeasonCsv(out).all(season);
        out.flush();
    }

    private void all(Season season) throws IOException {
        Cells.record(
                out,
                List.of(
                        "line",
                        "farm",
                        "field",
                        "crop",
                        "folder",
                        "start",
                        "end",
                        "area_m2",
                        "product",
                        "volume_l",
                        "mass_kg",
                        "nitrogen_kg",
                        "phosphate_kg",
                        "potash_kg",
                        "sulfur_kg",
                        "earlier_nitrogen_kg",
                        "credit_nitrogen_kg",
                        "total_nitrogen_kg",
                        "total_nitrogen_kg_per_ha",
                        "plan_nitrogen_kg_per_ha",
                        "cap_nitrogen_kg_per_ha",
                        "nitrogen_kg_low",
                        "nitrogen_kg_high"));
        for (SeasonField field : season.fields()) {
            for (SeasonJob job : field.jobs()) {
                for (SeasonJob.Put put : job.products()) {
                    jobLine(job, put);
                }
            }
        }
        for (SeasonField field : season.fields()) {
            fieldLine(field);
        }
        for (Season.Product product : season.products()) {
            line(
                    List.of("product", "", "", "", "", "", "", "", Cells.text(product.name())),
                    product.volumeL(),
                    product.massKg(),
                    product.kg(),
                    List.of("", "", "", "", "", "", "", ""));
        }
        double totalKg = season.kg().nitrogenKg() + season.earlierKg() + season.creditKg();
        line(
                List.of("season", "", "", "", "", "", "", area(season.workedM2()), ""),
                Double.NaN,
                Double.NaN,
                season.kg(),
                List.of(
                        kg(season.earlierKg()),
                        kg(season.creditKg()),
                        kg(totalKg),
                        "",
                        "",
                        "",
                        kg(season.nitrogenWithin().low()),
                        kg(season.nitrogenWithin().high())));
    }

    private void jobLine(SeasonJob job, SeasonJob.Put put) throws IOException {
        line(
                List.of(
                        "job",
                        Cells.text(job.farm()),
                        Cells.text(job.field()),
                        Cells.text(job.crop()),
                        Cells.text(job.folder()),
                        time(job.startS()),
                        time(job.endS()),
                        area(job.coveredM2()),
                        Cells.text(put.name())),
                put.volumeL(),
                put.massKg(),
                put.kg(),
                List.of("", "", "", "", "", "", "", ""));
    }

    private void fieldLine(SeasonField field) throws IOException {
        line(
                List.of(
                        "field",
                        Cells.text(field.farm()),
                        Cells.text(field.field()),
                        "",
                        "",
                        "",
                        "",
                        area(field.areaM2()),
                        ""),
                Double.NaN,
                Double.NaN,
                field.kg(),
                List.of(
                        kg(field.earlierKg()),
                        kg(field.creditKg()),
                        kg(field.totalKg()),
                        perHa(field.totalKgPerM2()),
                        perHa(field.planKgPerM2()),
                        perHa(field.capKgPerM2()),
                        kg(field.nitrogenWithin().low()),
                        kg(field.nitrogenWithin().high())));
    }

    private void line(List<String> before, double volumeL, double massKg, NutrientKg kg, List<String> after)
            throws IOException {
        List<String> cells = new java.util.ArrayList<>(before);
        cells.add(JsonNumbers.text(volumeL, JsonNumbers.VOLUME_L));
        cells.add(kg(massKg));
        cells.add(kg(kg.nitrogenKg()));
        cells.add(kg(kg.phosphateKg()));
        cells.add(kg(kg.potashKg()));
        cells.add(kg(kg.sulfurKg()));
        cells.addAll(after);
        Cells.record(out, cells);
    }

    private static String time(double epochS) {
        String time = JsonNumbers.time(epochS);
        return time == null ? "" : time;
    }

    private static String area(double m2) {
        return JsonNumbers.text(m2, JsonNumbers.AREA_M2);
    }

    private static String kg(double kg) {
        return JsonNumbers.text(kg, JsonNumbers.MASS_KG);
    }

    private static String perHa(double kgPerM2) {
        return JsonNumbers.text(kgPerM2 * Factor.SQUARE_METRES_PER_HECTARE, JsonNumbers.RATE);
    }
}
