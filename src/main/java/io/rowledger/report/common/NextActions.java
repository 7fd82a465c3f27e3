package io.rowledger.report.common;

import io.rowledger.coverage.Coverage;
import io.rowledger.coverage.CoverageDefect;
import io.rowledger.coverage.CoverageDefect.Cause;
import io.rowledger.document.text.Messages;
import io.rowledger.finding.Finding;
import io.rowledger.rate.Rates;
import io.rowledger.rate.RowTotals;
import io.rowledger.text.Message;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Set;

/**
 * What to do next, most costly first: findings by the liquid they cost, skips to drive back to and overlaps by the liquid
 * that their area takes at the job's target.
 *
 * <p>By hand: a plugged row that lost 40 L, skips of 1,000 m² and overlaps of 160 m² at a target of 0.04 L/m² cost 40 L, 40 L
 * and 6.4 L, and are named in that order: of two that cost the same, findings come first.
 */
public final class NextActions {
    /** Actions that a person can keep in mind at a time; common practice, no source. */
    public static final int MAX_ACTIONS = 3;
    /** Places that a sentence names; the list has all of them. */
    private static final int MAX_NAMED = 5;

    /** Skips that driving back can cover; others are margins, or ground that another log may cover. */
    private static final Set<Cause> TO_COVER =
            Set.of(Cause.GAP_BETWEEN_PASSES, Cause.ROW_NOT_DELIVERING, Cause.LATE_START, Cause.EARLY_STOP);

    private NextActions() {}

    /**
     * One action.
     *
     * @param text a sentence or two
     * @param rows rows it concerns, from 1 at the left
     * @param places names of the skips and overlaps it concerns, such as {@code S1}
     * @param costL liquid lost or wasted, L
     */
    public record Action(String text, List<Integer> rows, List<String> places, double costL) {
        /** Copies the lists. */
        public Action {
            rows = List.copyOf(rows);
            places = List.copyOf(places);
        }
    }

    /** Up to {@link #MAX_ACTIONS} actions. */
    public static List<Action> of(List<Finding> findings, Coverage coverage, Rates rates, Messages messages) {
        List<Action> actions = new ArrayList<>();
        for (Finding finding : findings) {
            double costL = Double.isFinite(finding.volumeL()) ? Math.abs(finding.volumeL()) : 0;
            String check = firstStep(messages.text(finding.check()));
            String text = messages.text("words.action.finding", FindingTitles.of(finding), check);
            actions.add(new Action(text, finding.rows(), List.of(), costL));
        }
        double targetLPerM2 = targetLPerM2(rates);
        List<CoverageDefect> skips = coverage.skips().stream()
                .filter(skip -> TO_COVER.contains(skip.cause()))
                .toList();
        add("words.action.skips", "S", skips, targetLPerM2, messages, actions);
        add("words.action.overlaps", "O", coverage.overlaps(), targetLPerM2, messages, actions);
        actions.sort(Comparator.comparingDouble(Action::costL).reversed());
        return List.copyOf(actions.subList(0, Math.min(MAX_ACTIONS, actions.size())));
    }

    /** A check is a row of steps from the harmless to the involved, parted by semicolons. */
    private static String firstStep(String check) {
        int end = check.indexOf(';');
        return end < 0 ? check : check.substring(0, end) + ".";
    }

    private static void add(
            String key,
            String letter,
            List<CoverageDefect> places,
            double targetLPerM2,
            Messages messages,
            List<Action> actions) {
        if (places.isEmpty()) {
            return;
        }
        double areaM2 = places.stream().mapToDouble(CoverageDefect::areaM2).sum();
        List<String> names =
                places.stream().map(place -> letter + place.number()).toList();
        List<String> named = names.subList(0, Math.min(MAX_NAMED, names.size()));
        Message list = names.size() == named.size()
                ? Message.of("words.action.places", named)
                : Message.of("words.action.placesMore", named, names.size() - named.size());
        String text = messages.text(key, list, Message.area(areaM2));
        actions.add(new Action(text, List.of(), names, areaM2 * targetLPerM2));
    }

    /** Target of all products together over the swept area; what was applied where there is no target, L/m². */
    private static double targetLPerM2(Rates rates) {
        double targetL = 0;
        double appliedL = 0;
        for (RowTotals row : rates.rows()) {
            for (RowTotals.ProductTotals product : row.products()) {
                targetL += product.targetVolumeL();
                appliedL += Double.isFinite(product.volumeL()) ? product.volumeL() : 0;
            }
        }
        double sweptM2 = rates.sweptAreaM2();
        return sweptM2 > 0 ? (Double.isFinite(targetL) ? targetL : appliedL) / sweptM2 : 0;
    }
}
