package io.rowledger.page;

import io.rowledger.diagnose.setup.SetupCheck;
import io.rowledger.diagnose.setup.SetupMeasurement;
import io.rowledger.diagnose.setup.SetupParameter;
import io.rowledger.document.text.Messages;
import io.rowledger.rig.Band;
import io.rowledger.rig.Hitch;
import io.rowledger.rig.Rig;
import io.rowledger.units.QuantityKind;
import java.util.EnumSet;
import java.util.Locale;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * Tractor and bar from above, to scale (SVG): rear axle, antenna, hitch pin, wheels, drop line and every row's width. Lengths have a
 * letter in the drawing and a line below it; those that the log contradicts are marked in both.
 */
final class BarDrawing {
    private static final double WIDTH_PX = 760;
    /** Room around the machine, m. */
    private static final double MARGIN_M = 1.2;
    /** Half the rear axle of a row-crop tractor, m: for the eye only. */
    private static final double HALF_AXLE_M = 1.6;

    private final Rig rig;
    private final Messages words;
    private final Set<SetupParameter> inDoubt = EnumSet.noneOf(SetupParameter.class);
    private final StringBuilder svg = new StringBuilder(4096);
    private final StringBuilder list = new StringBuilder(512);
    private char letter = 'A';
    private final double left;
    private final double front;
    private final double scale;

    private BarDrawing(Rig rig, SetupCheck check, Messages words) {
        this.rig = rig;
        this.words = words;
        for (SetupMeasurement measurement : check.differing()) {
            inDoubt.add(measurement.parameter());
        }
        left = Math.min(rig.leftM() + rig.barRightM(), -HALF_AXLE_M) - MARGIN_M;
        double right = Math.max(rig.rightM() + rig.barRightM(), HALF_AXLE_M) + MARGIN_M + 1.5;
        front = Math.max(rig.antennaAheadM(), 1) + MARGIN_M;
        scale = WIDTH_PX / (right - left);
    }

    /** The drawing with lengths in the units of these words. */
    static String of(Rig rig, SetupCheck check, Messages words) {
        return new BarDrawing(rig, check, words).draw();
    }

    private String draw() {
        double dropM = -rig.axleToHitchM() - rig.hitchToDropM();
        double heightPx = (front - dropM + 2 * MARGIN_M) * scale;
        svg.append(String.format(
                Locale.ROOT,
                "<svg class=\"bar\" viewBox=\"0 0 %.0f %.0f\" role=\"img\" aria-label=\"%s\">",
                WIDTH_PX,
                heightPx,
                PageMap.escaped(words.text("page.bar.title"))));
        line(0, front - MARGIN_M, 0, dropM, "center");
        line(-HALF_AXLE_M, 0, HALF_AXLE_M, 0, "axle");
        dot(rig.antennaRightM(), rig.antennaAheadM());
        dot(0, -rig.axleToHitchM());
        if (rig.hitch() == Hitch.PULL_TYPE) {
            double wheelsM = -rig.axleToHitchM() - rig.hitchToWheelsM();
            line(-HALF_AXLE_M, wheelsM, HALF_AXLE_M, wheelsM, "axle");
        }
        for (Band band : rig.bands()) {
            double from = band.leftM() + rig.barRightM();
            double to = band.rightM() + rig.barRightM();
            line(from, dropM, to, dropM, band.row() % 2 == 0 ? "band even" : "band");
            text((from + to) / 2, dropM - 0.7, Integer.toString(band.row()), "row");
        }
        lengths(dropM);
        return svg.append("</svg><ul class=\"measures\">")
                .append(list)
                .append("</ul>")
                .toString();
    }

    private void lengths(double dropM) {
        double pin = -rig.axleToHitchM();
        double x = Math.max(rig.rightM() + rig.barRightM(), HALF_AXLE_M) + 0.6;
        length(x, 0, rig.antennaAheadM(), "page.bar.antenna", SetupParameter.ANTENNA_AHEAD);
        length(x, pin, 0, "page.bar.axle_to_hitch", null);
        if (rig.hitch() == Hitch.PULL_TYPE) {
            length(
                    x + 1.1,
                    pin - rig.hitchToWheelsM(),
                    pin,
                    "page.bar.hitch_to_wheels",
                    SetupParameter.HITCH_TO_WHEELS);
        }
        length(x, dropM, pin, "page.bar.hitch_to_drop", SetupParameter.DROP_OFFSET);
        boolean aside = inDoubt.contains(SetupParameter.SIDE_OFFSET);
        if (aside || rig.barRightM() != 0) {
            line(0, dropM - 0.35, rig.barRightM(), dropM - 0.35, aside ? "length differs" : "length");
            measure(rig.barRightM() / 2, dropM - 1.4, "page.bar.side", rig.barRightM(), aside);
        }
        if (inDoubt.contains(SetupParameter.OUTSIDE_SHARE)) {
            Band first = rig.bands().get(0);
            measure((first.leftM() + first.rightM()) / 2, dropM - 1.4, "page.bar.share", first.widthM(), true);
        }
    }

    private void length(double x, double from, double to, String key, @Nullable SetupParameter parameter) {
        boolean doubtful = parameter != null && inDoubt.contains(parameter);
        line(x, from, x, to, doubtful ? "length differs" : "length");
        measure(x + 0.25, (from + to) / 2, key, to - from, doubtful);
    }

    /** A letter at a place in the drawing, and its line in the list. */
    private void measure(double x, double y, String key, double lengthM, boolean doubtful) {
        text(x, y, String.valueOf(letter), doubtful ? "measure differs" : "measure");
        String line = words.text(
                doubtful ? "page.bar.differs" : "page.bar.length",
                words.text(key),
                words.units().text(QuantityKind.DIMENSION, lengthM));
        list.append(doubtful ? "<li class=\"differs\">" : "<li>")
                .append("<b>")
                .append(letter)
                .append("</b> ")
                .append(PageMap.escaped(line))
                .append("</li>");
        letter++;
    }

    private void line(double x0, double y0, double x1, double y1, String kind) {
        svg.append(String.format(
                Locale.ROOT,
                "<line class=\"%s\" x1=\"%.1f\" y1=\"%.1f\" x2=\"%.1f\" y2=\"%.1f\"/>",
                kind,
                (x0 - left) * scale,
                (front - y0) * scale,
                (x1 - left) * scale,
                (front - y1) * scale));
    }

    private void dot(double x, double y) {
        svg.append(String.format(
                Locale.ROOT,
                "<circle class=\"point\" cx=\"%.1f\" cy=\"%.1f\" r=\"5\"/>",
                (x - left) * scale,
                (front - y) * scale));
    }

    private void text(double x, double y, String text, String kind) {
        svg.append(String.format(
                Locale.ROOT,
                "<text class=\"%s\" x=\"%.1f\" y=\"%.1f\">%s</text>",
                kind,
                (x - left) * scale,
                (front - y) * scale,
                PageMap.escaped(text)));
    }
}
