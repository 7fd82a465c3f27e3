package io.rowledger.results;

import io.rowledger.coverage.sections.ShutOffCase;
import io.rowledger.rate.TurnShift;
import io.rowledger.report.review.WhatIfFigures;
import io.rowledger.rig.Price;
import io.rowledger.rig.Product;
import io.rowledger.rig.Rig;
import io.rowledger.whatif.WhatIf;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * {@code field.what_if} of the summary: the same drive with other machinery or another speed.
 *
 * @param minDifferenceM2 half the interval of the overlap area: a smaller difference is not shown
 */
record WhatIfJson(
        @Decimals(JsonNumbers.AREA_M2) double minDifferenceM2,
        List<Sections> sectionControl,
        Map<String, Turn> turnCompensation,
        List<Speed> speeds,
        List<Switching> inTime) {
    private static final int TIME_S = 1;

    static WhatIfJson of(WhatIf whatIf, WhatIfFigures figures, Rig rig) {
        return new WhatIfJson(
                figures.halfM2(),
                whatIf.shutOffs().stream()
                        .map(one -> Sections.of(one, figures, rig))
                        .toList(),
                whatIf.turns().isEmpty()
                        ? Map.of()
                        : ByProduct.of(
                                rig.products(),
                                p -> Turn.of(figures, whatIf.turns().get(p))),
                whatIf.speeds().stream().map(one -> Speed.of(one, figures, rig)).toList(),
                whatIf.inTime().stream()
                        .map(one -> Switching.of(one, figures, rig))
                        .toList());
    }

    /**
     * Section control by one grouping of the rows.
     *
     * @param grouping how the rows are grouped
     * @param groups rows of each section
     * @param reactionS delay of the valves: 0, the best that any system can do
     * @param shown true where the difference is larger than its uncertainty
     * @param overlapSavedAreaM2 overlap less than happened; negative: more
     * @param skipAreaM2 ground left uncovered beside rows that would have been off
     * @param offAreaM2 swept by rows that would have been off and were on
     * @param offUnsettledAreaM2 part of that while the bar's angle was not known
     * @param onAreaM2 swept by rows that would have been on and were off
     */
    record Sections(
            String grouping,
            List<List<Integer>> groups,
            int reactionS,
            boolean shown,
            @Decimals(JsonNumbers.AREA_M2) double overlapAreaM2,
            @Decimals(JsonNumbers.AREA_M2) double overlapSavedAreaM2,
            @Decimals(JsonNumbers.AREA_M2) double outsideBoundarySavedAreaM2,
            @Decimals(JsonNumbers.AREA_M2) double skipAreaM2,
            @Decimals(JsonNumbers.AREA_M2) double offAreaM2,
            @Decimals(JsonNumbers.AREA_M2) double offUnsettledAreaM2,
            @Decimals(JsonNumbers.AREA_M2) double onAreaM2,
            Map<String, Saved> products) {
        static Sections of(ShutOffCase one, WhatIfFigures figures, Rig rig) {
            return new Sections(
                    one.grouping().kind().name().toLowerCase(Locale.ROOT),
                    one.grouping().rows(),
                    0,
                    figures.shows(one),
                    one.overlapM2(),
                    one.overlapLessM2(),
                    one.outsideLessM2(),
                    one.uncoveredM2(),
                    one.offM2(),
                    one.offUnsettledM2(),
                    one.onM2(),
                    ByProduct.of(rig.products(), p -> Saved.of(rig, figures, p, one.savedL()[p])));
        }
    }

    /** Liquid saved against what happened, negative where more is used, with its nitrogen and price. */
    record Saved(
            @Decimals(JsonNumbers.VOLUME_L) double savedVolumeL,
            @Decimals(JsonNumbers.MASS_KG) double savedNitrogenKg,
            @Decimals(2) double savedMoney,
            @OrNull @Nullable String currency) {
        static Saved of(Rig rig, WhatIfFigures figures, int p, double savedL) {
            Product product = rig.products().get(p);
            Price price = rig.job().prices().get(product.key());
            // No liquid is no nitrogen, also of a product whose analysis is not known.
            double nitrogenKg = savedL == 0 ? 0 : savedL * product.nitrogenKgPerL();
            return new Saved(savedL, nitrogenKg, figures.money(p, savedL), price == null ? null : price.currency());
        }

        /** All of it of one product. */
        static Map<String, Saved> only(Rig rig, WhatIfFigures figures, int product, double savedL) {
            return ByProduct.of(rig.products(), p -> of(rig, figures, p, p == product ? savedL : 0));
        }
    }

    /**
     * Rows driven to their ground speed in turns.
     *
     * @param compensatedShare share of the turn error that the machine took out; null without turns
     * @param movedVolumeL liquid that would have gone to another row; none is saved
     * @param beyond5PctAreaM2 ground 5 % off or more by the turn error that remained
     * @param rowChangeL change of each row
     */
    record Turn(
            @Decimals(TIME_S) double turningS,
            @Decimals(3) double compensatedShare,
            boolean shown,
            @Decimals(JsonNumbers.VOLUME_L) double movedVolumeL,
            @Decimals(JsonNumbers.AREA_M2) double beyond5PctAreaM2,
            @Decimals(JsonNumbers.AREA_M2) double beyond10PctAreaM2,
            @Decimals(JsonNumbers.VOLUME_L) double[] rowChangeL) {
        static Turn of(WhatIfFigures figures, TurnShift turn) {
            return new Turn(
                    turn.turningS(),
                    turn.takenOut(),
                    figures.shows(turn),
                    turn.movedL(),
                    turn.beyond5M2(),
                    turn.beyond10M2(),
                    turn.rowChangeL());
        }
    }

    /** A speed that the supply can keep up with. */
    record Speed(
            @Decimals(3) double holdsMps,
            @Decimals(3) double drivenMps,
            @Decimals(JsonNumbers.AREA_M2) double areaM2,
            @Decimals(TIME_S) double extraS,
            Map<String, Saved> products) {
        static Speed of(WhatIf.Slower one, WhatIfFigures figures, Rig rig) {
            return new Speed(
                    one.holdsMps(),
                    one.drivenMps(),
                    one.areaM2(),
                    one.extraS(),
                    Saved.only(rig, figures, one.product(), -one.gainedL()));
        }
    }

    /** Rows switched on and off in time. */
    record Switching(
            String kind,
            List<Integer> rows,
            @Decimals(JsonNumbers.AREA_M2) double areaM2,
            Map<String, Saved> products) {
        static Switching of(WhatIf.InTime one, WhatIfFigures figures, Rig rig) {
            return new Switching(
                    one.kind().jsonName(),
                    one.rows(),
                    one.areaM2(),
                    Saved.only(rig, figures, one.product(), -one.gainedL()));
        }
    }
}
