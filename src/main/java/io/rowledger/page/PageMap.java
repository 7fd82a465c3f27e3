package io.rowledger.page;

import io.rowledger.coverage.Coverage;
import io.rowledger.coverage.CoverageDefect;
import io.rowledger.geo.Jts;
import io.rowledger.text.VisibleText;
import java.util.List;
import java.util.Locale;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.simplify.TopologyPreservingSimplifier;

/** The map as a picture (SVG), for readers without JavaScript and for print: ground, skips, overlaps, boundary. */
final class PageMap {
    private static final int WIDTH = 800;
    /** Outlines are simplified to half a point of the picture. */
    private static final double TOLERANCE_PX = 0.5;

    private final StringBuilder svg = new StringBuilder(1 << 14);
    private final Envelope ground = new Envelope();
    private final double scale;

    private PageMap(Coverage coverage) {
        ground.expandToInclude(coverage.covered().getEnvelopeInternal());
        if (coverage.boundary() != null) {
            ground.expandToInclude(coverage.boundary().area().getEnvelopeInternal());
        }
        if (ground.isNull()) {
            ground.init(0, 1, 0, 1);
        }
        ground.expandBy(0.02 * Math.max(ground.getWidth(), ground.getHeight()));
        scale = WIDTH / Math.max(ground.getWidth(), ground.getHeight());
    }

    /** The picture; the page names it for those who can't see it. */
    static String of(Coverage coverage) {
        return new PageMap(coverage).draw(coverage);
    }

    private String draw(Coverage coverage) {
        svg.append(String.format(
                Locale.ROOT,
                "<svg class=\"picture\" viewBox=\"0 0 %.0f %.0f\" aria-hidden=\"true\">",
                ground.getWidth() * scale,
                ground.getHeight() * scale));
        svg.append(
                "<defs><pattern id=\"hatch\" width=\"6\" height=\"6\" patternUnits=\"userSpaceOnUse\"><path d=\"M0 6L6 0\" "
                        + "class=\"hatch\"/></pattern></defs>");
        shape(coverage.covered(), "covered");
        if (coverage.boundary() != null) {
            shape(coverage.boundary().area(), "boundary");
        }
        places(coverage.skips(), "skip");
        places(coverage.overlaps(), "overlap");
        return svg.append("</svg>").toString();
    }

    private void places(List<CoverageDefect> places, String kind) {
        StringBuilder path = new StringBuilder();
        places.forEach(place -> outline(place.polygon(), path));
        draw(path, kind);
    }

    private void shape(Geometry geometry, String kind) {
        StringBuilder path = new StringBuilder();
        outline(geometry, path);
        draw(path, kind);
    }

    private void outline(Geometry geometry, StringBuilder path) {
        Geometry simple =
                geometry.isEmpty() ? geometry : TopologyPreservingSimplifier.simplify(geometry, TOLERANCE_PX / scale);
        for (Polygon polygon : Jts.polygons(simple)) {
            for (LineString ring : Jts.rings(polygon)) {
                outline(ring.getCoordinates(), path);
            }
        }
    }

    /** A closed ring: its first corner, then the way from each corner to the next. */
    private void outline(Coordinate[] ring, StringBuilder path) {
        long x = 0;
        long y = 0;
        for (int i = 0; i + 1 < ring.length; i++) {
            long right = tenths((ring[i].x - ground.getMinX()) * scale);
            long down = tenths((ground.getMaxY() - ring[i].y) * scale);
            path.append(i == 0 ? "M" : i == 1 ? "l" : right < x ? "" : " ").append(pixels(right - x));
            path.append(down < y ? "" : " ").append(pixels(down - y));
            x = right;
            y = down;
        }
        path.append('z');
    }

    private void draw(StringBuilder path, String kind) {
        if (!path.isEmpty()) {
            svg.append("<path class=\"")
                    .append(kind)
                    .append("\" fill-rule=\"evenodd\" d=\"")
                    .append(path)
                    .append("\"/>");
        }
    }

    private static long tenths(double px) {
        return Math.round(px * 10);
    }

    private static String pixels(long tenths) {
        long size = Math.abs(tenths);
        String whole = (tenths < 0 ? "-" : "") + (size > 0 && size < 10 ? "" : size / 10);
        return size % 10 == 0 ? whole : whole + "." + size % 10;
    }

    static String escaped(String text) {
        return VisibleText.line(text).replace("&", "&amp;").replace("<", "&lt;").replace("\"", "&quot;");
    }
}
