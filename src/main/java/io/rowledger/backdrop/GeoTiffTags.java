package io.rowledger.backdrop;

import io.rowledger.finding.UnusableInputException;
import io.rowledger.maps.MapReference;
import javax.imageio.metadata.IIOInvalidTreeException;
import javax.imageio.metadata.IIOMetadata;
import javax.imageio.plugins.tiff.BaselineTIFFTagSet;
import javax.imageio.plugins.tiff.GeoTIFFTagSet;
import javax.imageio.plugins.tiff.TIFFDirectory;
import javax.imageio.plugins.tiff.TIFFField;
import org.jspecify.annotations.Nullable;

/** What a GeoTIFF (OGC 19-008) says of its place. */
final class GeoTiffTags {
    private static final int MODEL_TYPE = 1024;
    private static final int RASTER_TYPE = 1025;
    private static final int GEOGRAPHIC_TYPE = 2048;
    private static final int PROJECTED_TYPE = 3072;
    private static final int PROJECTED = 1;
    private static final int GEOGRAPHIC = 2;
    private static final int PIXEL_IS_POINT = 2;
    private static final int USER_DEFINED = 32767;
    private static final int KEY_LENGTH = 4;

    private final TIFFDirectory directory;
    private final String file;

    private GeoTiffTags(TIFFDirectory directory, String file) {
        this.directory = directory;
        this.file = file;
    }

    static GeoTiffTags of(IIOMetadata metadata, String file) throws IIOInvalidTreeException {
        return new GeoTiffTags(TIFFDirectory.createFromMetadata(metadata), file);
    }

    /** Bytes that one strip or tile takes when it is unpacked. */
    long blockBytes(long width, long height) {
        long columns = first(BaselineTIFFTagSet.TAG_TILE_WIDTH, width);
        long rows = first(BaselineTIFFTagSet.TAG_TILE_LENGTH, first(BaselineTIFFTagSet.TAG_ROWS_PER_STRIP, height));
        long samples = first(BaselineTIFFTagSet.TAG_SAMPLES_PER_PIXEL, 1);
        long bits = first(BaselineTIFFTagSet.TAG_BITS_PER_SAMPLE, 8);
        return columns * Math.min(rows, height) * samples * Math.max(1, bits / 8);
    }

    private long first(int tag, long otherwise) {
        TIFFField field = directory.getTIFFField(tag);
        return field == null ? otherwise : field.getAsLong(0);
    }

    /**
     * The georeference, or null where the file has none.
     *
     * @throws UnusableInputException for a coordinate system that is not known
     */
    @Nullable
    GeoReference reference() {
        TIFFField keys = directory.getTIFFField(GeoTIFFTagSet.TAG_GEO_KEY_DIRECTORY);
        double[] affine = affine(keys != null && key(keys, RASTER_TYPE) == PIXEL_IS_POINT);
        if (keys == null || affine == null) {
            return null;
        }
        int model = key(keys, MODEL_TYPE);
        int code = key(keys, model == GEOGRAPHIC ? GEOGRAPHIC_TYPE : PROJECTED_TYPE);
        if ((model != PROJECTED && model != GEOGRAPHIC) || code == 0 || code == USER_DEFINED) {
            throw UnusableInputException.found("a coordinate system without a number of the EPSG register")
                    .inFile(file)
                    .expected("UTM, web Mercator or degrees on WGS 84, by their numbers")
                    .hint("export the picture again in UTM or in degrees on WGS 84");
        }
        return new GeoReference(affine, MapReference.ofEpsg(code, file));
    }

    /** The value of a key that stands in the directory itself; 0 where it doesn't. */
    private static int key(TIFFField keys, int id) {
        for (int i = KEY_LENGTH; i + KEY_LENGTH <= keys.getCount(); i += KEY_LENGTH) {
            if (keys.getAsInt(i) == id && keys.getAsInt(i + 1) == 0) {
                return keys.getAsInt(i + 3);
            }
        }
        return 0;
    }

    private double @Nullable [] affine(boolean point) {
        TIFFField matrix = directory.getTIFFField(GeoTIFFTagSet.TAG_MODEL_TRANSFORMATION);
        TIFFField scale = directory.getTIFFField(GeoTIFFTagSet.TAG_MODEL_PIXEL_SCALE);
        TIFFField tie = directory.getTIFFField(GeoTIFFTagSet.TAG_MODEL_TIE_POINT);
        double[] affine;
        if (matrix != null && matrix.getCount() == 16) {
            affine = new double[] {
                matrix.getAsDouble(0),
                matrix.getAsDouble(1),
                matrix.getAsDouble(3),
                matrix.getAsDouble(4),
                matrix.getAsDouble(5),
                matrix.getAsDouble(7)
            };
        } else if (scale != null && scale.getCount() >= 2 && tie != null && tie.getCount() == 6) {
            double a = scale.getAsDouble(0);
            double e = -scale.getAsDouble(1);
            affine = new double[] {
                a, 0, tie.getAsDouble(3) - a * tie.getAsDouble(0), 0, e, tie.getAsDouble(4) - e * tie.getAsDouble(1)
            };
        } else {
            return null;
        }
        if (point) {
            affine[2] -= (affine[0] + affine[1]) / 2;
            affine[5] -= (affine[3] + affine[4]) / 2;
        }
        return affine;
    }
}
