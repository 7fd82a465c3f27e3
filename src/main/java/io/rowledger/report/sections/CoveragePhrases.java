package io.rowledger.report.sections;

import io.rowledger.coverage.CoverageOptions;
import io.rowledger.document.text.Messages;
import io.rowledger.report.common.IntervalPhrases;
import io.rowledger.text.Argument;
import io.rowledger.text.Message;
import io.rowledger.uncertainty.Interval;
import io.rowledger.units.QuantityKind;
import org.jspecify.annotations.Nullable;

/**
 * Skips or overlaps in words: how much ground, how much of it in places worth driving to, and how much in slivers between
 * passes that no list names.
 *
 * @param areaM2 all of it, m²
 * @param openM2 the part of which it is not known whether it is a skip, m²
 * @param sliverM2 the part in no place, m²
 * @param places number of places
 * @param besideM2 the other area in the same sentence, m²; it decides the common unit
 * @param interval of {@code areaM2}
 * @param messages words and units
 */
public record CoveragePhrases(
        double areaM2,
        double openM2,
        double sliverM2,
        int places,
        double besideM2,
        Interval interval,
        Messages messages) {
    /** Fraction of the ground below which slivers are not named. */
    private static final double MIN_SLIVER_SHARE = 0.02;
    /** Area below which ground without a place counts as none, m²: the rounding of polygons reaches that. */
    private static final double MIN_AREA_M2 = 0.5;

    /** True if there is none, or less than rounding makes up or the bounds leave a digit of. */
    public boolean none() {
        return places == 0 && (areaM2 < MIN_AREA_M2 || printed().matches("0(\\.0+)?\u00a0.*"));
    }

    /** {@code 0.16 ac}, or "none". */
    public String area() {
        if (none()) {
            return messages.text("words.none");
        }
        return printed();
    }

    private String printed() {
        return interval.known()
                ? new IntervalPhrases(messages).value(kind(), areaM2, interval)
                : messages.units().areaBeside(areaM2, besideM2);
    }

    /** Bounds of all of it, or empty. */
    public String bounds() {
        return new IntervalPhrases(messages).bounds(kind(), areaM2, interval);
    }

    private QuantityKind kind() {
        return messages.units().kindBeside(areaM2, besideM2);
    }

    /** True for ground of which it is not known whether it was skipped. */
    public boolean open() {
        return openM2 >= MIN_AREA_M2;
    }

    /** {@code 0.58 ac}: the ground of which it is not known whether it was skipped. */
    public Argument openArea() {
        return Message.area(openM2, Math.max(areaM2, besideM2));
    }

    /** The skips that are known, in words; null for none. */
    public @Nullable CoveragePhrases known() {
        CoveragePhrases known = new CoveragePhrases(
                areaM2 - openM2,
                0,
                sliverM2,
                places,
                Math.max(areaM2, besideM2),
                Interval.unknown(areaM2 - openM2),
                messages);
        return known.none() || (places == 0 && known.areaM2 < MIN_SLIVER_SHARE * areaM2) ? null : known;
    }

    /** {@code 0.16 ac skipped, 0.13 ac of it in 12 places}; apart from it what is not known to be skipped. */
    public Message skipped() {
        if (open()) {
            CoveragePhrases known = known();
            Message perhaps = Message.of("words.coverage.perhapsSkipped", openArea());
            return known == null ? perhaps : Message.of("words.coverage.andPerhaps", known.skipped(), perhaps);
        }
        return phrase("words.coverage.skippedSlivers", "words.coverage.skippedPartly", "words.coverage.skipped");
    }

    /** {@code 0.16 ac of overlap, 0.13 ac of it in 12 places}. */
    public Message overlap() {
        return phrase("words.coverage.overlapSlivers", "words.coverage.overlapPartly", "words.coverage.overlap");
    }

    private Message phrase(String slivers, String partly, String places) {
        if (this.places == 0) {
            return Message.of(slivers, area(), sliverWidth());
        }
        return hasSlivers()
                ? Message.of(partly, area(), Message.area(areaM2 - sliverM2, Math.max(areaM2, besideM2)), this.places)
                : Message.of(places, area(), this.places);
    }

    private boolean hasSlivers() {
        return !none() && sliverM2 > MIN_SLIVER_SHARE * areaM2;
    }

    /** {@code 12 places}, {@code 12 places and slivers}, {@code slivers}; empty if there is none. */
    public String where() {
        if (places == 0 && open()) {
            return messages.text("words.coverage.open");
        }
        if (places == 0) {
            return hasSlivers() ? messages.text("words.coverage.slivers") : "";
        }
        return messages.text(hasSlivers() ? "words.coverage.placesAndSlivers" : "words.coverage.places", places);
    }

    /** Width below which ground is a sliver. */
    static Argument sliverWidth() {
        return Message.value(QuantityKind.SMALL_LENGTH, CoverageOptions.MIN_PATCH_WIDTH_M);
    }
}
