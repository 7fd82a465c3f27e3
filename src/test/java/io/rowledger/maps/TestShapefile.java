package io.rowledger.maps;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;

/**
 * Writes shapefiles as the Shapefile Technical Description (Esri, July 1998) and dBASE III have them, apart from the
 * program's own reader: shapes of one type with text and number attributes.
 */
public final class TestShapefile {
    /** Geographic coordinates on WGS 84. */
    public static final String WGS84 = "GEOGCS[\"GCS_WGS_1984\",DATUM[\"D_WGS_1984\",SPHEROID[\"WGS_1984\",6378137.0,"
            + "298.257223563]],PRIMEM[\"Greenwich\",0.0],UNIT[\"Degree\",0.0174532925199433]]";

    /** Universal Transverse Mercator, zone 15 north, on WGS 84. */
    public static final String UTM_15N = "PROJCS[\"WGS_1984_UTM_Zone_15N\"," + WGS84
            + ",PROJECTION[\"Transverse_Mercator\"],PARAMETER[\"False_Easting\",500000.0],PARAMETER[\"False_Northing\",0.0]"
            + ",PARAMETER[\"Central_Meridian\",-93.0],PARAMETER[\"Scale_Factor\",0.9996],PARAMETER[\"Latitude_Of_Origin\","
            + "0.0],UNIT[\"Meter\",1.0]]";

    private static final int POINT = 1;
    private static final int POLYGON = 5;

    private final int type;
    private final List<double[]> shapes = new ArrayList<>();
    private final List<Map<String, Object>> rows = new ArrayList<>();

    private TestShapefile(int type) {
        this.type = type;
    }

    /** Shapes of one ring each. */
    public static TestShapefile polygons() {
        return new TestShapefile(POLYGON);
    }

    /** Points. */
    public static TestShapefile points() {
        return new TestShapefile(POINT);
    }

    /** A shape: x and y of its corners in turn, a ring clockwise and closed; its attributes are Strings and Numbers. */
    public TestShapefile add(double[] xy, Map<String, ?> attributes) {
        shapes.add(xy);
        rows.add(new LinkedHashMap<>(attributes));
        return this;
    }

    /** Writes NAME.shp, .shx, .dbf and .prj; returns the .shp file. */
    public Path write(Path folder, String name, String prj) {
        try {
            for (Map.Entry<String, byte[]> part : parts(prj).entrySet()) {
                Files.write(folder.resolve(name + "." + part.getKey()), part.getValue());
            }
            return folder.resolve(name + ".shp");
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Writes NAME.zip with all parts; returns it. */
    public Path zip(Path folder, String name, String prj) {
        Path file = folder.resolve(name + ".zip");
        try (ZipOutputStream zip = new ZipOutputStream(Files.newOutputStream(file))) {
            for (Map.Entry<String, byte[]> part : parts(prj).entrySet()) {
                zip.putNextEntry(new ZipEntry(name + "." + part.getKey()));
                zip.write(part.getValue());
            }
            return file;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** What was written so far. */
    private static byte[] bytes(ByteBuffer written) {
        ByteBuffer from = written.duplicate().flip();
        byte[] bytes = new byte[from.remaining()];
        from.get(bytes);
        return bytes;
    }

    private Map<String, byte[]> parts(String prj) {
        Map<String, byte[]> parts = new LinkedHashMap<>();
        List<byte[]> contents = shapes.stream().map(this::content).toList();
        int bytes = contents.stream().mapToInt(content -> 8 + content.length).sum();
        ByteBuffer shp = header(100 + bytes);
        ByteBuffer shx = header(100 + 8 * contents.size());
        for (int i = 0; i < contents.size(); i++) {
            byte[] content = contents.get(i);
            shx.putInt(shp.position() / 2).putInt(content.length / 2);
            shp.putInt(i + 1).putInt(content.length / 2).put(content);
        }
        parts.put("shp", bytes(shp));
        parts.put("shx", bytes(shx));
        parts.put("dbf", dbf());
        parts.put("prj", prj.getBytes(StandardCharsets.US_ASCII));
        return parts;
    }

    private ByteBuffer header(int bytes) {
        double[] box =
                box(shapes.stream().flatMapToDouble(java.util.Arrays::stream).toArray());
        ByteBuffer header = ByteBuffer.allocate(bytes);
        header.putInt(0, 9994).putInt(24, bytes / 2);
        header.order(ByteOrder.LITTLE_ENDIAN).putInt(28, 1000).putInt(32, type);
        for (int k = 0; k < 4; k++) {
            header.putDouble(36 + 8 * k, box[k]);
        }
        header.order(ByteOrder.BIG_ENDIAN).position(100);
        return header;
    }

    private static double[] box(double[] xy) {
        double[] box = {1e30, 1e30, -1e30, -1e30};
        for (int i = 0; i < xy.length; i += 2) {
            box = new double[] {
                Math.min(box[0], xy[i]),
                Math.min(box[1], xy[i + 1]),
                Math.max(box[2], xy[i]),
                Math.max(box[3], xy[i + 1])
            };
        }
        return box;
    }

    private byte[] content(double[] xy) {
        boolean point = type == POINT;
        ByteBuffer out = ByteBuffer.allocate(point ? 20 : 48 + 8 * xy.length).order(ByteOrder.LITTLE_ENDIAN);
        out.putInt(type);
        if (!point) {
            for (double edge : box(xy)) {
                out.putDouble(edge);
            }
            out.putInt(1).putInt(xy.length / 2).putInt(0);
        }
        for (double value : xy) {
            out.putDouble(value);
        }
        return out.array();
    }

    /** Texts of 40 characters, numbers of 19 with 8 decimals; names cut to 10 characters as dBASE does. */
    private byte[] dbf() {
        Map<String, Object> first = rows.get(0);
        int record = 1;
        for (Object value : first.values()) {
            record += value instanceof Number ? 19 : 40;
        }
        int header = 33 + 32 * first.size();
        ByteBuffer out = ByteBuffer.allocate(header + record * rows.size() + 1).order(ByteOrder.LITTLE_ENDIAN);
        out.put((byte) 3).put((byte) 126).put((byte) 5).put((byte) 14).putInt(rows.size());
        out.putShort((short) header).putShort((short) record).position(32);
        for (Map.Entry<String, Object> field : first.entrySet()) {
            byte[] name = field.getKey().getBytes(StandardCharsets.US_ASCII);
            int at = out.position();
            out.put(name, 0, Math.min(10, name.length));
            boolean number = field.getValue() instanceof Number;
            out.put(at + 11, (byte) (number ? 'N' : 'C'));
            out.put(at + 16, (byte) (number ? 19 : 40)).put(at + 17, (byte) (number ? 8 : 0));
            out.position(at + 32);
        }
        out.put((byte) 0x0D);
        for (Map<String, Object> row : rows) {
            out.put((byte) ' ');
            for (String name : first.keySet()) {
                Object value = row.get(name);
                String text = value instanceof Number number
                        ? String.format(Locale.ROOT, "%19.8f", number.doubleValue())
                        : String.format(
                                Locale.ROOT,
                                first.get(name) instanceof Number ? "%-19s" : "%-40s",
                                value == null ? "" : value);
                out.put(text.getBytes(StandardCharsets.US_ASCII));
            }
        }
        out.put((byte) 0x1A);
        return out.array();
    }
}
