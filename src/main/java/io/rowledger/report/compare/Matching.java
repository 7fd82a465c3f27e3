package io.rowledger.report.compare;

import io.rowledger.diagnose.signal.Figure;
import io.rowledger.finding.FindingKind;
import io.rowledger.report.findings.RowHealth;
import io.rowledger.report.findings.SavedDiagnosis;
import io.rowledger.report.findings.SavedDiagnosis.ProductState;
import io.rowledger.report.findings.SavedDiagnosis.SavedFinding;
import io.rowledger.text.Argument;
import io.rowledger.text.Message;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * The findings of two jobs, paired. A finding is gone only if the later job could have shown it.
 *
 * @param gone findings of the earlier job that the later job would have shown
 * @param remaining the same fault, or one of the same family, of the same rows and product in both jobs
 * @param fresh findings of the later job only
 * @param notTested findings of the earlier job that the later job could not have shown, with the reason
 */
public record Matching(
        List<SavedFinding> gone, List<Pair> remaining, List<SavedFinding> fresh, List<NotTested> notTested) {
    /** Shortest evaluated time in which a row counts as tested, s: the shortest fault that a diagnosis promises to find. */
    static final double MIN_EVALUATED_S = 120;

    private static final Argument MIN_EVALUATED = Message.decimal(MIN_EVALUATED_S / 60, 0);

    /** Copies the lists. */
    public Matching {
        gone = List.copyOf(gone);
        remaining = List.copyOf(remaining);
        fresh = List.copyOf(fresh);
        notTested = List.copyOf(notTested);
    }

    /** The same fault before and after. */
    public record Pair(SavedFinding before, SavedFinding after) {}

    /** A fault of the earlier job that the later job could not show. */
    public record NotTested(SavedFinding before, Message why) {}

    /** Pairs the findings of two jobs of the same machine. */
    public static Matching of(SavedDiagnosis before, SavedDiagnosis after) {
        List<SavedFinding> gone = new ArrayList<>();
        List<Pair> remaining = new ArrayList<>();
        List<NotTested> notTested = new ArrayList<>();
        List<SavedFinding> unpaired = new ArrayList<>(after.findings());
        List<SavedFinding> open = new ArrayList<>();
        for (SavedFinding old : before.findings()) {
            pair(old, unpaired, true, remaining, open);
        }
        for (SavedFinding old : List.copyOf(open)) {
            open.remove(old);
            pair(old, unpaired, false, remaining, open);
        }
        Set<SavedFinding> paired = new HashSet<>();
        remaining.forEach(pair -> paired.add(pair.before()));
        for (SavedFinding old : before.findings()) {
            if (paired.contains(old)) {
                continue;
            }
            Message why = whyNotTested(old, after);
            if (why == null) {
                gone.add(old);
            } else {
                notTested.add(new NotTested(old, why));
            }
        }
        return new Matching(gone, remaining, unpaired, notTested);
    }

    private static void pair(
            SavedFinding old,
            List<SavedFinding> unpaired,
            boolean sameKind,
            List<Pair> remaining,
            List<SavedFinding> open) {
        for (SavedFinding found : unpaired) {
            boolean kind = sameKind
                    ? old.finding().kind() == found.finding().kind()
                    : family(old.finding().kind()) == family(found.finding().kind());
            if (kind && old.product().equals(found.product()) && shareRows(old, found)) {
                unpaired.remove(found);
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

    /** Kinds that may be one fault seen twice: a half-cleared plug is a restriction, a meter may fail in several ways. */
    private static FindingKind family(FindingKind kind) {
        return switch (kind) {
            case RESTRICTED, INTERMITTENT -> FindingKind.PLUGGED;
            case SUPPLY_FAILING, RAN_EMPTY -> FindingKind.SUPPLY_LIMITED;
            case METER_DROPOUT, METER_SCALE -> FindingKind.METER_STUCK;
            default -> kind;
        };
    }

    /** Why the later job could not have shown a finding; null if it could. */
    private static @Nullable Message whyNotTested(SavedFinding old, SavedDiagnosis after) {
        FindingKind of = old.finding().kind();
        if (of == FindingKind.FLOW_LAG || of == FindingKind.DROP_OFFSET || of == FindingKind.SIDE_OFFSET) {
            return Message.of("compare.notTested.setup");
        }
        ProductState product = after.products().stream()
                .filter(state -> state.key().equals(old.product()))
                .findFirst()
                .orElse(null);
        if (product == null) {
            return Message.of("compare.notTested.product");
        }
        List<Integer> rows = old.finding().rows();
        boolean anyRow = false;
        for (RowHealth row : product.rows()) {
            boolean evaluated = row.evaluatedS() >= MIN_EVALUATED_S;
            if (!evaluated && rows.contains(row.row())) {
                return Message.of("compare.notTested.row", row.row(), MIN_EVALUATED);
            }
            anyRow |= evaluated;
        }
        if (!anyRow) {
            return Message.of("compare.notTested.noRow", MIN_EVALUATED);
        }
        if (old.finding().kind() == FindingKind.SUPPLY_LIMITED) {
            for (Figure figure : old.figures()) {
                if ("m/s".equals(figure.unit()) && !(after.fastestPassMps() >= figure.value())) {
                    return Message.of("compare.notTested.speed");
                }
            }
        }
        return null;
    }
}
