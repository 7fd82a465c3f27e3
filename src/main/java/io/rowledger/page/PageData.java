package io.rowledger.page;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What the page's script reads beside the columns. SI; lengths in the job's plane are m east and north of its origin. Corners of
 * outlines are in the columns {@code outline.east} and {@code outline.north}, ring after ring, in the order of the fields below.
 *
 * @param format name of the format, {@code rowledger-review}
 * @param version of the format, raised when a reader must change
 * @param key names the job and its places: what a browser keeps about places belongs to it
 * @param ground false where rows were checked without a rig file, so that nobody knows where the strips lie
 * @param metering {@code per_row}, {@code shared} or {@code whole_bar}, per product
 * @param meters per product the rows that each meter feeds, from 1; empty where each row has its own
 * @param timed false where the log has no times: then times, speeds and flows are not in it
 * @param startS time of the first pose, seconds since the Unix epoch
 * @param zone time zone of the field, an IANA name
 * @param origin the plane's origin, latitude and longitude in degrees on WGS 84
 * @param metersPerDegree north and east at the origin, for a position on a phone
 * @param columns the columns of the data block, in their order
 * @param rows left and right edge of each row's band, m right of the bar's center
 * @param products the products in rig order
 * @param classes classes of deviation from far under to far over
 * @param passes the passes in time order
 * @param skips largest first
 * @param doubtful skips at which only a meter reads zero, largest first
 * @param overlaps largest first
 * @param findings those with a card, in the order of the cards
 * @param boundary corners of each ring of its outline, or null without a boundary
 * @param setbacks corners of each ring of the setbacks' outlines
 * @param zones corners of each ring of the outlines of the prescription's zones
 * @param backdrop where the picture under the map lies: west, south, east and north, m; null without one
 */
record PageData(
        String format,
        int version,
        String key,
        boolean ground,
        List<String> metering,
        List<List<List<Integer>>> meters,
        boolean timed,
        double startS,
        String zone,
        double[] origin,
        double[] metersPerDegree,
        List<ColumnBlock.Column> columns,
        double[][] rows,
        List<Product> products,
        List<DeviationClass> classes,
        List<PassSpan> passes,
        List<Place> skips,
        List<Place> doubtful,
        List<Place> overlaps,
        List<FindingMark> findings,
        @Nullable List<Integer> boundary,
        List<Integer> setbacks,
        List<Integer> zones,
        double @Nullable [] backdrop) {

    /**
     * A product.
     *
     * @param meanRateLPerM2 mean rate on the ground, for jobs without a target
     */
    record Product(String key, String name, double meanRateLPerM2) {}

    /** A class of deviation: its color and its upper bound as a fraction, null for the last. */
    record DeviationClass(int rgb, @Nullable Double upTo) {}

    /** The steps of a pass: first and one past the last. */
    record PassSpan(int number, int firstStep, int endStep) {}

    /** A skip or an overlap; its cause's name, and the number of corners of each ring of its outline. */
    record Place(
            String label,
            double areaM2,
            double[] at,
            double[] latLon,
            List<Integer> passes,
            List<Integer> rows,
            String cause,
            List<Integer> corners) {}

    /** Where and when a finding shows. */
    record FindingMark(String kind, List<Integer> rows, double fromS, double toS, double confidence, double[] latLon) {}
}
