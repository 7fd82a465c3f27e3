package io.rowledger.maps;

import java.io.IOException;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Properties;
import java.util.Set;
import java.util.TreeSet;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.sqlite.JDBC;
import org.sqlite.ProgressHandler;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteLimits;

/** Opens SQLite files that strangers may have made: read only, without journals, and with an end to every query. */
final class Sqlite {
    /** Nothing anywhere. */
    static final Geometry EMPTY = new GeometryFactory().createGeometryCollection();

    /** Steps of the database's machine between two looks at the clockless counter below. */
    private static final int STEPS = 100_000;
    /** So many looks: far more than reading the largest map takes, and a second or so. */
    private static final int MAX_LOOKS = 2_000;

    private Sqlite() {}

    static Connection open(Path path) throws SQLException {
        try {
            SqliteLibrary.load();
        } catch (IOException e) {
            throw new SQLException(e.getMessage(), e);
        }
        SQLiteConfig config = new SQLiteConfig();
        config.setReadOnly(true);
        Properties properties = config.toProperties();
        // The file is not to change under us, so no lock and no journal is made beside it.
        String uri = "file:" + path.toAbsolutePath().toUri().getRawPath() + "?mode=ro&immutable=1";
        Connection db = JDBC.createConnection("jdbc:sqlite:" + uri, properties);
        if (db == null) {
            throw new SQLException("no connection");
        }
        try (Statement s = db.createStatement()) {
            s.execute("PRAGMA trusted_schema = OFF");
            s.execute("PRAGMA cell_size_check = ON");
            ((org.sqlite.SQLiteConnection) db).setLimit(SQLiteLimits.SQLITE_LIMIT_LENGTH, (int) MapSize.MAX_BYTES);
            ProgressHandler.setHandler(db, STEPS, new ProgressHandler() {
                private int looks;

                @Override
                protected int progress() {
                    return ++looks > MAX_LOOKS ? 1 : 0;
                }
            });
        } catch (SQLException | RuntimeException e) {
            db.close();
            throw e;
        }
        return db;
    }

    /** The columns that only number the rows. */
    static Set<String> primaryKeys(Statement s, String quotedTable) throws SQLException {
        Set<String> keys = new TreeSet<>();
        try (ResultSet r = s.executeQuery("PRAGMA table_info(" + quotedTable + ")")) {
            while (r.next()) {
                if (r.getInt("pk") > 0) {
                    keys.add(r.getString("name"));
                }
            }
        }
        return keys;
    }

    /** What the database says is wrong, without the library's own decoration. */
    static String words(SQLException e) {
        String message = String.valueOf(e.getMessage());
        int from = message.indexOf('(');
        int to = message.lastIndexOf(')');
        return from >= 0 && to > from ? message.substring(from + 1, to) : message;
    }
}
