package io.rowledger.report.common;

import io.rowledger.document.text.Messages;

/**
 * A place as plain coordinates and as a link that a map program opens.
 *
 * @param text degrees on WGS 84, latitude first
 * @param uri a "geo" URI of RFC 5870 with the same figures; empty where the place is not known
 */
public record GeoLink(String text, String uri) {
    /** No place. */
    public static final GeoLink NONE = new GeoLink("", "");

    @Override
    public String toString() {
        return text;
    }

    /** The link of a place, degrees on WGS 84. */
    public static GeoLink of(double latDeg, double lonDeg, Messages messages) {
        String text = messages.units().place(latDeg, lonDeg);
        boolean known = Double.isFinite(latDeg) && Double.isFinite(lonDeg);
        return new GeoLink(text, known ? "geo:" + text.replace(", ", ",") : "");
    }
}
