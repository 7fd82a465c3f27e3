package io.rowledger.report.common;

import io.rowledger.coverage.CoverageOptions;
import io.rowledger.document.text.Wording;
import io.rowledger.uncertainty.Interval;
import io.rowledger.units.QuantityKind;
import io.rowledger.units.UnitFormat;

/**
 * Skipped or doubled ground in words: how much, how much of it lies in places worth driving to, and how much in the
 * seams of centimetres between passes that no list names.
 *
 * @param areaM2 all of it
 * @param sliverM2 what of it is in no place
 * @param places how many places
 * @param besideM2 the area it is named beside, for one unit in a sentence
 * @param interval of all of it
 * @param f how figures are written
 */
public record CoveragePhrases(
        double areaM2, double sliverM2, int places, double besideM2, Interval interval, UnitFormat f) {
    /** A smaller share in seams is not worth a word. */
    private static final double SLIVER_SHARE = 0.02;

    /** Nothing at all, or less than the 0.1 mm grid of the polygons can make up. */
    public boolean none() {
        return places == 0 && areaM2 < 0.5;
    }

    public String area() {
        if (none()) {
            return "none";
        }
        return interval.known()
                ? new IntervalPhrases(f).value(measure(), areaM2, interval)
                : f.areaBeside(areaM2, besideM2);
    }

    /** Bounds of all of it, or empty. */
    public String bounds() {
        return new IntervalPhrases(f).bounds(measure(), areaM2, interval);
    }

    private QuantityKind measure() {
        return f.kindBeside(areaM2, besideM2);
    }

    /** {@code 0.16 ac skipped, 0.13 ac of it in 12 places}. */
    String sentence(String done) {
        if (places == 0) {
            return area() + " " + done + ", all of it in seams thinner than " + sliverWidth(f);
        }
        String count = Wording.counted(places, "place", "places");
        return sliverM2 > SLIVER_SHARE * areaM2
                ? area() + " " + done + ", " + f.areaBeside(areaM2 - sliverM2, Math.max(areaM2, besideM2))
                        + " of it in " + count
                : area() + " " + done + " in " + count;
    }

    /** {@code 12 places}, {@code 12 places and seams}, {@code slivers}. */
    public String where() {
        String count = places == 0 ? "" : Wording.counted(places, "place", "places");
        boolean slivers = !none() && sliverM2 > SLIVER_SHARE * areaM2;
        return count + (slivers ? (count.isEmpty() ? "" : " and ") + "seams" : "");
    }

    static String sliverWidth(UnitFormat f) {
        return f.text(QuantityKind.SMALL_LENGTH, CoverageOptions.MIN_PATCH_WIDTH_M);
    }
}
