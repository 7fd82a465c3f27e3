package io.rowledger.export;

import io.rowledger.coverage.grid.ReceivedGrid;
import io.rowledger.geo.LocalPlane;
import io.rowledger.units.Factor;
import java.awt.Rectangle;
import java.awt.color.ColorSpace;
import java.awt.image.BufferedImage;
import java.awt.image.ComponentColorModel;
import java.awt.image.DataBuffer;
import java.awt.image.DataBufferFloat;
import java.awt.image.PixelInterleavedSampleModel;
import java.awt.image.Raster;
import java.awt.image.WritableRaster;
import java.io.IOException;
import java.io.OutputStream;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageTypeSpecifier;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import javax.imageio.plugins.tiff.BaselineTIFFTagSet;
import javax.imageio.plugins.tiff.GeoTIFFTagSet;
import javax.imageio.plugins.tiff.TIFFDirectory;
import javax.imageio.plugins.tiff.TIFFField;
import javax.imageio.plugins.tiff.TIFFTag;
import javax.imageio.plugins.tiff.TIFFTagSet;
import javax.imageio.stream.MemoryCacheImageOutputStream;

/**
 * {@code layers/received.tif}, or one {@code received-KEY.tif} for each of several products: what each cell received of a product, L/ha of covered ground, as GeoTIFF 1.1 (OGC 19-008),
 * one band of 32-bit floats, cell for cell the grid the program summed in: nothing is resampled.
 *
 * <p>The coordinate system is the job's own plane, which the standard lets a file define: transverse Mercator on WGS 84,
 * scale 1, its origin in the middle of the job, meters.
 */
public final class ReceivedTiff {
    static final float NO_DATA = -9999;

    /** Share of a cell that must be covered for the cell to have a rate (1). */
    private static final double MIN_COVERED = 0.01;

    /** The tag in which raster programs say which value means nothing; text. */
    private static final int NO_DATA_TAG = 42113;

    /** The tag in which they say what a band is and its unit; XML. */
    private static final int BAND_TAG = 42112;

    private static final int USER_DEFINED = 32767;
    /** Steps per L/ha that rates are rounded to: a float holds them exactly, no meter resolves them, and the file is half the size. */
    private static final double PARTS = 64;

    private ReceivedTiff() {}

    /** The file's name for a product: of several, each has its key in it, which the rig file keeps to letters and digits. */
    public static String file(FieldMap map, int product) {
        String key = map.products().get(product).key();
        return map.products().size() == 1 ? "layers/received.tif" : "layers/received-" + key + ".tif";
    }

    public static void write(FieldMap map, int product, OutputStream out) throws IOException {
        ReceivedGrid grid = map.coverage().grid();
        WritableRaster raster = raster(grid, product);
        ComponentColorModel grey = new ComponentColorModel(
                ColorSpace.getInstance(ColorSpace.CS_GRAY),
                false,
                false,
                ComponentColorModel.OPAQUE,
                DataBuffer.TYPE_FLOAT);
        BufferedImage image = new BufferedImage(grey, raster, false, null) {
            /** The writer asks for strip after strip: a copy of each, cell by cell, takes as long as packing it. */
            @Override
            public Raster getData(Rectangle part) {
                return raster.createChild(part.x, part.y, part.width, part.height, part.x, part.y, null);
            }
        };
        ImageWriter writer = ImageIO.getImageWritersByFormatName("tiff").next();
        try (MemoryCacheImageOutputStream stream = new MemoryCacheImageOutputStream(out)) {
            ImageWriteParam param = writer.getDefaultWriteParam();
            param.setCompressionMode(ImageWriteParam.MODE_EXPLICIT);
            param.setCompressionType("ZLib");
            // The quickest: the best takes four times as long for a tenth less.
            param.setCompressionQuality(0);
            TIFFDirectory directory = TIFFDirectory.createFromMetadata(
                    writer.getDefaultImageMetadata(new ImageTypeSpecifier(image), param));
            BaselineTIFFTagSet baseline = BaselineTIFFTagSet.getInstance();
            String name = map.products().get(product).name();
            ascii(
                    directory,
                    baseline.getTag(BaselineTIFFTagSet.TAG_IMAGE_DESCRIPTION),
                    plain(name) + " received, L/ha");
            place(directory, grid, map.track().plane());
            ascii(directory, new TIFFTag("NoData", NO_DATA_TAG, 1 << TIFFTag.TIFF_ASCII), Integer.toString((int)
                    NO_DATA));
            ascii(
                    directory,
                    new TIFFTag("Band", BAND_TAG, 1 << TIFFTag.TIFF_ASCII),
                    "<GDALMetadata><Item name=\"DESCRIPTION\" sample=\"0\" role=\"description\">" + escaped(plain(name))
                            + " received</Item><Item name=\"UNITTYPE\" sample=\"0\" role=\"unittype\">L/ha</Item>"
                            + "</GDALMetadata>");
            writer.setOutput(stream);
            writer.write(null, new IIOImage(image, null, directory.getAsMetadata()), param);
        } finally {
            writer.dispose();
        }
    }

    /** North up, as rasters are. */
    private static WritableRaster raster(ReceivedGrid grid, int product) {
        float[] cells = new float[grid.cols() * grid.rows()];
        double minM2 = MIN_COVERED * grid.cellM() * grid.cellM();
        for (int row = 0; row < grid.rows(); row++) {
            int from = row * grid.cols();
            int to = (grid.rows() - 1 - row) * grid.cols();
            for (int col = 0; col < grid.cols(); col++) {
                float coveredM2 = grid.coveredM2()[from + col];
                cells[to + col] = coveredM2 < minM2
                        ? NO_DATA
                        : (float) (Math.rint(grid.volumeL()[product][from + col]
                                        / coveredM2
                                        * (Factor.SQUARE_METRES_PER_HECTARE * PARTS))
                                / PARTS);
            }
        }
        PixelInterleavedSampleModel model = new PixelInterleavedSampleModel(
                DataBuffer.TYPE_FLOAT, grid.cols(), grid.rows(), 1, grid.cols(), new int[] {0});
        return Raster.createWritableRaster(model, new DataBufferFloat(cells, cells.length), null);
    }

    /** Where the raster lies: OGC 19-008, sections 7.3 and 7.5 and annex C. */
    private static void place(TIFFDirectory directory, ReceivedGrid grid, LocalPlane plane) {
        TIFFTagSet geo = GeoTIFFTagSet.getInstance();
        directory.addTagSet(geo);
        doubles(directory, geo.getTag(GeoTIFFTagSet.TAG_MODEL_PIXEL_SCALE), new double[] {grid.cellM(), grid.cellM(), 0
        });
        double northM = grid.north0M() + grid.rows() * grid.cellM();
        doubles(directory, geo.getTag(GeoTIFFTagSet.TAG_MODEL_TIE_POINT), new double[] {
            0, 0, 0, grid.east0M(), northM, 0
        });
        double[] origin = new double[2];
        plane.inverse(0, 0, origin);
        doubles(directory, geo.getTag(GeoTIFFTagSet.TAG_GEO_DOUBLE_PARAMS), new double[] {origin[1], origin[0], 0, 0, 1
        });
        String name = "Plane of the job, transverse Mercator on WGS 84|";
        ascii(directory, geo.getTag(GeoTIFFTagSet.TAG_GEO_ASCII_PARAMS), name);
        int doubles = GeoTIFFTagSet.TAG_GEO_DOUBLE_PARAMS;
        int ascii = GeoTIFFTagSet.TAG_GEO_ASCII_PARAMS;
        char[] keys = keys(
                // GTModelType projected, GTRasterType a cell is an area
                new int[] {1024, 0, 1, 1},
                new int[] {1025, 0, 1, 1},
                // GeodeticCRS WGS 84, GeogAngularUnits degree
                new int[] {2048, 0, 1, 4326},
                new int[] {2054, 0, 1, 9102},
                // ProjectedCRS and Projection of our own, their name, method transverse Mercator, meter
                new int[] {3072, 0, 1, USER_DEFINED},
                new int[] {3073, ascii, name.length(), 0},
                new int[] {3074, 0, 1, USER_DEFINED},
                new int[] {3075, 0, 1, 1},
                new int[] {3076, 0, 1, 9001},
                // Origin's longitude and latitude, false easting and northing, scale
                new int[] {3080, doubles, 1, 0},
                new int[] {3081, doubles, 1, 1},
                new int[] {3082, doubles, 1, 2},
                new int[] {3083, doubles, 1, 3},
                new int[] {3092, doubles, 1, 4});
        TIFFTag tag = geo.getTag(GeoTIFFTagSet.TAG_GEO_KEY_DIRECTORY);
        directory.addTIFFField(new TIFFField(tag, TIFFTag.TIFF_SHORT, keys.length, keys));
    }

    /** The key directory: version 1, revision 1.1, then four numbers a key. */
    private static char[] keys(int[]... keys) {
        char[] out = new char[4 + 4 * keys.length];
        out[0] = 1;
        out[1] = 1;
        out[2] = 1;
        out[3] = (char) keys.length;
        for (int k = 0; k < keys.length; k++) {
            for (int i = 0; i < 4; i++) {
                out[4 + 4 * k + i] = (char) keys[k][i];
            }
        }
        return out;
    }

    private static void doubles(TIFFDirectory directory, TIFFTag tag, double[] values) {
        directory.addTIFFField(new TIFFField(tag, TIFFTag.TIFF_DOUBLE, values.length, values));
    }

    private static void ascii(TIFFDirectory directory, TIFFTag tag, String text) {
        directory.addTIFFField(new TIFFField(tag, TIFFTag.TIFF_ASCII, 1, new String[] {text}));
    }

    private static String escaped(String text) {
        return text.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;");
    }

    /** The format has seven bits a character. */
    private static String plain(String text) {
        return text.replaceAll("[^\\x20-\\x7e]", "?");
    }
}
