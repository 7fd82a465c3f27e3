package io.rowledger.export;

import java.util.Locale;

/**
 * Plain styles as Styled Layer Descriptors (OGC 02-070, version 1.0.0). Colors as in the printed maps: skips and overlaps
 * from Okabe and Ito, "Color Universal Design" (2008); deviations from ColorBrewer's PuOr (Harrower and Brewer 2003).
 */
final class Sld {
    private static final String SKIP_RGB = "#d55e00";
    private static final String OVERLAP_RGB = "#0072b2";
    private static final String STRIP_RGB = "#d5dadc";
    private static final String INK = "#22282b";
    private static final String[] DEVIATION = {
        "#b35806", "#f1a340", "#fee0b6", "#f7f7f7", "#d8daeb", "#998ec3", "#542788"
    };
    private static final double[] STEPS_PCT = {-20, -10, -5, 5, 10, 20};

    static final String STRIPS = sld("strips", rule("", polygon(STRIP_RGB, 0.6)));
    static final String PASSES = sld(
            "passes",
            rule(
                    "",
                    "<LineSymbolizer><Stroke>" + css("stroke", INK) + css("stroke-width", "1")
                            + "</Stroke></LineSymbolizer>"));
    static final String SKIP = sld("skips", rule("", polygon(SKIP_RGB, 0.8)));
    static final String OVERLAP = sld("overlaps", rule("", polygon(OVERLAP_RGB, 0.8)));
    static final String FINDINGS = sld(
            "findings",
            rule(
                    "",
                    "<PointSymbolizer><Graphic><Mark><WellKnownName>triangle</WellKnownName><Fill>" + css("fill", INK)
                            + "</Fill></Mark><Size>12</Size></Graphic></PointSymbolizer>"));

    private Sld() {}

    /** Squares colored by a column of percentages. */
    static String received(String column) {
        StringBuilder rules = new StringBuilder();
        for (int i = 0; i < DEVIATION.length; i++) {
            String from = i == 0 ? "" : compare("GreaterThanOrEqualTo", column, STEPS_PCT[i - 1]);
            String to = i == STEPS_PCT.length ? "" : compare("LessThan", column, STEPS_PCT[i]);
            boolean both = !from.isEmpty() && !to.isEmpty();
            String filter = (both ? "<ogc:And>" : "") + from + to + (both ? "</ogc:And>" : "");
            rules.append(rule("<ogc:Filter>" + filter + "</ogc:Filter>", polygon(DEVIATION[i], 0.9)));
        }
        // Without a target there is no deviation.
        rules.append(rule("<ElseFilter/>", polygon(STRIP_RGB, 0.9)));
        return sld("received", rules.toString());
    }

    private static String compare(String how, String column, double value) {
        return String.format(
                Locale.ROOT,
                "<ogc:PropertyIs%1$s><ogc:PropertyName>%2$s</ogc:PropertyName><ogc:Literal>%3$.0f</ogc:Literal>"
                        + "</ogc:PropertyIs%1$s>",
                how,
                column.replace("&", "&amp;").replace("<", "&lt;"),
                value);
    }

    private static String css(String name, String value) {
        return "<CssParameter name=\"" + name + "\">" + value + "</CssParameter>";
    }

    private static String polygon(String color, double opacity) {
        return "<PolygonSymbolizer><Fill>" + css("fill", color) + css("fill-opacity", Double.toString(opacity))
                + "</Fill></PolygonSymbolizer>";
    }

    private static String rule(String filter, String symbolizer) {
        return "<Rule>" + filter + symbolizer + "</Rule>";
    }

    private static String sld(String layer, String rules) {
        return "<?xml version=\"1.0\" encoding=\"UTF-8\"?><StyledLayerDescriptor version=\"1.0.0\""
                + " xmlns=\"http://www.opengis.net/sld\" xmlns:ogc=\"http://www.opengis.net/ogc\"><NamedLayer><Name>"
                + layer + "</Name><UserStyle><FeatureTypeStyle>" + rules
                + "</FeatureTypeStyle></UserStyle></NamedLayer></StyledLayerDescriptor>";
    }
}
