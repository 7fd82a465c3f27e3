package io.rowledger.backdrop;

import io.rowledger.finding.RegularFile;
import io.rowledger.finding.UnusableInputException;
import io.rowledger.geo.LocalPlane;
import io.rowledger.maps.MapReference;
import java.awt.Rectangle;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Iterator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageReadParam;
import javax.imageio.ImageReader;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import javax.imageio.stream.ImageInputStream;
import javax.imageio.stream.MemoryCacheImageOutputStream;
import org.jspecify.annotations.Nullable;

/**
 * Reads a GeoTIFF, or a JPEG, PNG or TIFF picture with a world file beside it, and cuts the field out of it. Only the part that
 * shows the field is read, and no finer than it is drawn.
 */
public final class BackdropReader {
    /** Longest side of the picture, pixels: a field of half a mile at 0.5 m. */
    static final int MAX_SIDE = 1600;
    /** Largest picture in the page, bytes. */
    static final int MAX_BYTES = 1 << 20;
    /** Widest and highest picture that is read, pixels. */
    private static final int MAX_PIXELS = 100_000;
    /** Largest piece that a picture unpacks at a time, bytes. */
    private static final long MAX_BLOCK = 256L << 20;
    /** Picture around the field, as a share of its size. */
    private static final double MARGIN = 0.05;
    /** Cells of the mesh on which columns and rows are computed, each way. */
    private static final int CELLS = 16;
    /** Color of ground without a picture. */
    private static final int NOTHING_RGB = 0xf3f5f4;
    /** Quality of the picture in the page, of 1. */
    private static final float QUALITY = 0.75f;

    private static final String EXPECTED = "a GeoTIFF, or a JPEG, PNG or TIFF picture with its world file beside it";

    private static final Map<String, List<String>> WORLD_ENDINGS = Map.of(
            "jpeg", List.of("jgw", "jpgw", "jpegw", "wld"),
            "png", List.of("pgw", "pngw", "wld"),
            "tif", List.of("tfw", "tifw", "tiffw", "wld"));

    private static final int MAX_TEXT = 1 << 16;

    private final Path file;
    private final LocalPlane plane;
    private final double[] field;

    private BackdropReader(Path file, LocalPlane plane, double[] field) {
        this.file = file;
        this.plane = plane;
        double east = (field[2] - field[0]) * MARGIN;
        double north = (field[3] - field[1]) * MARGIN;
        this.field = new double[] {field[0] - east, field[1] - north, field[2] + east, field[3] + north};
    }

    /**
     * Reads the part of a picture that shows the field.
     *
     * @param plane the job's plane
     * @param field west, south, east and north of the field, m
     * @throws UnusableInputException where it is no such picture, has no place, or doesn't show the field
     */
    public static Backdrop read(Path file, LocalPlane plane, double[] field) {
        RegularFile.requireRegular(file, EXPECTED);
        BackdropReader reader = new BackdropReader(file, plane, field);
        try {
            return reader.read();
        } catch (IOException
                | IllegalArgumentException
                | IndexOutOfBoundsException
                | NegativeArraySizeException
                | NullPointerException
                | ClassCastException
                | IllegalStateException
                | ArithmeticException e) {
            // Image readers of the JDK throw any of these for damaged pictures.
            throw reader.refused("a picture that can't be read", e);
        }
    }

    private UnusableInputException refused(String found, @Nullable Exception cause) {
        String why = cause instanceof IOException && cause.getMessage() != null ? " (" + cause.getMessage() + ")" : "";
        return UnusableInputException.found(found + why)
                .inFile(file.toString())
                .expected(EXPECTED)
                .hint("export the picture again, or leave --backdrop out");
    }

    private Backdrop read() throws IOException {
        if (!Files.isRegularFile(file)) {
            throw refused(Files.exists(file) ? "a folder" : "no such file", null);
        }
        try (ImageInputStream in = ImageIO.createImageInputStream(file.toFile())) {
            ImageReader reader = reader(in);
            try {
                reader.setInput(in);
                int width = reader.getWidth(0);
                int height = reader.getHeight(0);
                if (width > MAX_PIXELS || height > MAX_PIXELS) {
                    throw refused("a picture of " + width + " by " + height + " pixels", null);
                }
                GeoReference reference = reference(reader, width, height);
                if (!reference.spansPlane()) {
                    throw refused("a place whose pixels have no area", null);
                }
                return cut(reader, reference, width, height);
            } finally {
                reader.dispose();
            }
        }
    }

    private ImageReader reader(@Nullable ImageInputStream in) throws IOException {
        Iterator<ImageReader> readers = in == null ? List.<ImageReader>of().iterator() : ImageIO.getImageReaders(in);
        while (readers.hasNext()) {
            ImageReader reader = readers.next();
            if (WORLD_ENDINGS.containsKey(format(reader))) {
                return reader;
            }
        }
        throw refused("no picture", null);
    }

    private static String format(ImageReader reader) throws IOException {
        String name = reader.getFormatName().toLowerCase(Locale.ROOT);
        return name.startsWith("tif") ? "tif" : name.startsWith("jp") ? "jpeg" : name;
    }

    private GeoReference reference(ImageReader reader, int width, int height) throws IOException {
        if (format(reader).equals("tif")) {
            GeoTiffTags tags = GeoTiffTags.of(reader.getImageMetadata(0), file.toString());
            if (tags.blockBytes(width, height) > MAX_BLOCK) {
                throw refused("a picture in pieces of more than " + (MAX_BLOCK >> 20) + " MB", null);
            }
            GeoReference reference = tags.reference();
            if (reference != null) {
                return reference;
            }
        }
        for (String ending : WORLD_ENDINGS.getOrDefault(format(reader), List.of())) {
            Path world = beside(ending);
            if (world != null) {
                return worldFile(world);
            }
        }
        throw refused("a picture without a place: it is no GeoTIFF and has no world file beside it", null);
    }

    private GeoReference worldFile(Path world) throws IOException {
        String expected = "six numbers, a line each: the place of the picture (a world file)";
        List<String> lines = text(world, expected).lines().toList();
        Path prj = beside("prj");
        if (prj != null) {
            MapReference system = MapReference.of(text(prj, "a coordinate system as well-known text"), prj.toString());
            return GeoReference.ofWorldFile(lines, system, world.toString());
        }
        GeoReference degrees = GeoReference.ofWorldFile(lines, MapReference.DEGREES, world.toString());
        double[] affine = degrees.affine();
        if (Math.abs(affine[2]) > 180 || Math.abs(affine[5]) > 90) {
            throw UnusableInputException.found("coordinates that are no degrees, and no .prj file beside it")
                    .inFile(world.toString())
                    .expected("a .prj file that names their coordinate system")
                    .hint("export the picture again with its .prj file, or in degrees on WGS 84");
        }
        return degrees;
    }

    private static String text(Path path, String expected) throws IOException {
        return new String(RegularFile.bytes(path, MAX_TEXT, expected), StandardCharsets.ISO_8859_1);
    }

    /** The file of this ending beside the picture, in lower or upper case, or null. */
    private @Nullable Path beside(String ending) {
        String name = String.valueOf(file.getFileName());
        int dot = name.lastIndexOf('.');
        String stem = dot < 0 ? name : name.substring(0, dot);
        for (String each : List.of(ending, ending.toUpperCase(Locale.ROOT))) {
            Path beside = file.resolveSibling(stem + "." + each);
            if (Files.isRegularFile(beside)) {
                return beside;
            }
        }
        return null;
    }

    private Backdrop cut(ImageReader reader, GeoReference reference, int width, int height) throws IOException {
        double[] guess = {width / 2.0, height / 2.0};
        double[][] corners = new double[4][];
        for (int i = 0; i < 4; i++) {
            corners[i] = reference.toPixel(plane, field[(i & 1) * 2], field[(i & 2) == 0 ? 1 : 3], guess);
        }
        Rectangle seen = window(corners, width, height);
        if (seen.isEmpty()) {
            throw UnusableInputException.found("a picture that doesn't show the field")
                    .inFile(file.toString())
                    .expected("a picture of the ground that the log covers")
                    .hint("check that it is the picture of this field; leave --backdrop out to go without");
        }
        double longest = Math.max(field[2] - field[0], field[3] - field[1]);
        double pixelM = longest
                / Math.max(
                        1,
                        Math.max(
                                Math.hypot(corners[1][0] - corners[0][0], corners[1][1] - corners[0][1]),
                                Math.hypot(corners[2][0] - corners[0][0], corners[2][1] - corners[0][1])));
        for (int side = MAX_SIDE; ; side = side * 3 / 4) {
            double stepM = Math.max(pixelM, longest / side);
            byte[] jpeg = jpeg(drawn(reader, reference, seen, guess, stepM, pixelM));
            if (jpeg.length <= MAX_BYTES) {
                return new Backdrop(field, jpeg);
            }
        }
    }

    /** The pixels of the picture that show the field. */
    private static Rectangle window(double[][] corners, int width, int height) {
        double left = Double.POSITIVE_INFINITY;
        double top = Double.POSITIVE_INFINITY;
        double right = Double.NEGATIVE_INFINITY;
        double bottom = Double.NEGATIVE_INFINITY;
        for (double[] corner : corners) {
            if (Double.isNaN(corner[0])) {
                return new Rectangle();
            }
            left = Math.min(left, corner[0]);
            right = Math.max(right, corner[0]);
            top = Math.min(top, corner[1]);
            bottom = Math.max(bottom, corner[1]);
        }
        int x = (int) Math.max(0, Math.floor(left) - 1);
        int y = (int) Math.max(0, Math.floor(top) - 1);
        return new Rectangle(
                x,
                y,
                (int) Math.min(width, Math.ceil(right) + 1) - x,
                (int) Math.min(height, Math.ceil(bottom) + 1) - y);
    }

    /** The field north up, a pixel every {@code stepM} meters. */
    private BufferedImage drawn(
            ImageReader reader, GeoReference reference, Rectangle seen, double[] guess, double stepM, double pixelM)
            throws IOException {
        int thin = (int) Math.max(1, Math.floor(stepM / pixelM));
        ImageReadParam part = reader.getDefaultReadParam();
        part.setSourceRegion(seen);
        part.setSourceSubsampling(thin, thin, 0, 0);
        BufferedImage source = reader.read(0, part);
        int width = (int) Math.max(1, Math.round((field[2] - field[0]) / stepM));
        int height = (int) Math.max(1, Math.round((field[3] - field[1]) / stepM));
        BufferedImage out = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
        double[][][] nodes = nodes(reference, guess);
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < width; x++) {
                double u = (x + 0.5) / width * CELLS;
                double v = (y + 0.5) / height * CELLS;
                int col = (int) Math.floor((between(nodes, u, v, 0) - seen.x) / thin);
                int row = (int) Math.floor((between(nodes, u, v, 1) - seen.y) / thin);
                boolean inside = col >= 0 && row >= 0 && col < source.getWidth() && row < source.getHeight();
                out.setRGB(x, y, inside ? onPaper(source.getRGB(col, row)) : NOTHING_RGB);
            }
        }
        return out;
    }

    /** Columns and rows of the picture at the nodes of a mesh over the field, from its north-west corner. */
    private double[][][] nodes(GeoReference reference, double[] guess) {
        double[][][] nodes = new double[CELLS + 1][CELLS + 1][];
        for (int j = 0; j <= CELLS; j++) {
            for (int i = 0; i <= CELLS; i++) {
                nodes[j][i] = reference.toPixel(
                        plane,
                        field[0] + i * (field[2] - field[0]) / CELLS,
                        field[3] - j * (field[3] - field[1]) / CELLS,
                        guess);
            }
        }
        return nodes;
    }

    /** Column (0) or row (1) between four nodes: over a cell of the mesh, map projections bend by less than a millimeter. */
    private static double between(double[][][] nodes, double u, double v, int which) {
        int i = Math.min(CELLS - 1, (int) u);
        int j = Math.min(CELLS - 1, (int) v);
        double s = u - i;
        double t = v - j;
        return (1 - t) * ((1 - s) * nodes[j][i][which] + s * nodes[j][i + 1][which])
                + t * ((1 - s) * nodes[j + 1][i][which] + s * nodes[j + 1][i + 1][which]);
    }

    /** Returns a pixel without its alpha; one that is more than half transparent counts as ground without a picture. */
    private static int onPaper(int argb) {
        return (argb >>> 24) < 128 ? NOTHING_RGB : argb & 0xffffff;
    }

    private static byte[] jpeg(BufferedImage image) throws IOException {
        ImageWriter writer = ImageIO.getImageWritersByFormatName("jpeg").next();
        ByteArrayOutputStream bytes = new ByteArrayOutputStream(1 << 18);
        try (MemoryCacheImageOutputStream out = new MemoryCacheImageOutputStream(bytes)) {
            ImageWriteParam param = writer.getDefaultWriteParam();
            param.setCompressionMode(ImageWriteParam.MODE_EXPLICIT);
            param.setCompressionQuality(QUALITY);
            writer.setOutput(out);
            writer.write(null, new IIOImage(image, null, null), param);
        } finally {
            writer.dispose();
        }
        return bytes.toByteArray();
    }
}
