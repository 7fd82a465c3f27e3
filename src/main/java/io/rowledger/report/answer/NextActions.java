package io.rowledger.report.answer;

import io.rowledger.coverage.Coverage;
import io.rowledger.coverage.CoverageDefect;
import io.rowledger.diagnose.Deviation;
import io.rowledger.diagnose.Diagnosis;
import io.rowledger.document.text.Messages;
import io.rowledger.finding.Finding;
import io.rowledger.finding.FindingKind;
import io.rowledger.log.Metering;
import io.rowledger.rate.RowTotals;
import io.rowledger.report.common.JobView;
import io.rowledger.report.common.Limits;
import io.rowledger.report.common.ProductSums;
import io.rowledger.report.findings.FindingFacts;
import io.rowledger.report.findings.FindingTitles;
import io.rowledger.report.findings.FindingUncertainties;
import io.rowledger.report.findings.FindingUncertainty;
import io.rowledger.report.sections.DefectPhrases;
import io.rowledger.text.Message;
import io.rowledger.units.QuantityKind;
import io.rowledger.whatif.WhatIf;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * What to do next, most costly first: findings by the liquid they cost, skips worth a stop and overlaps worth a change by the
 * liquid that their area takes at the job's target.
 *
 * <p>By hand: a plugged row that lost 40 L, skips of 1,000 m² and overlaps of 600 m² at a target of 0.04 L/m² cost 40 L, 40 L
 * and 24 L, and are named in that order: of two that cost the same, findings come first. A row that left a skip comes before driving back
 * to it, whatever the meters say that it lost.
 *
 * <p>The first page of the pass review prints {@link #actions} as a numbered list and {@link #alsoFound} below it. A page on a
 * screen shows the same: {@link Action#title} as a heading, {@link Action#text} below it, {@link Action#rows} and
 * {@link Action#places} as links into its lists and its map (rows from 1 at the left, places by the names that skips and overlaps
 * have in every list, in the order in which to drive to them). {@code summary.json} has the texts in US English. Texts hold no
 * markup. Nothing to do is an empty list of actions; {@link #nothing} says so in words.
 *
 * @param actions at most {@link #MAX_ACTIONS}
 * @param alsoFound titles of the findings that the actions don't name, so that every suspected row is told, sentence by sentence
 * @param nothing what to print where there is no action, else empty
 */
public record NextActions(List<Action> actions, List<String> alsoFound, String nothing) {
    /** Actions that a person can keep in mind at a time; common practice, no source. */
    public static final int MAX_ACTIONS = 3;
    /** Places that a sentence names; the list has all of them. */
    private static final int MAX_NAMED = 6;
    /** Overlap as a fraction of the worked ground from which it is worth a change; common practice, no source. */
    private static final double MIN_OVERLAP_SHARE = 0.01;

    /** Kinds that say why the whole bar was off target; others of the bar move liquid without changing its sum. */
    private static final Set<FindingKind> OF_THE_BAR_RATE =
            EnumSet.of(FindingKind.SUPPLY_LIMITED, FindingKind.SUPPLY_FAILING, FindingKind.RAN_EMPTY);

    /** Copies the lists. */
    public NextActions {
        actions = List.copyOf(actions);
        alsoFound = List.copyOf(alsoFound);
    }

    /** True if there are findings that no action names. */
    public boolean hasAlso() {
        return !alsoFound.isEmpty();
    }

    /** What an action asks for. */
    public enum Kind {
        /** Look at a row, a meter or the supply. */
        CHECK,
        /** Drive back to skipped ground. */
        DRIVE,
        /** Change a setting, the rig file or the way of driving before the next field. */
        CHANGE
    }

    /**
     * One action.
     *
     * @param kind what it asks for
     * @param title a few words without a full stop, such as "Check row 7"
     * @param text a sentence or two: what is wrong, what it cost, and the first thing to do
     * @param rows rows it concerns, from 1 at the left; empty for the whole bar
     * @param places names of the skips and overlaps it concerns, such as {@code S1}; skips in the best order of stops
     * @param costL liquid lost or wasted, L
     */
    public record Action(Kind kind, String title, String text, List<Integer> rows, List<String> places, double costL) {
        /** Copies the lists. */
        public Action {
            rows = List.copyOf(rows);
            places = List.copyOf(places);
        }
    }

    /**
     * What to do after a job.
     *
     * @param findings most certain first
     * @param uncertainties of the findings, by their place in the list
     */
    public static NextActions of(
            JobView job, List<Finding> findings, FindingUncertainties uncertainties, WhatIf whatIf, Messages messages) {
        Builder builder = new Builder(job, uncertainties.diagnosis(), whatIf, messages);
        for (int i = 0; i < findings.size(); i++) {
            if (uncertainties.diagnosis().alsoNoticed().get(i)) {
                builder.alsoNoticed(findings.get(i));
            } else {
                builder.finding(findings.get(i), uncertainties.of(i));
            }
        }
        builder.unexplained(findings);
        builder.drive(DriveBack.of(job.coverage(), job.track()));
        builder.overlaps();
        return builder.build();
    }

    /** What a finding of this kind asks for. */
    static Kind kind(FindingKind kind) {
        return switch (kind) {
            case SUPPLY_LIMITED,
                    NO_TURN_COMPENSATION,
                    LATE_ON,
                    EARLY_OFF,
                    OUTSIDE_SHARE,
                    FLOW_LAG,
                    DROP_OFFSET,
                    SIDE_OFFSET -> Kind.CHANGE;
            default -> Kind.CHECK;
        };
    }

    /** An action, and the finding that it comes from in a clause; empty where it comes from none. */
    private record Candidate(Action action, String foundTitle) {}

    private static final class Builder {
        private final JobView job;
        private final Diagnosis diagnosis;
        private final WhatIf whatIf;
        private final Messages messages;
        private final double targetLPerM2;
        private final List<Candidate> candidates = new ArrayList<>();
        private final List<String> noticed = new ArrayList<>();
        /** Rows that left a stop by not applying. */
        private final Set<Integer> skippedRows = new HashSet<>();

        Builder(JobView job, Diagnosis diagnosis, WhatIf whatIf, Messages messages) {
            this.job = job;
            this.diagnosis = diagnosis;
            this.whatIf = whatIf;
            this.messages = messages;
            this.targetLPerM2 = targetLPerM2();
        }

        NextActions build() {
            candidates.sort(Comparator.comparingDouble(this::rankL).reversed());
            int shown = Math.min(MAX_ACTIONS, candidates.size());
            List<String> rest = new ArrayList<>(candidates.subList(shown, candidates.size()).stream()
                    .map(Candidate::foundTitle)
                    .filter(title -> !title.isEmpty())
                    .map(title -> messages.text("words.action.sentence", title))
                    .toList());
            rest.addAll(noticed);
            boolean evaluated = job.rates().sweptAreaM2() > 0;
            return new NextActions(
                    candidates.subList(0, shown).stream().map(Candidate::action).toList(),
                    rest,
                    shown > 0 || !evaluated ? "" : messages.text(nothing()));
        }

        /** The cost by which an action is ranked, L: a row is put right before anybody drives back to what it skipped. */
        private double rankL(Candidate candidate) {
            Action action = candidate.action();
            double rankL = action.costL();
            for (Candidate other : candidates) {
                if (other.action().kind() == Kind.DRIVE && action.kind() == Kind.CHECK && leftSkip(candidate)) {
                    rankL = Math.max(rankL, other.action().costL());
                }
            }
            return rankL;
        }

        /** True for a fault of rows that left skips, and for a fault of the whole supply. */
        private boolean leftSkip(Candidate candidate) {
            List<Integer> rows = candidate.action().rows();
            return rows.isEmpty() ? !candidate.foundTitle().isEmpty() : skippedRows.containsAll(rows);
        }

        /** With one meter no row is known to be sound. */
        private String nothing() {
            boolean oneMeter = false;
            for (int p = 0; p < job.rig().products().size(); p++) {
                oneMeter |= job.log().metering(p) == Metering.WHOLE_BAR;
            }
            if (oneMeter) {
                return "words.action.nothingOneMeter";
            }
            return diagnosis.allClear() ? "words.action.nothing" : "words.action.nothingSure";
        }

        /** A finding that cost next to nothing: told, not acted on. */
        void alsoNoticed(Finding finding) {
            noticed.add(messages.text("words.action.sentence", FindingTitles.of(finding)));
        }

        void finding(Finding finding, FindingUncertainty uncertainty) {
            double costL = Double.isFinite(finding.volumeL()) ? Math.abs(finding.volumeL()) : 0;
            String found = messages.text(FindingTitles.of(finding));
            Message cost = FindingFacts.shortCost(finding, uncertainty);
            Kind kind = kind(finding.kind());
            String title = messages.text(
                    kind == Kind.CHANGE ? "words.action.title.change" : "words.action.title.check", finding.rows());
            String text = messages.text("words.action.finding", found, cost, step(finding));
            candidates.add(new Candidate(new Action(kind, title, text, finding.rows(), List.of(), costL), found));
        }

        /** The first step of the check; where the supply runs short, the speed that it holds. */
        private String step(Finding finding) {
            if (finding.kind() == FindingKind.SUPPLY_LIMITED && !whatIf.speeds().isEmpty()) {
                return messages.text(
                        "words.action.slower",
                        Message.value(QuantityKind.SPEED, whatIf.speeds().get(0).holdsMps()));
            }
            return firstStep(messages.text(finding.check()));
        }

        /** Rows and bars that are off, though no finding names them: told, never explained. */
        void unexplained(List<Finding> findings) {
            boolean barNamed = findings.stream()
                    .anyMatch(finding -> finding.rows().isEmpty() && OF_THE_BAR_RATE.contains(finding.kind()));
            if (job.log().isOffScale()) {
                candidates.add(check(List.of(), messages.text("words.action.offScale"), Double.POSITIVE_INFINITY));
                return;
            }
            if (!barNamed) {
                barSpells();
            }
            for (int p = 0; p < job.rig().products().size() && !barNamed; p++) {
                ProductSums sums = ProductSums.of(job.rates(), job.coverage(), p);
                if (job.log().metering(p) == Metering.WHOLE_BAR) {
                    bar(sums, p, findings);
                } else {
                    rows(sums, p, findings);
                }
            }
        }

        /** Spells in which the bar was off, where its sum over the job is not. */
        private void barSpells() {
            for (Deviation spell : diagnosis.unexplained()) {
                if (spell.isSpell()) {
                    String text = messages.text("words.action.barSpell", spell.text());
                    candidates.add(check(List.of(), text, Math.abs(spell.volumeL())));
                }
            }
        }

        /** What the bar was off by beside what the findings of single rows cost: no liter is told twice. */
        private void bar(ProductSums sums, int p, List<Finding> findings) {
            double foundL = 0;
            for (int i = 0; i < findings.size(); i++) {
                boolean ofIt = diagnosis.productsOf(i).equals(List.of(p));
                double volumeL = findings.get(i).volumeL();
                foundL += ofIt && Double.isFinite(volumeL) ? volumeL : 0;
            }
            double offL = sums.volumeL() - sums.owedL() - foundL;
            double pct = foundL == 0 ? sums.deviationPct() : 100 * offL / sums.owedL();
            if (Math.abs(pct) > Limits.WATCH_PCT) {
                String key = job.log().isAreas()
                        ? "words.action.areasOff"
                        : foundL == 0 ? "words.action.barOff" : "words.action.barOffBeside";
                candidates.add(check(List.of(), messages.text(key, Message.percent(pct)), Math.abs(offL)));
            }
        }

        private void rows(ProductSums sums, int p, List<Finding> findings) {
            List<Integer> off = new ArrayList<>();
            List<Message> named = new ArrayList<>();
            double costL = 0;
            for (MeteredRows part : MeteredRows.of(job, p)) {
                double pct = part.deviationPct();
                boolean told =
                        findings.stream().anyMatch(finding -> !Collections.disjoint(finding.rows(), part.rows()));
                if (Math.abs(pct) > Limits.WATCH_PCT && !told) {
                    off.addAll(part.rows());
                    named.add(Message.of("words.summary.row", part.rows(), Message.percent(pct)));
                    costL += Math.abs(pct) / 100 * part.sweptAreaM2() * targetLPerM2;
                }
            }
            if (2 * off.size() > job.rates().rows().size() && Math.abs(sums.deviationPct()) > Limits.WATCH_PCT) {
                bar(sums, p, findings);
            } else if (!off.isEmpty()) {
                int shown = Math.min(Limits.ROWS_IN_A_SENTENCE, named.size());
                Message list = shown < named.size()
                        ? Message.of("words.summary.rowsAndMore", named.subList(0, shown), named.size() - shown)
                        : Message.of("words.summary.rows", named);
                String text = messages.text("words.action.rowsOff", off, list);
                candidates.add(check(off, text, costL));
            }
        }

        private Candidate check(List<Integer> rows, String text, double costL) {
            String title = messages.text("words.action.title.check", rows);
            return new Candidate(new Action(Kind.CHECK, title, text, rows, List.of(), costL), "");
        }

        void drive(DriveBack back) {
            if (back.stops().isEmpty()) {
                return;
            }
            back.stops().stream()
                    .filter(stop -> stop.place().cause() == CoverageDefect.Cause.ROW_NOT_DELIVERING)
                    .forEach(stop -> skippedRows.addAll(stop.place().rows()));
            List<String> names = back.stops().stream().map(DriveBack.Stop::name).toList();
            double liquidL = back.areaM2() * targetLPerM2;
            boolean narrow = back.stops().stream()
                    .allMatch(stop -> 2 * stop.ends().widthM() <= job.rig().widthM());
            String text = messages.text(
                    "words.action.drive",
                    places(names),
                    names.size(),
                    Message.area(back.areaM2()),
                    Message.value(QuantityKind.VOLUME, liquidL),
                    narrow ? Message.of("words.action.narrow") : "");
            String title = messages.text("words.action.title.drive", names.size());
            candidates.add(new Candidate(new Action(Kind.DRIVE, title, text, List.of(), names, liquidL), ""));
        }

        void overlaps() {
            Coverage c = job.coverage();
            if (c.overlapAreaM2() < MIN_OVERLAP_SHARE * job.rates().sweptAreaM2()
                    || c.overlaps().isEmpty()) {
                return;
            }
            Map<CoverageDefect.Cause, Double> byCause = new EnumMap<>(CoverageDefect.Cause.class);
            c.overlaps().forEach(each -> byCause.merge(each.cause(), each.areaM2(), Double::sum));
            CoverageDefect.Cause most = byCause.entrySet().stream()
                    .max(Map.Entry.comparingByValue())
                    .orElseThrow()
                    .getKey();
            if (most == CoverageDefect.Cause.BETWEEN_AREAS) {
                return;
            }
            double liquidL = c.overlapAreaM2() * targetLPerM2;
            List<String> names = c.overlaps().stream()
                    .filter(each -> each.cause() == most)
                    .map(each -> "O" + each.number())
                    .toList();
            String text = messages.text(
                    "words.action.overlaps",
                    Message.area(c.overlapAreaM2()),
                    Message.value(QuantityKind.VOLUME, liquidL),
                    DefectPhrases.cause(most),
                    places(names),
                    DefectPhrases.lookAt(most));
            String title = messages.text("words.action.title.change", List.of());
            candidates.add(new Candidate(new Action(Kind.CHANGE, title, text, List.of(), names, liquidL), ""));
        }

        /** A check is a row of steps from the harmless to the involved, parted by semicolons. */
        private static String firstStep(String check) {
            int end = check.indexOf(';');
            return end < 0 ? check : check.substring(0, end) + ".";
        }

        private static Message places(List<String> names) {
            // A single one that is left out would take as much room as its name.
            int count = names.size() == MAX_NAMED + 1 ? MAX_NAMED + 1 : Math.min(MAX_NAMED, names.size());
            List<String> named = names.subList(0, count);
            return names.size() == named.size()
                    ? Message.of("words.action.places", named)
                    : Message.of("words.action.placesMore", named, names.size() - named.size());
        }

        /** Target of all products together over the swept area; what was applied where there is no target, L/m². */
        private double targetLPerM2() {
            double targetL = 0;
            double appliedL = 0;
            for (RowTotals row : job.rates().rows()) {
                for (RowTotals.ProductTotals product : row.products()) {
                    targetL += product.targetVolumeL();
                    appliedL += Double.isFinite(product.volumeL()) ? product.volumeL() : 0;
                }
            }
            double sweptM2 = job.rates().sweptAreaM2();
            return sweptM2 > 0 ? (Double.isFinite(targetL) ? targetL : appliedL) / sweptM2 : 0;
        }
    }
}
