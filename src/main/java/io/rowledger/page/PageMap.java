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
        places.forEach(place -> shape(place.polygon(), kind));
    }

    private void shape(Geometry geometry, String kind) {
        Geometry simple =
                geometry.isEmpty() ? geometry : TopologyPreservingSimplifier.simplify(geometry, TOLERANCE_PX / scale);
        StringBuilder path = new StringBuilder();
        for (Polygon polygon : Jts.polygons(simple)) {
            for (LineString ring : Jts.rings(polygon)) {
                String command = "M";
                for (Coordinate at : ring.getCoordinates()) {
                    path.append(command)
                            .append(tenths((at.x - ground.getMinX()) * scale))
                            .append(' ')
                            .append(tenths((ground.getMaxY() - at.y) * scale));
                    command = "L";
                }
                path.append('Z');
            }
        }
        if (!path.isEmpty()) {
            svg.append("<path class=\"")
                    .append(kind)
                    .append("\" fill-rule=\"evenodd\" d=\"")
                    .append(path)
                    .append("\"/>");
        }
    }

    private static String tenths(double px) {
        long tenths = Math.round(px * 10);
        return tenths % 10 == 0 ? Long.toString(tenths / 10) : tenths / 10 + "." + Math.abs(tenths % 10);
    }

    static String escaped(String text) {
        return VisibleText.line(text).replace("&", "&amp;").replace("<", "&lt;").replace("\"", "&quot;");
    }
}
