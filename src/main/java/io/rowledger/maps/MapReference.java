package io.rowledger.maps;

import io.rowledger.finding.UnusableInputException;

/** The coordinate system of a picture: from its coordinates to degrees on WGS 84. */
public final class MapReference {
    /** Degrees on WGS 84: x is the longitude, y the latitude. */
    public static final MapReference DEGREES = new MapReference(ReferenceSystem.WGS84);

    private final ReferenceSystem system;

    private MapReference(ReferenceSystem system) {
        this.system = system;
    }

    /**
     * The system of well-known text (OGC 01-009), as a .prj file holds it.
     *
     * @param file named in the message
     * @throws UnusableInputException where it can't be brought to WGS 84
     */
    public static MapReference of(String wellKnownText, String file) {
        try {
            return new MapReference(ReferenceSystem.of(wellKnownText));
        } catch (ReferenceSystem.NotUsable e) {
            throw UnusableInputException.found(e.found())
                    .inFile(file)
                    .expected(e.wanted())
                    .hint("export the picture again in UTM or in degrees on WGS 84");
        }
    }

    /**
     * A system by its number in the EPSG register: degrees (4326, 4269, 4258), web Mercator (3857) and UTM on WGS 84, NAD83 and
     * ETRS89.
     *
     * @param file named in the message
     * @throws UnusableInputException for any other number
     */
    public static MapReference ofEpsg(int code, String file) {
        if (code == 4326 || code == 4269 || code == 4258) {
            return DEGREES;
        }
        if (code == 3857) {
            return new MapReference(ReferenceSystem.webMercator());
        }
        int north = between(code, 32601, 32660, 32600)
                + between(code, 26901, 26923, 26900)
                + between(code, 25828, 25838, 25800)
                + between(code, 6330, 6348, 6329);
        if (north > 0) {
            return new MapReference(ReferenceSystem.utm(north, true));
        }
        int south = between(code, 32701, 32760, 32700);
        if (south > 0) {
            return new MapReference(ReferenceSystem.utm(south, false));
        }
        throw UnusableInputException.found("the coordinate system EPSG:" + code)
                .inFile(file)
                .expected("UTM on WGS 84, NAD83 or ETRS89, web Mercator, or degrees on WGS 84")
                .hint("export the picture again in UTM or in degrees on WGS 84");
    }

    private static int between(int code, int first, int last, int zoneZero) {
        return code >= first && code <= last ? code - zoneZero : 0;
    }

    /** Longitude and latitude of x and y, degrees; NaN where there is no such place. */
    public double[] toLonLat(double x, double y) {
        return system.toLonLat(new double[] {x, y});
    }
}
