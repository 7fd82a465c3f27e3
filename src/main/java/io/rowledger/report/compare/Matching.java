package io.rowledger.report.compare;

import io.rowledger.diagnose.signal.Figure;
import io.rowledger.finding.FindingKind;
import io.rowledger.report.common.RowHealth;
import io.rowledger.report.common.SavedDiagnosis;
import io.rowledger.report.common.SavedDiagnosis.ProductState;
import io.rowledger.report.common.SavedDiagnosis.SavedFinding;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * The findings of two jobs held against one another. A finding is gone only if the later job could have shown it.
 *
 * @param gone only before, and the later job would have shown them
 * @param remaining before and after: the same or a kindred fault of the same rows and product
 * @param fresh only after
 * @param notTested only before, but the later job could not have shown them, with the reason
 */
public record Matching(
        List<SavedFinding> gone, List<Pair> remaining, List<SavedFinding> fresh, List<NotTested> notTested) {
    /** A row judged for less than this in the later job has not been tested: the shortest fault a diagnosis promises, s. */
    static final double MIN_EVALUATED_S = 120;

    /** Copies the lists. */
    public Matching {
        gone = List.copyOf(gone);
        remaining = List.copyOf(remaining);
        fresh = List.copyOf(fresh);
        notTested = List.copyOf(notTested);
    }

    /** The same fault before and after. */
    public record Pair(SavedFinding before, SavedFinding after) {}

    /** A fault of before that the later job could not show. */
    public record NotTested(SavedFinding before, String why) {}

    /** Holds the findings of two jobs of the same machine against one another. */
    public static Matching of(SavedDiagnosis before, SavedDiagnosis after) {
        List<SavedFinding> gone = new ArrayList<>();
        List<Pair> remaining = new ArrayList<>();
        List<NotTested> notTested = new ArrayList<>();
        List<SavedFinding> left = new ArrayList<>(after.findings());
        List<SavedFinding> open = new ArrayList<>();
        for (SavedFinding old : before.findings()) {
            pair(old, left, true, remaining, open);
        }
        for (SavedFinding old : List.copyOf(open)) {
            open.remove(old);
            pair(old, left, false, remaining, open);
        }
        Set<SavedFinding> lasting = new HashSet<>();
        remaining.forEach(pair -> lasting.add(pair.before()));
        for (SavedFinding old : before.findings()) {
            if (lasting.contains(old)) {
                continue;
            }
            String why = whyNotTested(old, after);
            if (why.isEmpty()) {
                gone.add(old);
            } else {
                notTested.add(new NotTested(old, why));
            }
        }
        return new Matching(gone, remaining, left, notTested);
    }

    private static void pair(
            SavedFinding old,
            List<SavedFinding> left,
            boolean sameKind,
            List<Pair> remaining,
            List<SavedFinding> open) {
        for (SavedFinding found : left) {
            boolean kind = sameKind
                    ? old.finding().kind() == found.finding().kind()
                    : family(old.finding().kind()) == family(found.finding().kind());
            if (kind && old.product().equals(found.product()) && shareRows(old, found)) {
                left.remove(found);
                remaining.add(new Pair(old, found));
                return;
            }
        }
        open.add(old);
    }

    private static boolean shareRows(SavedFinding a, SavedFinding b) {
        List<Integer> one = a.finding().rows();
        List<Integer> other = b.finding().rows();
        return one.isEmpty() || other.isEmpty() || one.stream().anyMatch(other::contains);
    }

    /** A plug half cleared is a restriction, and a meter that fails in another way is still that meter. */
    private static FindingKind family(FindingKind kind) {
        return switch (kind) {
            case RESTRICTED, INTERMITTENT -> FindingKind.PLUGGED;
            case SUPPLY_FAILING, RAN_EMPTY -> FindingKind.SUPPLY_LIMITED;
            case METER_DROPOUT, METER_SCALE -> FindingKind.METER_STUCK;
            default -> kind;
        };
    }

    private static String whyNotTested(SavedFinding old, SavedDiagnosis after) {
        FindingKind of = old.finding().kind();
        if (of == FindingKind.FLOW_LAG || of == FindingKind.DROP_OFFSET || of == FindingKind.SIDE_OFFSET) {
            return "measures of the setup are in each job's own setup check, which says whether its log could tell";
        }
        ProductState product = after.products().stream()
                .filter(state -> state.key().equals(old.product()))
                .findFirst()
                .orElse(null);
        if (product == null) {
            return "the later job did not apply this product";
        }
        List<Integer> rows = old.finding().rows();
        boolean anyRow = false;
        for (RowHealth row : product.rows()) {
            boolean evaluated = row.evaluatedS() >= MIN_EVALUATED_S;
            if (!evaluated && rows.contains(row.row())) {
                return "row " + row.row() + " could be judged for less than two minutes in the later job";
            }
            anyRow |= evaluated;
        }
        if (!anyRow) {
            return "no row could be judged for two minutes in the later job";
        }
        if (old.finding().kind() == FindingKind.SUPPLY_LIMITED) {
            for (Figure figure : old.figures()) {
                if ("m/s".equals(figure.unit()) && !(after.fastestPassMps() >= figure.value())) {
                    return "the later job was driven below the speed at which the limit began";
                }
            }
        }
        return "";
    }
}
