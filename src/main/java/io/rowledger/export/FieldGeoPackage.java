package io.rowledger.export;

import io.rowledger.coverage.CoverageDefect;
import io.rowledger.coverage.grid.ReceivedGrid;
import io.rowledger.coverage.strips.StripPolygon;
import io.rowledger.export.GeoPackage.Column;
import io.rowledger.export.GeoPackage.Table;
import io.rowledger.finding.Finding;
import io.rowledger.geo.Jts;
import io.rowledger.rate.Rates.PassTotals;
import io.rowledger.report.findings.FindingFacts;
import io.rowledger.results.JsonNumbers;
import io.rowledger.track.Pass;
import io.rowledger.track.Poses;
import io.rowledger.units.Factor;
import java.io.IOException;
import java.io.OutputStream;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.simplify.DouglasPeuckerSimplifier;

/**
 * {@code layers/field.gpkg}: strips, passes, overlaps, skips, findings and the received rate, a layer each with its figures in
 * columns. Times are UTC; all figures SI with the unit in the column's name.
 */
public final class FieldGeoPackage {
    public static final String FILE = "layers/field.gpkg";

    /** Tolerance of a pass's line, m: below the noise of its fixes, and a tenth of the points. */
    private static final double PASS_LINE_M = 0.05;

    /**
     * Side of the squares of the received layer, m. The grid's cells of half a meter, four million on 100 ha, would fill a
     * gigabyte as polygons; {@code received.tif} has them all.
     */
    private static final double CELL_M = 5;
    /** Cells with less covered ground than this share of the square have no rate (1). */
    private static final double MIN_COVERED = 0.01;

    private static final GeometryFactory DEGREES = new GeometryFactory();

    private FieldGeoPackage() {}

    public static void write(FieldMap map, OutputStream out) throws IOException {
        try (GeoPackage file = new GeoPackage(map.track().plane(), JsonNumbers.time(map.endS()))) {
            strips(map, file);
            passes(map, file);
            places(map.coverage().overlaps(), "overlaps", "Ground with two visits or more", Sld.OVERLAP, file);
            // Where only a meter read zero nobody needs to drive back to: marked, and not among the places of the GPX
            // file.
            List<CoverageDefect> skips = new ArrayList<>(map.coverage().skips());
            skips.addAll(map.coverage().doubtfulSkips());
            places(skips, "skips", "Ground not covered", Sld.SKIP, file);
            findings(map, file);
            received(map, file);
            file.writeTo(out);
        } catch (SQLException e) {
            throw new IOException(e);
        }
    }

    private static Column text(String name, String meaning) {
        return new Column(name, "TEXT", meaning);
    }

    private static Column number(String name, String meaning) {
        return new Column(name, "DOUBLE", meaning);
    }

    private static Column whole(String name, String meaning) {
        return new Column(name, "INTEGER", meaning);
    }

    private static Column flag(String name, String meaning) {
        return new Column(name, "BOOLEAN", meaning);
    }

    private static @Nullable Double rounded(double value, int decimals) {
        java.math.BigDecimal number = JsonNumbers.of(value, decimals);
        return number == null ? null : number.doubleValue();
    }

    /** The same for tens of thousands of squares, without a detour through text. */
    private static @Nullable Double inParts(double value, double parts) {
        return Double.isFinite(value) ? Math.rint(value * parts) / parts + 0.0 : null;
    }

    private static String numbers(List<Integer> numbers) {
        return numbers.stream().map(String::valueOf).collect(Collectors.joining(", "));
    }

    private static void strips(FieldMap map, GeoPackage file) throws SQLException {
        Poses poses = map.track().poses();
        Table table = new Table(
                "strips",
                "POLYGON",
                "Ground of neighboring rows that applied together for a stretch of one pass",
                Sld.STRIPS,
                List.of(
                        whole("pass", "pass, from 1 in time order"),
                        whole("first_row", "first row, from 1 at the left"),
                        whole("last_row", "last row"),
                        text("from_utc", "first moment, UTC"),
                        text("to_utc", "last moment, UTC"),
                        flag("delivering", "true where liquid was applied, false where only swept"),
                        flag("unsettled", "true where the bar's angle was not known"),
                        number("area_m2", "area, square meters")));
        file.layer(table, layer -> {
            for (StripPolygon strip : map.coverage().strips()) {
                boolean area = strip.isArea();
                layer.add(
                        strip.polygon(),
                        area ? null : strip.pass(),
                        area ? null : strip.firstRow(),
                        area ? null : strip.lastRow(),
                        area ? null : JsonNumbers.time(poses.timeS(strip.firstStep())),
                        area ? null : JsonNumbers.time(poses.timeS(strip.endStep())),
                        strip.delivering() ? 1 : 0,
                        strip.unsettled() ? 1 : 0,
                        rounded(strip.polygon().getArea(), JsonNumbers.AREA_M2));
            }
        });
    }

    private static void passes(FieldMap map, GeoPackage file) throws SQLException {
        List<Column> columns = new ArrayList<>(List.of(
                whole("pass", "pass, from 1 in time order"),
                text("from_utc", "start, UTC"),
                text("to_utc", "end, UTC"),
                number("length_m", "path of the bar's middle, meters"),
                number("swept_area_m2", "swept area, square meters")));
        map.products().forEach(product -> {
            columns.add(number(product.key() + "_volume_l", product.name() + " metered, liters"));
            columns.add(number(product.key() + "_target_volume_l", product.name() + " at the target rate, liters"));
        });
        Table table = new Table("passes", "LINESTRING", "Path of the bar's middle", Sld.PASSES, columns);
        file.layer(table, layer -> {
            for (int i = 0; i < map.track().passes().size(); i++) {
                Pass pass = map.track().passes().get(i);
                PassTotals totals = map.rates().passes().get(i);
                List<@Nullable Object> row = new ArrayList<>();
                row.add(pass.number());
                row.add(JsonNumbers.time(pass.startS()));
                row.add(JsonNumbers.time(pass.endS()));
                row.add(rounded(pass.lengthM(), JsonNumbers.LENGTH_M));
                row.add(rounded(totals.sweptAreaM2(), JsonNumbers.AREA_M2));
                for (int p = 0; p < totals.volumeL().length; p++) {
                    row.add(rounded(totals.volumeL()[p], JsonNumbers.VOLUME_L));
                    row.add(rounded(totals.targetVolumeL()[p], JsonNumbers.VOLUME_L));
                }
                layer.add(line(map.track().poses(), pass), row.toArray());
            }
        });
    }

    private static LineString line(Poses poses, Pass pass) {
        Coordinate[] way = new Coordinate[pass.endStep() - pass.firstStep() + 1];
        for (int i = 0; i < way.length; i++) {
            int pose = pass.firstStep() + i;
            way[i] = new Coordinate(poses.dropEastM(pose), poses.dropNorthM(pose));
        }
        return (LineString) DouglasPeuckerSimplifier.simplify(DEGREES.createLineString(way), PASS_LINE_M);
    }

    private static void places(List<CoverageDefect> places, String name, String meaning, String sld, GeoPackage file)
            throws SQLException {
        Table table = new Table(
                name,
                "POLYGON",
                meaning,
                sld,
                List.of(
                        whole("number", "from 1, largest first"),
                        number("area_m2", "area, square meters"),
                        text("passes", "passes in it or next to it"),
                        text("rows", "rows in it or next to it"),
                        text("cause", "likely cause"),
                        flag("doubtful", "true where a meter read zero while liquid flowed; numbered apart")));
        file.layer(table, layer -> {
            for (CoverageDefect place : places) {
                layer.add(
                        place.polygon(),
                        place.number(),
                        rounded(place.areaM2(), JsonNumbers.AREA_M2),
                        numbers(place.passes()),
                        numbers(place.rows()),
                        place.cause().name().toLowerCase(Locale.ROOT),
                        place.doubtful() ? 1 : 0);
            }
        });
    }

    private static void findings(FieldMap map, GeoPackage file) throws SQLException {
        Table table = new Table(
                "findings",
                "POINT",
                "Findings at the place where they first show",
                Sld.FINDINGS,
                List.of(
                        whole("number", "from 1, most certain first"),
                        text("kind", "what it is"),
                        text("rows", "rows concerned, from 1 at the left"),
                        text("from_utc", "first sign, UTC"),
                        text("to_utc", "last sign, UTC"),
                        number("confidence", "confidence, 0 to 1"),
                        number("area_m2", "ground it concerns, square meters"),
                        number("volume_l", "too little liquid (negative) or too much, liters"),
                        number("nitrogen_kg", "the same as nitrogen, kilograms"),
                        text("evidence", "evidence"),
                        text("check_first", "what to look at on the machine")));
        file.layer(table, layer -> {
            int number = 0;
            for (Finding finding : map.findings()) {
                boolean placed = Double.isFinite(finding.latDeg()) && Double.isFinite(finding.lonDeg());
                layer.degrees(
                        placed ? DEGREES.createPoint(new Coordinate(finding.lonDeg(), finding.latDeg())) : null,
                        ++number,
                        finding.kind().jsonName(),
                        numbers(finding.rows()),
                        JsonNumbers.time(finding.fromS()),
                        JsonNumbers.time(finding.toS()),
                        rounded(finding.confidence(), 2),
                        rounded(finding.areaM2(), JsonNumbers.AREA_M2),
                        rounded(finding.volumeL(), JsonNumbers.VOLUME_L),
                        rounded(finding.nitrogenKg(), JsonNumbers.MASS_KG),
                        FindingFacts.filed(finding.evidence()),
                        FindingFacts.filed(finding.check()));
            }
        });
    }

    private static void received(FieldMap map, GeoPackage file) throws SQLException {
        ReceivedGrid grid = map.coverage().grid();
        List<Column> columns =
                new ArrayList<>(List.of(number("covered_area_m2", "covered ground in the cell, square meters")));
        map.products().forEach(product -> {
            columns.add(number(product.key() + "_volume_l", product.name() + " in the cell, liters"));
            columns.add(number(
                    product.key() + "_received_l_per_ha",
                    product.name() + " received, liters per hectare of covered ground"));
            columns.add(number(
                    product.key() + "_target_l_per_ha",
                    product.name() + " target rate, liters per hectare of covered ground"));
            columns.add(number(product.key() + "_deviation_pct", "received against target, percent"));
        });
        String first = map.products().isEmpty()
                ? ""
                : Sld.received(map.products().get(0).key() + "_deviation_pct");
        int block = Math.max(1, (int) Math.round(CELL_M / grid.cellM()));
        Table table = new Table("received", "POLYGON", "Received rate in squares of the job's plane", first, columns);
        file.layer(table, layer -> {
            for (int row = 0; row < grid.rows(); row += block) {
                for (int col = 0; col < grid.cols(); col += block) {
                    square(grid, row, col, block, layer);
                }
            }
        });
    }

    private static void square(ReceivedGrid grid, int row, int col, int block, GeoPackage.Layer layer)
            throws SQLException {
        int products = grid.volumeL().length;
        double coveredM2 = 0;
        double[] volumeL = new double[products];
        double[] targetL = new double[products];
        int rowEnd = Math.min(grid.rows(), row + block);
        int colEnd = Math.min(grid.cols(), col + block);
        for (int r = row; r < rowEnd; r++) {
            for (int c = col; c < colEnd; c++) {
                int i = r * grid.cols() + c;
                coveredM2 += grid.coveredM2()[i];
                for (int p = 0; p < products; p++) {
                    volumeL[p] += grid.volumeL()[p][i];
                    targetL[p] += grid.coveredM2()[i] > 0 ? grid.targetL()[p][i] : 0;
                }
            }
        }
        double side = grid.cellM();
        if (coveredM2 <= 0 && Arrays.stream(volumeL).allMatch(litres -> litres <= 0)) {
            return;
        }
        // Every liter is in some square; a rate only where enough ground is covered.
        double rateM2 = coveredM2 < MIN_COVERED * block * block * side * side ? Double.NaN : coveredM2;
        @Nullable Object[] values = new @Nullable Object[1 + 4 * products];
        values[0] = inParts(coveredM2, 1e2);
        for (int p = 0; p < products; p++) {
            values[1 + 4 * p] = inParts(volumeL[p], 1e3);
            values[2 + 4 * p] = inParts(volumeL[p] / rateM2 * Factor.SQUARE_METRES_PER_HECTARE, 1e2);
            values[3 + 4 * p] = inParts(targetL[p] / rateM2 * Factor.SQUARE_METRES_PER_HECTARE, 1e2);
            values[4 + 4 * p] = inParts(targetL[p] > 0 ? (volumeL[p] / targetL[p] - 1) * 100 : Double.NaN, 1e3);
        }
        Envelope box = new Envelope(
                grid.east0M() + col * side,
                grid.east0M() + colEnd * side,
                grid.north0M() + row * side,
                grid.north0M() + rowEnd * side);
        layer.add(Jts.FACTORY.toGeometry(box), values);
    }
}
