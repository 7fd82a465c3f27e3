package io.rowledger.diagnose;

import io.rowledger.diagnose.signal.Case;
import io.rowledger.finding.Finding;
import io.rowledger.finding.FindingKind;
import io.rowledger.text.Argument;
import io.rowledger.text.Message;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;

/**
 * Names the meter with all its rows wherever a meter feeds several: the log can't tell its rows apart, so that no case concerns
 * one of them alone. One of two rows plugged shows as half the meter's flow missing.
 */
final class SharedMeters {
    /** Kinds of a meter itself: they say nothing of the rows behind it. */
    private static final Set<FindingKind> OF_THE_METER =
            EnumSet.of(FindingKind.METER_DROPOUT, FindingKind.METER_STUCK, FindingKind.CHANNELS_SWAPPED);

    private final int[][] meterRows;

    /**
     * The meters of one product.
     *
     * @param meterRows rows (from 0) of each meter; empty where each row has its own
     */
    SharedMeters(int[][] meterRows) {
        this.meterRows = meterRows;
    }

    /** Returns the meters (from 0) of these rows (from 0), ascending; none if each of the rows has a meter of its own. */
    private List<Integer> meters(List<Integer> rows) {
        List<Integer> touched = new ArrayList<>();
        boolean shared = false;
        for (int m = 0; m < meterRows.length; m++) {
            if (Arrays.stream(meterRows[m]).anyMatch(rows::contains)) {
                touched.add(m);
                shared |= meterRows[m].length > 1;
            }
        }
        return shared ? touched : List.of();
    }

    private List<Integer> rowsOf(List<Integer> meters) {
        Set<Integer> rows = new TreeSet<>();
        meters.forEach(m -> Arrays.stream(meterRows[m]).forEach(rows::add));
        return List.copyOf(rows);
    }

    private static List<Integer> fromOne(List<Integer> numbers) {
        return numbers.stream().map(n -> n + 1).toList();
    }

    /** Returns the cases with every row's meter in the row's place; what two rows of a meter show at a time is one case. */
    List<Case> of(List<Case> cases) {
        if (meterRows.length == 0) {
            return cases;
        }
        List<Case> named = new ArrayList<>();
        for (Case found : cases) {
            Case whole = whole(found);
            boolean shared = !meters(found.rows()).isEmpty();
            int same = -1;
            for (int i = 0; i < named.size() && shared; i++) {
                Case before = named.get(i);
                if (before.kind() == whole.kind()
                        && before.rows().equals(whole.rows())
                        && before.fromS() < whole.toS()
                        && whole.fromS() < before.toS()) {
                    same = i;
                }
            }
            if (same < 0) {
                named.add(whole);
            } else {
                named.set(same, joined(named.get(same), whole));
            }
        }
        return named;
    }

    private static Case joined(Case a, Case b) {
        Case.Cost cost = a.cost() == null || b.cost() == null
                ? null
                : new Case.Cost(
                        a.cost().areaM2() + b.cost().areaM2(),
                        a.cost().volumeL() + b.cost().volumeL());
        return new Case(
                a.kind(),
                a.rows(),
                Math.min(a.fromS(), b.fromS()),
                Math.max(a.toS(), b.toS()),
                Math.max(a.confidence(), b.confidence()),
                a.words(),
                a.figures(),
                cost);
    }

    private Case whole(Case found) {
        List<Integer> meters = meters(found.rows());
        if (meters.isEmpty()) {
            return found;
        }
        List<Integer> rows = rowsOf(meters);
        Message evidence = named(found.words().evidence(), meters.size() == 1);
        Message alternative = found.words().alternative();
        Message check = found.words().check();
        if (!OF_THE_METER.contains(found.kind())) {
            alternative = Message.of("findings.shared.alternative", alternative, fromOne(rows));
            check = Message.of("findings.shared.check", fromOne(rows), check);
        }
        return new Case(
                found.kind(),
                rows,
                found.fromS(),
                found.toS(),
                found.confidence(),
                new Case.Words(evidence, alternative, check),
                found.figures(),
                found.cost());
    }

    /** The sentence with meters for rows; that rows of one meter began together points to nothing. */
    private Message named(Message text, boolean oneMeter) {
        List<Argument> arguments = new ArrayList<>();
        for (Argument argument : text.arguments()) {
            if (!(argument instanceof Message part)) {
                arguments.add(argument);
            } else if (part.key().equals("findings.rows.some")) {
                arguments.add(ofRows(part));
            } else if (oneMeter && isShared(part)) {
                arguments.add(Message.of("findings.none"));
            } else {
                arguments.add(named(part, oneMeter));
            }
        }
        return new Message(text.key(), arguments);
    }

    private static boolean isShared(Message part) {
        return part.key().equals("findings.shared.hose") || part.key().equals("findings.shared.section");
    }

    private Message ofRows(Message part) {
        Set<Integer> rows = new HashSet<>();
        for (Argument argument : part.arguments()) {
            if (argument instanceof Argument.Sequence numbers) {
                numbers.values().forEach(item -> {
                    if (item instanceof Argument.Count number) {
                        rows.add((int) number.value() - 1);
                    }
                });
            }
        }
        List<Integer> meters = meters(List.copyOf(rows));
        return meters.isEmpty() ? part : Message.of("findings.rows.meters", fromOne(meters), fromOne(rowsOf(meters)));
    }

    /** Returns the finding with its meters named; rows are those of whole meters already. */
    Finding named(Finding finding) {
        List<Integer> meters =
                meters(finding.rows().stream().map(row -> row - 1).toList());
        return meters.isEmpty() ? finding : finding.withMeters(fromOne(meters));
    }

    /** Returns one deviation a meter: its rows deviate alike. */
    List<Deviation> deviations(List<Deviation> rows) {
        List<Deviation> once = new ArrayList<>();
        Set<List<Integer>> seen = new HashSet<>();
        for (Deviation row : rows) {
            List<Integer> meters = row.row() == 0 ? List.of() : meters(List.of(row.row() - 1));
            if (meters.isEmpty()) {
                once.add(row);
            } else if (seen.add(meters)) {
                List<Integer> together = fromOne(rowsOf(meters));
                double volumeL = rows.stream()
                        .filter(one -> together.contains(one.row()))
                        .mapToDouble(Deviation::volumeL)
                        .sum();
                once.add(row.ofMeter(meters.get(0) + 1, together, volumeL));
            }
        }
        return once;
    }
}
