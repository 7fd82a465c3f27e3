package io.rowledger.maps;

/** The kinds of map file the program reads, with the words a message needs. */
public enum MapFormat {
    /** RFC 7946. */
    GEOJSON("GeoJSON", "a Polygon or MultiPolygon, bare or in a Feature or FeatureCollection"),
    /** OGC 12-007. */
    KML("KML", "a Polygon in a Placemark"),
    /** Esri, "Shapefile Technical Description", July 1998. */
    SHAPEFILE("a shapefile", "shapes of the type Polygon"),
    /** OGC 12-128. */
    GEOPACKAGE("GeoPackage", "features with a Polygon or MultiPolygon");

    private final String words;
    private final String polygons;

    MapFormat(String words, String polygons) {
        this.words = words;
        this.polygons = polygons;
    }

    /** What people call it, to follow "as". */
    public String words() {
        return words;
    }

    /** What a file of this format should hold where polygons are asked for. */
    public String polygons() {
        return polygons;
    }

    /** What to say behind "expected" of a map that lies elsewhere: what this format says about the two numbers. */
    public String order() {
        return this == GEOJSON ? ", longitude before latitude as in RFC 7946" : "";
    }

    /** What to do about a map that lies elsewhere, to follow "give the right file, or". */
    public String placedWrongly() {
        return switch (this) {
            case GEOJSON, KML -> "swap the two numbers of each position if they are the wrong way round";
            case SHAPEFILE, GEOPACKAGE -> "check the coordinate system the map was exported with";
        };
    }
}
