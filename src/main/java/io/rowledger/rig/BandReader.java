package io.rowledger.rig;

import io.rowledger.units.Dimension;
import io.rowledger.units.Factor;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.snakeyaml.engine.v2.nodes.Node;

/** The {@code rows:} block: equal rows with outside shares, or outlets one by one. */
final class BandReader {
    /** Largest gap or overlap, m, of bands that meet: edges are entered in whole inches or centimeters. */
    private static final double MEET_M = 0.002;

    private BandReader() {}

    static List<Band> read(YamlMap rows) {
        rows.only("count", "spacing", "outer_share", "outlets", "meters");
        if (!rows.has("outlets")) {
            return equal(rows);
        }
        for (String key : List.of("count", "spacing", "outer_share")) {
            if (rows.has(key)) {
                throw rows.fault(key, key + " beside outlets")
                        .expected("either count, spacing and outer_share, or outlets")
                        .hint("delete one of the two");
            }
        }
        return custom(rows);
    }

    private static List<Band> equal(YamlMap rows) {
        double count = rows.number("count", "the number of rows, 1 to " + Band.MAX_ROWS);
        if (count < 1 || count > Band.MAX_ROWS || count != Math.rint(count)) {
            throw rows.fault("count", rows.text("count", "a number"))
                    .expected("the number of rows, a whole number from 1 to " + Band.MAX_ROWS)
                    .hint("count the outlets of the bar");
        }
        double spacingM = rows.quantity("spacing", Dimension.LENGTH);
        if (!(spacingM >= Band.MIN_WIDTH_M) || spacingM > Band.MAX_WIDTH_M) {
            throw rows.fault("spacing", "\"" + rows.text("spacing", "a length") + "\" from row to row")
                    .expected("a spacing from 2 in to 197 ft (5 cm to 60 m)")
                    .hint("check the figure and its unit; row crops stand near 30 in (76 cm)");
        }
        if (count * spacingM > Band.MAX_WIDTH_M) {
            throw rows.fault(
                            "spacing",
                            String.format(
                                    Locale.ROOT,
                                    "%.0f rows at \"%s\", a bar %.0f m (%.0f ft) wide",
                                    count,
                                    rows.text("spacing", "a length"),
                                    count * spacingM,
                                    count * spacingM / Factor.METRES_PER_FOOT))
                    .expected("a bar of at most 60 m (197 ft)")
                    .hint("check count, and the unit of spacing: inches, feet or meters");
        }
        double outer = rows.has("outer_share") ? rows.number("outer_share", "0.5, 1 or 1.5") : 1;
        if (outer != 0.5 && outer != 1 && outer != 1.5) {
            throw rows.fault("outer_share", rows.text("outer_share", "a number"))
                    .expected("0.5, 1 or 1.5, the share of a row's width that each outside outlet serves")
                    .hint("write 0.5 if neighboring passes share the guess row, 1.5 if no knife runs in it, else 1");
        }
        if (count == 1 && outer != 1) {
            throw rows.fault("outer_share", rows.text("outer_share", "a number") + " with one row")
                    .expected("outer_share: 1 with one row")
                    .hint("delete the line, or correct count");
        }
        return sideBySide((int) count, spacingM, outer);
    }

    /**
     * Bands side by side, centered on the bar, each share × spacing wide. Knives stand one spacing apart for any share,
     * so an outside knife stands (share − ½) spacings in from the outer edge of its band: on the edge for 0.5, one
     * spacing in for 1.5 (common practice, no source).
     */
    static List<Band> sideBySide(int count, double spacingM, double outerShare) {
        double widthM = count == 1 ? spacingM : (count - 2 + 2 * outerShare) * spacingM;
        List<Band> bands = new ArrayList<>(count);
        double sharesBefore = 0;
        for (int row = 1; row <= count; row++) {
            boolean outside = count > 1 && (row == 1 || row == count);
            double share = outside ? outerShare : 1;
            double leftM = sharesBefore * spacingM - widthM / 2;
            double rightM = (sharesBefore + share) * spacingM - widthM / 2;
            double atM = row == 1 && outside
                    ? leftM + (share - 0.5) * spacingM
                    : outside ? rightM - (share - 0.5) * spacingM : (leftM + rightM) / 2;
            bands.add(new Band(row, atM, leftM, rightM, share, null));
            sharesBefore += share;
        }
        return bands;
    }

    private static List<Band> custom(YamlMap rows) {
        String what = "one line for each outlet, such as - {at: -15 in, band: [-30 in, 0 in]}";
        List<Node> items = rows.list("outlets", what);
        if (items.isEmpty() || items.size() > Band.MAX_ROWS) {
            throw rows.fault("outlets", "a list of " + items.size())
                    .expected("1 to " + Band.MAX_ROWS + " outlets from left to right")
                    .hint("write " + what);
        }
        double[] leftM = new double[items.size()];
        double[] rightM = new double[items.size()];
        double[] atM = new double[items.size()];
        String[] section = new String[items.size()];
        for (int i = 0; i < items.size(); i++) {
            YamlMap outlet = rows.item("outlets", i + 1, items.get(i)).only("at", "band", "section");
            atM[i] = outlet.quantity("at", Dimension.LENGTH);
            List<Double> band = RigReader.lengths(outlet, "band", "the edges of the band as [-30 in, 0 in]");
            checkBand(outlet, band, atM[i]);
            leftM[i] = band.get(0);
            rightM[i] = band.get(1);
            section[i] = outlet.has("section") ? outlet.text("section", "a name") : "";
            if (i > 0 && leftM[i] < rightM[i - 1] - MEET_M) {
                boolean order = leftM[i] < leftM[i - 1];
                throw outlet.fault(
                                "band",
                                order
                                        ? "a band left of the one before it"
                                        : "a band that overlaps the one before it by "
                                                + String.format(
                                                        Locale.ROOT, "%.0f mm", (rightM[i - 1] - leftM[i]) * 1000))
                        .expected("outlets from left to right, their bands side by side")
                        .hint("correct the edges, left negative, or put the outlets in order");
            }
        }
        double medianM = median(leftM, rightM);
        List<Band> bands = new ArrayList<>(items.size());
        for (int i = 0; i < items.size(); i++) {
            double share = (rightM[i] - leftM[i]) / medianM;
            bands.add(new Band(i + 1, atM[i], leftM[i], rightM[i], share, section[i].isEmpty() ? null : section[i]));
        }
        return bands;
    }

    private static void checkBand(YamlMap outlet, List<Double> band, double atM) {
        if (band.size() != 2) {
            throw outlet.fault("band", "a list of " + band.size())
                    .expected("two edges, left and right, as [-30 in, 0 in]")
                    .hint("write both edges, measured from the center of the bar, left negative");
        }
        double widthM = band.get(1) - band.get(0);
        if (!(widthM >= Band.MIN_WIDTH_M) || widthM > Band.MAX_WIDTH_M) {
            throw outlet.fault("band", String.format(Locale.ROOT, "a band %.3f m wide", widthM))
                    .expected("the left edge first, then the right one, 2 in to 197 ft (5 cm to 60 m) apart")
                    .hint("correct the edges, left of the center negative");
        }
        if (atM < band.get(0) - MEET_M || atM > band.get(1) + MEET_M) {
            throw outlet.fault("at", "an outlet outside its own band")
                    .expected("at between the edges of the band")
                    .hint("correct at or band; both are measured from the center of the bar, left negative");
        }
    }

    private static double median(double[] leftM, double[] rightM) {
        double[] widths = new double[leftM.length];
        for (int i = 0; i < widths.length; i++) {
            widths[i] = rightM[i] - leftM[i];
        }
        Arrays.sort(widths);
        int middle = widths.length / 2;
        return widths.length % 2 == 1 ? widths[middle] : (widths[middle - 1] + widths[middle]) / 2;
    }
}
