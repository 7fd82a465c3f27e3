package io.rowledger.export;

import io.rowledger.geo.LocalPlane;
import io.rowledger.maps.SqliteLibrary;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Properties;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.CoordinateSequence;
import org.locationtech.jts.geom.CoordinateSequenceFilter;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.io.ByteOrderValues;
import org.locationtech.jts.io.WKBWriter;
import org.sqlite.JDBC;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteConnection;

/**
 * Writes a GeoPackage (OGC 12-128r18, version 1.3) with feature tables in degrees on WGS 84: built in memory, so that
 * nothing but the finished file reaches the disk. What a column means and its unit stand in the tables of the schema
 * extension (annex F.9). A style per table stands in {@code layer_styles} as a Styled Layer Descriptor (OGC 02-070).
 */
public final class GeoPackage implements AutoCloseable {
    /** "GPKG" (OGC 12-128, requirement 2). */
    private static final int APPLICATION_ID = 0x47504B47;

    private static final int VERSION = 10300;
    private static final int WGS84 = 4326;
    /** Little endian, envelope of west, east, south, north (OGC 12-128, 2.1.3.1). */
    private static final byte FLAGS = 0b011;

    private static final double SCALE = 1e8;
    private static final String WGS84_TEXT =
            "GEOGCS[\"WGS 84\",DATUM[\"WGS_1984\",SPHEROID[\"WGS 84\",6378137,298.257223563,"
                    + "AUTHORITY[\"EPSG\",\"7030\"]],AUTHORITY[\"EPSG\",\"6326\"]],PRIMEM[\"Greenwich\",0,"
                    + "AUTHORITY[\"EPSG\",\"8901\"]],UNIT[\"degree\",0.0174532925199433,AUTHORITY[\"EPSG\",\"9122\"]],"
                    + "AUTHORITY[\"EPSG\",\"4326\"]]";

    private final SQLiteConnection db;
    private final LocalPlane plane;
    private final String time;
    private final WKBWriter wkb = new WKBWriter(2, ByteOrderValues.LITTLE_ENDIAN);

    /**
     * A column of a table.
     *
     * @param type of OGC 12-128, table 1
     * @param meaning a clause, with the unit
     */
    record Column(String name, String type, String meaning) {}

    /** A table: what its geometries are and how they look. */
    record Table(String name, String geometry, String meaning, String sld, List<Column> columns) {
        /** Numbers names that are the same but for case: products {@code uan} and {@code uan_target} can make such. */
        Table {
            Set<String> taken = new HashSet<>(Set.of("fid", "geom"));
            List<Column> distinct = new ArrayList<>();
            for (Column column : columns) {
                String free = column.name;
                for (int i = 2; !taken.add(free.toLowerCase(Locale.ROOT)); i++) {
                    free = column.name + "_" + i;
                }
                distinct.add(new Column(free, column.type, column.meaning));
            }
            columns = List.copyOf(distinct);
        }
    }

    GeoPackage(LocalPlane plane, @Nullable String time) throws SQLException {
        try {
            SqliteLibrary.load();
        } catch (IOException e) {
            throw new SQLException(e.getMessage(), e);
        }
        this.plane = plane;
        this.time = time == null ? "1970-01-01T00:00:00.000Z" : time;
        Properties properties = new SQLiteConfig().toProperties();
        SQLiteConnection opened = JDBC.createConnection("jdbc:sqlite::memory:", properties);
        if (opened == null) {
            throw new SQLException("no database in memory");
        }
        this.db = opened;
        try (Statement s = db.createStatement()) {
            // Nothing to go back to: what fails is thrown away whole.
            s.execute("PRAGMA journal_mode = OFF");
            s.execute("PRAGMA application_id = " + APPLICATION_ID);
            s.execute("PRAGMA user_version = " + VERSION);
            db.setAutoCommit(false);
            for (String table : GeoPackageTables.CORE) {
                s.execute(table);
            }
        }
        insert("gpkg_spatial_ref_sys", "Undefined Cartesian SRS", -1, "NONE", -1, "undefined", "undefined");
        insert("gpkg_spatial_ref_sys", "Undefined geographic SRS", 0, "NONE", 0, "undefined", "undefined");
        insert("gpkg_spatial_ref_sys", "WGS 84", WGS84, "EPSG", WGS84, WGS84_TEXT, "longitude, latitude, degrees");
        for (String table : List.of("gpkg_data_columns", "gpkg_data_column_constraints")) {
            insert("gpkg_extensions", table, null, "gpkg_schema", GeoPackageTables.SCHEMA_EXTENSION, "read-write");
        }
        insert(
                "gpkg_contents",
                "layer_styles",
                "attributes",
                "layer_styles",
                "A style for each layer",
                this.time,
                null,
                null,
                null,
                null,
                null);
    }

    /** False on a machine for which there is no database library, or where it may not be loaded. */
    public static boolean canBeWritten() {
        try {
            SqliteLibrary.load();
        } catch (IOException | LinkageError e) {
            return false;
        }
        try (SQLiteConnection db = JDBC.createConnection("jdbc:sqlite::memory:", new SQLiteConfig().toProperties())) {
            return db != null;
        } catch (SQLException | LinkageError e) {
            return false;
        }
    }

    /** Takes the rows of one table. */
    final class Layer {
        private final Table table;
        private final PreparedStatement row;
        private final Envelope box = new Envelope();

        private Layer(Table table, PreparedStatement row) {
            this.table = table;
            this.row = row;
        }

        /** A row; its geometry in the job's plane or null, its values in the order of the columns. */
        void add(@Nullable Geometry geometry, @Nullable Object... values) throws SQLException {
            degrees(geometry == null ? null : toDegrees(geometry), values);
        }

        /** A row whose geometry is in degrees. */
        void degrees(@Nullable Geometry lonLat, @Nullable Object... values) throws SQLException {
            if (values.length != table.columns.size()) {
                throw new IllegalArgumentException(table.name + " has " + table.columns.size() + " columns");
            }
            row.setBytes(1, lonLat == null ? null : blob(lonLat));
            for (int c = 0; c < values.length; c++) {
                row.setObject(c + 2, values[c]);
            }
            row.executeUpdate();
            if (lonLat != null) {
                box.expandToInclude(lonLat.getEnvelopeInternal());
            }
        }
    }

    /** Fills one table. */
    interface Rows {
        void write(Layer layer) throws SQLException;
    }

    /** Makes a table and fills it. */
    void layer(Table table, Rows rows) throws SQLException {
        StringBuilder columns = new StringBuilder();
        StringBuilder marks = new StringBuilder("?");
        for (Column column : table.columns) {
            columns.append(", ").append(quoted(column.name)).append(' ').append(column.type);
            marks.append(", ?");
        }
        try (Statement s = db.createStatement()) {
            s.execute("CREATE TABLE " + quoted(table.name) + " (fid INTEGER PRIMARY KEY AUTOINCREMENT NOT NULL, geom "
                    + table.geometry + columns + ")");
        }
        Layer layer;
        String names = String.join(
                ", ", table.columns.stream().map(column -> quoted(column.name)).toList());
        try (PreparedStatement row = db.prepareStatement(
                "INSERT INTO " + quoted(table.name) + " (geom, " + names + ") VALUES (" + marks + ")")) {
            layer = new Layer(table, row);
            rows.write(layer);
        }
        Envelope box = layer.box;
        boolean none = box.isNull();
        insert(
                "gpkg_contents",
                table.name,
                "features",
                table.name,
                table.meaning,
                time,
                none ? null : box.getMinX(),
                none ? null : box.getMinY(),
                none ? null : box.getMaxX(),
                none ? null : box.getMaxY(),
                WGS84);
        insert("gpkg_geometry_columns", table.name, "geom", table.geometry, WGS84, 0, 0);
        for (Column column : table.columns) {
            insert("gpkg_data_columns", table.name, column.name, null, null, column.meaning, null, null);
        }
        insert(
                "layer_styles",
                null,
                "",
                "",
                table.name,
                "geom",
                table.name,
                "",
                table.sld,
                1,
                table.meaning,
                "",
                "",
                time);
    }

    /** Writes the finished file. */
    void writeTo(OutputStream out) throws SQLException, IOException {
        db.commit();
        out.write(db.serialize("main"));
    }

    @Override
    public void close() throws SQLException {
        db.close();
    }

    private void insert(String table, @Nullable Object... values) throws SQLException {
        String marks = "?" + ", ?".repeat(values.length - 1);
        try (PreparedStatement s = db.prepareStatement("INSERT INTO " + table + " VALUES (" + marks + ")")) {
            for (int i = 0; i < values.length; i++) {
                s.setObject(i + 1, values[i]);
            }
            s.executeUpdate();
        }
    }

    private static String quoted(String name) {
        return "\"" + name.replace("\"", "\"\"") + "\"";
    }

    private byte[] blob(Geometry lonLat) {
        byte[] body = wkb.write(lonLat);
        Envelope box = lonLat.getEnvelopeInternal();
        return ByteBuffer.allocate(40 + body.length)
                .order(ByteOrder.LITTLE_ENDIAN)
                .put((byte) 'G')
                .put((byte) 'P')
                .put((byte) 0)
                .put(FLAGS)
                .putInt(WGS84)
                .putDouble(box.getMinX())
                .putDouble(box.getMaxX())
                .putDouble(box.getMinY())
                .putDouble(box.getMaxY())
                .put(body)
                .array();
    }

    /** Rounded as the GeoJSON layers are, so that both say the same place. */
    private Geometry toDegrees(Geometry geometry) {
        Geometry copy = geometry.copy();
        copy.apply(new ToDegrees(plane));
        copy.geometryChanged();
        return copy;
    }

    private static final class ToDegrees implements CoordinateSequenceFilter {
        private final LocalPlane plane;
        private final double[] latLon = new double[2];

        ToDegrees(LocalPlane plane) {
            this.plane = plane;
        }

        @Override
        public void filter(CoordinateSequence corners, int i) {
            plane.inverse(corners.getX(i), corners.getY(i), latLon);
            corners.setOrdinate(i, Coordinate.X, Math.rint(latLon[1] * SCALE) / SCALE);
            corners.setOrdinate(i, Coordinate.Y, Math.rint(latLon[0] * SCALE) / SCALE);
        }

        @Override
        public boolean isDone() {
            return false;
        }

        @Override
        public boolean isGeometryChanged() {
            return true;
        }
    }
}
