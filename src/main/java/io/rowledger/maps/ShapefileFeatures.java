package io.rowledger.maps;

import io.rowledger.finding.UnusableInputException;
import io.rowledger.text.Message;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The shapes of a shapefile (Esri, "Shapefile Technical Description", July 1998) with their attributes. Heights and measures
 * are passed over. The coordinate system is the .prj file's; without one, coordinates that can be degrees are taken as
 * degrees on WGS 84 and said so (a map in meters would then lie nowhere near the log, which is refused), and others are
 * refused.
 */
final class ShapefileFeatures {
    private static final int HEADER = 100;
    private static final int RECORD_HEADER = 8;

    private final ShapefileParts parts;
    private final MapUse use;
    private final ReferenceSystem system;
    private final RingReader places;
    private final @Nullable DbfTable table;
    private final ByteBuffer in;
    private final List<MapFeature> features = new ArrayList<>();
    private int shapes;

    private ShapefileFeatures(ShapefileParts parts, MapUse use, ReferenceSystem system) {
        this.parts = parts;
        this.use = use;
        this.system = system;
        this.places = new RingReader(parts.name(), use, MapFormat.SHAPEFILE);
        byte[] dbf = parts.part("dbf");
        this.table = dbf == null ? null : new DbfTable(parts, dbf);
        this.in = ByteBuffer.wrap(parts.shp());
    }

    static MapFeatures read(ShapefileParts parts, MapUse use) {
        byte[] shp = parts.shp();
        if (shp.length < HEADER) {
            throw damaged(parts, use);
        }
        if (parts.part("dbf") == null && !use.equals(MapUse.BOUNDARY)) {
            throw parts.fault("a shapefile without its .dbf file")
                    .expected("the .dbf file of the same name beside it, which holds what each shape says")
                    .hint("copy all parts of the shapefile (.shp, .shx, .dbf, .prj, .cpg) into one folder or zip");
        }
        List<Message> notes = new ArrayList<>();
        ReferenceSystem system = system(parts, use, notes);
        ShapefileFeatures reader = new ShapefileFeatures(parts, use, system);
        reader.records();
        return new MapFeatures(parts.name(), MapFormat.SHAPEFILE, reader.features, notes);
    }

    private static ReferenceSystem system(ShapefileParts parts, MapUse use, List<Message> notes) {
        String text = parts.text("prj");
        if (text.isEmpty()) {
            ByteBuffer box = ByteBuffer.wrap(parts.shp()).order(ByteOrder.LITTLE_ENDIAN);
            double lon = Math.max(Math.abs(box.getDouble(36)), Math.abs(box.getDouble(52)));
            double lat = Math.max(Math.abs(box.getDouble(44)), Math.abs(box.getDouble(60)));
            if (!(lon <= 180 && lat <= 90)) {
                throw parts.fault("a shapefile without a .prj file, with coordinates that are no degrees")
                        .expected("the .prj file of the same name, which says what coordinate system they are in")
                        .hint("copy the .prj file beside the .shp file, or export the " + use.file()
                                + " again in degrees on WGS 84");
            }
            notes.add(Message.of("notes.map.no_reference", parts.name()));
            return ReferenceSystem.WGS84;
        }
        try {
            ReferenceSystem system = ReferenceSystem.of(text);
            if (!system.otherDatum().isEmpty()) {
                notes.add(Message.of("notes.map.datum", parts.name(), system.otherDatum()));
            }
            return system;
        } catch (ReferenceSystem.NotUsable e) {
            throw parts.fault(e.found() + " in the .prj file")
                    .expected(e.wanted())
                    .hint("export the " + use.file() + " again in degrees on WGS 84");
        }
    }

    private static UnusableInputException damaged(ShapefileParts parts, MapUse use) {
        return parts.fault("a damaged or shortened .shp file")
                .expected("a shapefile as of the Shapefile Technical Description")
                .hint("copy the .shp file again, or export the " + use.file() + " again");
    }

    private UnusableInputException damaged() {
        return damaged(parts, use);
    }

    private void records() {
        // Length is in words of two bytes.
        long end = 2L * in.getInt(24);
        if (end < HEADER || end > in.capacity()) {
            throw damaged();
        }
        int at = HEADER;
        while (at + RECORD_HEADER <= end) {
            long length = 2L * in.order(ByteOrder.BIG_ENDIAN).getInt(at + 4);
            if (length < 4 || at + RECORD_HEADER + length > end) {
                throw damaged();
            }
            record(at + RECORD_HEADER, (int) length);
            at += RECORD_HEADER + (int) length;
        }
        if (table != null && table.records() != shapes) {
            throw parts.fault(shapes + " shapes and " + table.records() + " records in the .dbf file")
                    .expected("one record for each shape")
                    .hint("copy .shp and .dbf of the same export side by side");
        }
    }

    private void record(int from, int length) {
        int record = shapes++;
        if (table != null && (record >= table.records() || table.isDeleted(record))) {
            return;
        }
        ByteBuffer shape = in.slice(from, length).order(ByteOrder.LITTLE_ENDIAN);
        int type = shape.getInt(0);
        List<MapShape> found = new ArrayList<>();
        String name =
                switch (type) {
                    case 0 -> "";
                    case 1, 11, 21 -> "Point";
                    case 3, 13, 23 -> "PolyLine";
                    case 5, 15, 25 -> "Polygon";
                    case 8, 18, 28 -> "MultiPoint";
                    case 31 -> "MultiPatch";
                    default -> throw damaged();
                };
        switch (name) {
            case "Point" -> found.add(point(positions(shape, 4, 1), 0));
            case "MultiPoint" -> {
                double[] all = positions(shape, 40, count(shape, 36, 16, 40));
                for (int i = 0; i < all.length; i += 2) {
                    found.add(point(all, i));
                }
            }
            case "PolyLine" ->
                parts(shape)
                        .forEach(line ->
                                found.add(new MapShape(MapShape.Kind.LINE, List.of(places.line(line, number(), 0)))));
            case "Polygon" -> found.addAll(polygons(shape));
            default -> {
                // Null shapes have no place, and surfaces in space are none on the ground.
            }
        }
        List<MapProperty> properties = table == null ? List.of() : table.properties(record);
        features.add(new MapFeature(number(), 0, name.isEmpty() ? List.of() : List.of(name), found, properties));
    }

    private int number() {
        return features.size() + 1;
    }

    private List<MapShape> polygons(ByteBuffer shape) {
        List<double[]> rings = new ArrayList<>();
        for (double[] ring : parts(shape)) {
            rings.add(places.ring(ring, number(), 0));
        }
        return Rings.polygons(rings);
    }

    private MapShape point(double[] all, int at) {
        double[] one = {all[at], all[at + 1]};
        return new MapShape(MapShape.Kind.POINT, List.of(places.checked(one, number(), 0)));
    }

    /** A count at a place, as far as so many things of this many bytes can follow from another place on. */
    private int count(ByteBuffer shape, int at, int bytesEach, int from) {
        if (shape.capacity() < at + 4) {
            throw damaged();
        }
        int count = shape.getInt(at);
        if (count < 0 || from + (long) count * bytesEach > shape.capacity()) {
            throw damaged();
        }
        return count;
    }

    /** The lines or rings: box, number of parts, number of points, where each part begins, points. */
    private List<double[]> parts(ByteBuffer shape) {
        int count = count(shape, 36, 4, 44);
        int from = 44 + 4 * count;
        int points = count(shape, 40, 16, from);
        double[] all = positions(shape, from, points);
        List<double[]> out = new ArrayList<>();
        for (int part = 0; part < count; part++) {
            int first = shape.getInt(44 + 4 * part);
            int end = part + 1 < count ? shape.getInt(48 + 4 * part) : points;
            if (first < 0 || end < first || end > points) {
                throw damaged();
            }
            if (end > first) {
                out.add(java.util.Arrays.copyOfRange(all, 2 * first, 2 * end));
            }
        }
        return out;
    }

    private double[] positions(ByteBuffer shape, int from, int count) {
        if (from + 16L * count > shape.capacity()) {
            throw damaged();
        }
        double[] xy = new double[2 * count];
        for (int i = 0; i < xy.length; i++) {
            xy[i] = shape.getDouble(from + 8 * i);
        }
        return system.toLonLat(xy);
    }
}
