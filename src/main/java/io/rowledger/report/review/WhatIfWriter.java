package io.rowledger.report.review;

import io.rowledger.coverage.sections.Grouping;
import io.rowledger.coverage.sections.ShutOffCase;
import io.rowledger.document.text.Messages;
import io.rowledger.document.text.Wording;
import io.rowledger.finding.FindingKind;
import io.rowledger.rate.TurnShift;
import io.rowledger.report.common.JobView;
import io.rowledger.report.review.WhatIfSection.Line;
import io.rowledger.units.QuantityKind;
import io.rowledger.units.UnitFormat;
import io.rowledger.whatif.WhatIf;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** Puts what would have been into words: the one place where its figures are rounded and labelled. */
final class WhatIfWriter {
    private static final String DASH = "\u2013";

    private final WhatIf whatIf;
    private final JobView job;
    private final Messages messages;
    private final UnitFormat f;
    private final WhatIfFigures figures;
    private final List<Line> lines = new ArrayList<>();
    private final List<String> assumes = new ArrayList<>();
    private final List<String> notShown = new ArrayList<>();

    private WhatIfWriter(WhatIf whatIf, JobView job, Messages messages) {
        this.whatIf = whatIf;
        this.job = job;
        this.messages = messages;
        this.f = messages.units();
        this.figures = new WhatIfFigures(
                job.rig(), job.coverage(), job.intervals(), job.rates().sweptAreaM2());
    }

    static WhatIfSection section(WhatIf whatIf, JobView job, Messages messages) {
        return new WhatIfWriter(whatIf, job, messages).section();
    }

    private WhatIfSection section() {
        shutOffs(whatIf.shutOffs());
        for (int p = 0; p < whatIf.turns().size(); p++) {
            turn(p, whatIf.turns().get(p));
        }
        whatIf.speeds().forEach(this::slower);
        whatIf.inTime().forEach(this::inTime);
        return new WhatIfSection(
                lines,
                !job.rig().job().prices().isEmpty(),
                assumes,
                notShown,
                "No log knows what liquid missing, doubled or moved did to the crop, what such machinery costs or how well it"
                        + " would be run. Less and more are against what happened; a difference within the bounds of the"
                        + " doubled ground is not shown.");
    }

    private void shutOffs(List<ShutOffCase> cases) {
        List<String> same = new ArrayList<>();
        boolean any = false;
        double mostM2 = 0;
        for (ShutOffCase one : cases) {
            if (figures.shows(one)) {
                shutOff(one, !any);
                any = true;
            } else if (one.grouping().kind() != Grouping.Kind.NONE) {
                same.add(name(one.grouping()));
                mostM2 = Math.max(mostM2, Math.abs(one.overlapLessM2()) + one.outsideLessM2());
            }
        }
        if (!same.isEmpty()) {
            notShown.add(capital(String.join("; ", same)) + ": no gain the log can show, "
                    + (mostM2 > 0
                            ? f.patch(mostM2) + " of ground at most, where doubled ground is known to \u00b1 "
                                    + f.patch(figures.halfM2())
                            : "because no row passed with its whole width over ground done before")
                    + ".");
        }
    }

    private void shutOff(ShutOffCase one, boolean first) {
        double groundM2 = one.overlapLessM2() + one.outsideLessM2();
        lines.add(new Line(
                capital(name(one.grouping())),
                liquids(one.savedL()),
                nitrogen(one.savedL()),
                ground(one.overlapLessM2(), "done twice")
                        + (one.outsideLessM2() > figures.halfM2()
                                ? ", " + ground(one.outsideLessM2(), "outside the boundary")
                                : ""),
                money(one.savedL())));
        if (first) {
            String where = job.coverage().boundary() == null ? "" : " or outside the boundary";
            assumes.add(
                    "Shut-off: a row, or a group of rows, is off exactly while every row of it passes with its whole"
                            + " width over ground done before" + where
                            + ", and on the moment one does not. Valves act at once: the best such a system can do. Rows that were"
                            + " off over bare ground stay off.");
        }
        if (one.grouping().kind() == Grouping.Kind.ROWS) {
            String bare = one.uncoveredM2() > figures.halfM2()
                    ? "Row by row, " + f.patch(one.uncoveredM2())
                            + " in seams beside covered ground would have stayed bare."
                    : "";
            String unsettled = one.offUnsettledM2() > 0.1 * Math.abs(groundM2)
                    ? "Of the ground saved row by row, " + f.patch(one.offUnsettledM2())
                            + " was passed while the bar's angle was not known: less sure."
                    : "";
            assumes.addAll(java.util.stream.Stream.of(bare, unsettled)
                    .filter(s -> !s.isEmpty())
                    .toList());
        }
    }

    private String name(Grouping grouping) {
        return switch (grouping.kind()) {
            case ROWS -> "row-by-row shut-off";
            case RIG_FILE -> "shut-off in the rig file's " + grouping.rows().size() + " groups";
            case QUARTERS -> "shut-off in quarters of the bar";
            case HALVES -> "shut-off in halves of the bar";
            case NONE -> "no shut-off over ground done before";
        };
    }

    private void turn(int p, TurnShift turn) {
        String of = job.rig().products().size() > 1
                ? " (" + job.rig().products().get(p).name() + ")"
                : "";
        if (!turn.known()) {
            notShown.add("Turn compensation" + of + " can't be told: the log holds hardly any turning with liquid on.");
        } else if (figures.shows(turn)) {
            double[] moved = new double[job.rig().products().size()];
            moved[p] = turn.movedL();
            lines.add(new Line(
                    "Turn compensation" + of,
                    f.text(QuantityKind.VOLUME, turn.movedL()) + " to other rows, none saved",
                    nitrogenOf(moved, " moved"),
                    f.areaBeside(turn.beyond5M2(), job.coverage().coveredAreaM2()) + " no longer 5% off or more",
                    DASH));
            assumes.add("Turn compensation" + of
                    + ": in every turn each delivering row gets the bar's flow in proportion to its own speed; the total stays"
                    + " as it was. By its flows the machine took out "
                    + wholePercent(turn.takenOut()) + " of the turning itself.");
        } else {
            notShown.add("Turn compensation" + of + ": no gain the log can show. By its flows the machine took out "
                    + wholePercent(turn.takenOut()) + " of the turning itself, and "
                    + (turn.beyond5M2() > 0 ? f.anyArea(turn.beyond5M2()) : "no ground")
                    + " is 5% off or more by what is left.");
        }
    }

    private void slower(WhatIf.Slower one) {
        double[] gained = new double[job.rig().products().size()];
        gained[one.product()] = -one.gainedL();
        lines.add(new Line(
                "At " + f.text(QuantityKind.SPEED, one.holdsMps()) + " at most",
                liquids(gained),
                nitrogen(gained),
                f.areaBeside(one.areaM2(), job.coverage().coveredAreaM2()) + " at its rate, " + f.duration(one.extraS())
                        + " more",
                money(gained)));
        assumes.add("Speed: the supply gave no more above it; where the bar went faster, "
                + f.text(QuantityKind.SPEED, one.drivenMps())
                + " in the mean, it would have gone at this speed and every delivering row have got its target.");
    }

    private void inTime(WhatIf.InTime one) {
        double[] gained = new double[job.rig().products().size()];
        gained[one.product()] = -one.gainedL();
        boolean on = one.kind() == FindingKind.LATE_ON;
        String rows = one.rows().isEmpty() || one.rows().size() == job.rig().rows()
                ? "all rows"
                : "rows " + Wording.ranges(one.rows());
        lines.add(new Line(
                (on ? "On in time: " : "Off not too early: ") + rows,
                liquids(gained),
                nitrogen(gained),
                f.areaBeside(one.areaM2(), job.coverage().coveredAreaM2()) + " less left bare",
                money(gained)));
        assumes.add((on ? "On in time" : "Off not too early")
                + ": the bare ends that the finding of this name counts would have got what their pass got.");
    }

    /** {@code 29 gal less}; of several products each with its name. */
    private String liquids(double[] savedL) {
        List<String> parts = new ArrayList<>();
        for (int p = 0; p < savedL.length; p++) {
            String name = savedL.length > 1 ? " " + job.rig().products().get(p).name() : "";
            if (!Double.isFinite(savedL[p])) {
                parts.add(UnitFormat.UNKNOWN + name);
            } else if (savedL[p] != 0) {
                double half = figures.halfL(p, savedL[p]);
                double size = Math.abs(savedL[p]);
                parts.add(within(QuantityKind.VOLUME, size, half) + name + less(savedL[p]));
            }
        }
        return parts.isEmpty() ? DASH : String.join(", ", parts);
    }

    private String nitrogen(double[] savedL) {
        return nitrogenOf(savedL, less(figures.nitrogenKg(savedL)));
    }

    private String nitrogenOf(double[] litres, String tail) {
        double size = Math.abs(figures.nitrogenKg(litres));
        double half = Math.abs(figures.nitrogenKg(halves(litres)));
        return Double.isFinite(size) ? within(QuantityKind.NITROGEN, size, half) + tail : UnitFormat.UNKNOWN;
    }

    /** Without the digits its doubt denies, and without more than such a figure ever has. */
    private String within(QuantityKind measure, double size, double half) {
        String usual = f.text(measure, size);
        String denied = f.valueWithin(measure, size, size - half, size + half);
        return denied.length() < usual.length() ? denied : usual;
    }

    private double[] halves(double[] litres) {
        double[] half = new double[litres.length];
        for (int p = 0; p < half.length; p++) {
            half[p] = litres[p] == 0 ? 0 : figures.halfL(p, litres[p]);
        }
        return half;
    }

    private String ground(double lessM2, String what) {
        double size = Math.abs(lessM2);
        QuantityKind measure = f.kindBeside(size, job.coverage().overlapAreaM2());
        String usual = f.areaBeside(size, job.coverage().overlapAreaM2());
        String denied = f.valueWithin(measure, size, size - figures.halfM2(), size + figures.halfM2());
        return (denied.length() < usual.length() ? denied : usual) + less(lessM2) + " " + what;
    }

    /** A slope fitted to noisy turns: it has no tenths. */
    private String wholePercent(double share) {
        return f.fixed(100 * share, 0) + "%";
    }

    private String money(double[] savedL) {
        List<String> parts = new ArrayList<>();
        Map<String, Double> half = figures.money(halves(savedL));
        figures.money(savedL).forEach((currency, amount) -> {
            int places = half.getOrDefault(currency, 0.0) >= 0.5 ? 0 : 2;
            parts.add(f.fixed(Math.abs(amount), places) + "\u00a0" + currency + less(amount));
        });
        return parts.isEmpty() ? DASH : String.join(", ", parts);
    }

    private static String less(double saved) {
        return saved >= 0 ? " less" : " more";
    }

    private static String capital(String text) {
        return Character.toUpperCase(text.charAt(0)) + text.substring(1);
    }
}
