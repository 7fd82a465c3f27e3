package io.rowledger.maps;

import io.rowledger.finding.UnusableInputException;
import io.rowledger.text.Message;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.Point;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.io.ParseException;
import org.locationtech.jts.io.WKBReader;
import org.sqlite.NativeLibraryNotFoundException;

/**
 * The features of a GeoPackage (OGC 12-128r18). Of several feature tables the one is read that is named after the use:
 * {@code boundary}, {@code prescription} or {@code keep_out}, whatever the case, blanks, underscores and hyphens; without
 * one of that name the file is refused. The file is opened read only and nothing in it is run: views are refused.
 */
final class GeoPackageFeatures {
    /** Flags of the geometry header (OGC 12-128, 2.1.3.1): the geometry is empty. */
    private static final int EMPTY = 0x10;
    /** Bytes of the header's envelope by its code. */
    private static final int[] ENVELOPE_BYTES = {0, 32, 48, 48, 64};

    private final String file;
    private final MapUse use;
    private final RingReader places;
    private final List<MapFeature> features = new ArrayList<>();
    private final List<Message> notes = new ArrayList<>();

    private record Table(String name, String column, int srs) {}

    private GeoPackageFeatures(String file, MapUse use) {
        this.file = file;
        this.use = use;
        this.places = new RingReader(file, use, MapFormat.GEOPACKAGE);
    }

    static MapFeatures read(Path path, MapUse use) {
        String file = path.toString();
        requireClosed(path);
        GeoPackageFeatures reader = new GeoPackageFeatures(file, use);
        try (Connection db = Sqlite.open(path)) {
            Table table = reader.choose(db);
            reader.rows(db, table, reader.system(db, table));
        } catch (SQLException e) {
            if (e.getCause() instanceof NativeLibraryNotFoundException) {
                throw noLibrary(file, use);
            }
            throw UnusableInputException.found("a GeoPackage that can't be read (" + Sqlite.words(e) + ")")
                    .inFile(file)
                    .expected("a GeoPackage (OGC 12-128) with features")
                    .hint("copy the file again, or export the " + use.file() + " again");
        } catch (LinkageError e) {
            throw noLibrary(file, use);
        }
        return new MapFeatures(file, MapFormat.GEOPACKAGE, reader.features, reader.notes);
    }

    private static UnusableInputException noLibrary(String file, MapUse use) {
        return UnusableInputException.found("a GeoPackage on a machine for which this program has no SQLite library")
                .inFile(file)
                .expected("a 64-bit Windows, macOS or Linux whose temporary folder lets programs run")
                .hint("export the " + use.file() + " as GeoJSON, KML or a shapefile");
    }

    /** What a program has written but not yet moved into the file would be missing. */
    private static void requireClosed(Path path) {
        Path journal = path.resolveSibling(path.getFileName() + "-wal");
        try {
            if (Files.exists(journal) && Files.size(journal) > 0) {
                throw UnusableInputException.found("a GeoPackage that another program has open")
                        .inFile(path.toString())
                        .expected("a file without a -wal file beside it")
                        .hint("close the program that edits it, or export a copy");
            }
        } catch (IOException e) {
            throw MapSize.unreadable(path.toString(), e);
        }
    }

    private Table choose(Connection db) throws SQLException {
        List<Table> tables = new ArrayList<>();
        try (Statement s = db.createStatement()) {
            if (!exists(s, "gpkg_contents") || !exists(s, "gpkg_geometry_columns")) {
                throw UnusableInputException.found("an SQLite file that is no GeoPackage with features")
                        .inFile(file)
                        .expected("the tables gpkg_contents and gpkg_geometry_columns (OGC 12-128)")
                        .hint("export the " + use.file() + " as GeoPackage, GeoJSON, KML or a shapefile");
            }
            try (ResultSet r = s.executeQuery("SELECT g.table_name, g.column_name, g.srs_id FROM gpkg_contents c JOIN"
                    + " gpkg_geometry_columns g ON g.table_name = c.table_name WHERE c.data_type = 'features'"
                    + " ORDER BY c.rowid")) {
                while (r.next()) {
                    tables.add(new Table(text(r, 1), text(r, 2), r.getInt(3)));
                }
            }
        }
        String wanted = plain(use.file().replace(" file", ""));
        List<Table> named =
                tables.stream().filter(t -> plain(t.name).equals(wanted)).toList();
        List<Table> found = tables.size() == 1 ? tables : named;
        if (found.size() != 1) {
            String names = String.join(", ", tables.stream().map(Table::name).toList());
            throw UnusableInputException.found(
                            tables.isEmpty()
                                    ? "a GeoPackage without features"
                                    : "a GeoPackage with several feature tables: " + names)
                    .inFile(file)
                    .expected("one feature table, or one with the name "
                            + use.file().replace(" file", "").replace('-', '_'))
                    .hint("give the table that holds " + use.holds() + " this name, or export it alone");
        }
        return found.get(0);
    }

    private static boolean exists(Statement s, String table) throws SQLException {
        try (ResultSet r = s.executeQuery(
                "SELECT 1 FROM sqlite_master WHERE type = 'table' AND lower(name) = " + quoted(table, '\''))) {
            return r.next();
        }
    }

    private static String quoted(String name, char quote) {
        String q = String.valueOf(quote);
        return q + name.replace(q, q + q) + q;
    }

    private static String plain(String name) {
        return name.toLowerCase(Locale.ROOT).replaceAll("[\\s_\\-]+", "");
    }

    private static String text(ResultSet r, int column) throws SQLException {
        String text = r.getString(column);
        return text == null ? "" : text;
    }

    private ReferenceSystem system(Connection db, Table table) throws SQLException {
        String definition = "";
        String organization = "";
        try (Statement s = db.createStatement();
                ResultSet r = s.executeQuery("SELECT organization, organization_coordsys_id, definition FROM"
                        + " gpkg_spatial_ref_sys WHERE srs_id = " + table.srs)) {
            if (r.next()) {
                organization = text(r, 1).toUpperCase(Locale.ROOT) + ":" + r.getInt(2);
                definition = text(r, 3);
            }
        }
        if (organization.equals("EPSG:4326")) {
            return ReferenceSystem.WGS84;
        }
        if (table.srs <= 0 || definition.isBlank() || definition.equals("undefined")) {
            throw UnusableInputException.found("the table " + table.name + " without a coordinate system")
                    .inFile(file)
                    .expected("a coordinate system in gpkg_spatial_ref_sys, such as EPSG:4326")
                    .hint("export the " + use.file() + " again in degrees on WGS 84");
        }
        try {
            ReferenceSystem system = ReferenceSystem.of(definition);
            if (!system.otherDatum().isEmpty()) {
                notes.add(Message.of("notes.map.datum", file, system.otherDatum()));
            }
            return system;
        } catch (ReferenceSystem.NotUsable e) {
            throw UnusableInputException.found(e.found() + " (" + organization + ")")
                    .inFile(file)
                    .expected(e.wanted())
                    .hint("export the " + use.file() + " again in degrees on WGS 84");
        }
    }

    private void rows(Connection db, Table table, ReferenceSystem system) throws SQLException {
        try (Statement s = db.createStatement()) {
            if (!exists(s, table.name.toLowerCase(Locale.ROOT))) {
                throw UnusableInputException.found("no table " + table.name + ", which the GeoPackage names")
                        .inFile(file)
                        .expected("a table of features; a view is not enough")
                        .hint("export the " + use.file() + " as a table");
            }
            Set<String> keys = Sqlite.primaryKeys(s, quoted(table.name, '"'));
            try (ResultSet r = s.executeQuery("SELECT * FROM " + quoted(table.name, '"') + " ORDER BY rowid")) {
                while (r.next()) {
                    feature(r, table, keys, system);
                }
            }
        }
    }

    private void feature(ResultSet r, Table table, Set<String> keys, ReferenceSystem system) throws SQLException {
        List<MapProperty> properties = new ArrayList<>();
        List<MapShape> shapes = new ArrayList<>();
        List<String> types = new ArrayList<>();
        int columns = r.getMetaData().getColumnCount();
        for (int c = 1; c <= columns; c++) {
            String name = r.getMetaData().getColumnName(c);
            Object value = r.getObject(c);
            if (name.equalsIgnoreCase(table.column)) {
                if (value instanceof byte[] blob) {
                    shapes(geometry(blob), system, types, shapes);
                }
            } else if (value instanceof Number number && !keys.contains(name)) {
                properties.add(new MapProperty(name, number.toString(), number.doubleValue(), 0));
            } else if (value instanceof String text && !text.isEmpty()) {
                properties.add(new MapProperty(name, text, Double.NaN, 0));
            }
        }
        features.add(new MapFeature(number(), 0, types, shapes, properties));
    }

    private int number() {
        return features.size() + 1;
    }

    private Geometry geometry(byte[] blob) {
        boolean whole = blob.length >= 8 && blob[0] == 'G' && blob[1] == 'P';
        int envelope = whole ? blob[3] >> 1 & 7 : 0;
        if (!whole || envelope >= ENVELOPE_BYTES.length || blob.length < 8 + ENVELOPE_BYTES[envelope]) {
            throw damaged();
        }
        if ((blob[3] & EMPTY) != 0) {
            return Sqlite.EMPTY;
        }
        try {
            return new WKBReader().read(Arrays.copyOfRange(blob, 8 + ENVELOPE_BYTES[envelope], blob.length));
        } catch (ParseException | IllegalArgumentException e) {
            throw damaged();
        }
    }

    private UnusableInputException damaged() {
        return places.fault("a geometry that can't be read", number(), 0)
                .expected("a geometry as of OGC 12-128, section 2.1.3")
                .hint("export the " + use.file() + " again");
    }

    private void shapes(Geometry geometry, ReferenceSystem system, List<String> types, List<MapShape> out) {
        if (!types.contains(geometry.getGeometryType()) && !geometry.isEmpty()) {
            types.add(geometry.getGeometryType());
        }
        flat(geometry, system, out);
    }

    private void flat(Geometry geometry, ReferenceSystem system, List<MapShape> out) {
        if (geometry.isEmpty()) {
            return;
        }
        if (geometry instanceof Point point) {
            double[] one = lonLat(new Coordinate[] {point.getCoordinate()}, system);
            out.add(new MapShape(MapShape.Kind.POINT, List.of(places.checked(one, number(), 0))));
        } else if (geometry instanceof LineString line) {
            double[] all = places.line(lonLat(line.getCoordinates(), system), number(), 0);
            out.add(new MapShape(MapShape.Kind.LINE, List.of(all)));
        } else if (geometry instanceof Polygon polygon) {
            List<double[]> rings = new ArrayList<>();
            rings.add(ring(polygon.getExteriorRing(), system));
            for (int i = 0; i < polygon.getNumInteriorRing(); i++) {
                rings.add(ring(polygon.getInteriorRingN(i), system));
            }
            out.add(new MapShape(MapShape.Kind.POLYGON, rings));
        } else {
            for (int i = 0; i < geometry.getNumGeometries(); i++) {
                flat(geometry.getGeometryN(i), system, out);
            }
        }
    }

    private double[] ring(LineString ring, ReferenceSystem system) {
        return places.ring(lonLat(ring.getCoordinates(), system), number(), 0);
    }

    private static double[] lonLat(Coordinate[] corners, ReferenceSystem system) {
        double[] xy = new double[2 * corners.length];
        for (int i = 0; i < corners.length; i++) {
            xy[2 * i] = corners[i].x;
            xy[2 * i + 1] = corners[i].y;
        }
        return system.toLonLat(xy);
    }
}
