package io.rowledger.report.review;

import io.rowledger.coverage.sections.Grouping;
import io.rowledger.coverage.sections.ShutOffCase;
import io.rowledger.document.text.Messages;
import io.rowledger.finding.FindingKind;
import io.rowledger.rate.TurnShift;
import io.rowledger.report.common.JobView;
import io.rowledger.report.common.Limits;
import io.rowledger.report.review.WhatIfSection.Line;
import io.rowledger.rig.Product;
import io.rowledger.text.Argument;
import io.rowledger.text.Message;
import io.rowledger.units.QuantityKind;
import io.rowledger.units.UnitFormat;
import io.rowledger.whatif.WhatIf;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** Builds the what-if section: the one place where its figures are rounded and labeled. */
final class WhatIfWriter {
    private static final String DASH = "\u2013";
    /** Fraction of the saved ground from which ground passed at an unknown angle of the bar is mentioned. */
    private static final double MIN_UNSETTLED_SHARE = 0.1;

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
                messages.text("review.whatIf.cannotKnow"));
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
            Message why = mostM2 > 0
                    ? Message.of("review.whatIf.noGainGround", Message.area(mostM2), Message.area(figures.halfM2()))
                    : Message.of("review.whatIf.noGainNever");
            notShown.add(messages.text("review.whatIf.noGain", capital(String.join("; ", same)), why));
        }
    }

    private void shutOff(ShutOffCase one, boolean first) {
        double groundM2 = one.overlapLessM2() + one.outsideLessM2();
        lines.add(new Line(
                capital(name(one.grouping())),
                liquids(one.savedL()),
                nitrogen(one.savedL()),
                ground(one.overlapLessM2(), "review.whatIf.twiceLess", "review.whatIf.twiceMore")
                        + (one.outsideLessM2() > figures.halfM2()
                                ? ", "
                                        + ground(
                                                one.outsideLessM2(),
                                                "review.whatIf.outsideLess",
                                                "review.whatIf.outsideMore")
                                : ""),
                money(one.savedL())));
        if (first) {
            assumes.add(messages.text(
                    job.coverage().boundary() == null
                            ? "review.whatIf.shutOffAssumes"
                            : "review.whatIf.shutOffAssumesBoundary"));
        }
        if (one.grouping().kind() == Grouping.Kind.ROWS) {
            if (one.uncoveredM2() > figures.halfM2()) {
                assumes.add(messages.text("review.whatIf.uncovered", Message.area(one.uncoveredM2())));
            }
            if (one.offUnsettledM2() > MIN_UNSETTLED_SHARE * Math.abs(groundM2)) {
                assumes.add(messages.text("review.whatIf.unsettled", Message.area(one.offUnsettledM2())));
            }
        }
    }

    private String name(Grouping grouping) {
        String key =
                switch (grouping.kind()) {
                    case ROWS -> "review.whatIf.rows";
                    case RIG_FILE -> "review.whatIf.groups";
                    case QUARTERS -> "review.whatIf.quarters";
                    case HALVES -> "review.whatIf.halves";
                    case NONE -> "review.whatIf.none";
                };
        return messages.text(key, grouping.rows().size());
    }

    private void turn(int p, TurnShift turn) {
        List<Product> products = job.rig().products();
        String name = products.size() > 1
                ? messages.text("review.whatIf.turnOf", products.get(p).name())
                : messages.text("review.whatIf.turn");
        Argument takenOut = Message.decimal(100 * turn.takenOut(), 0);
        Argument limit = Limits.wholePct(Limits.WATCH_PCT);
        if (!turn.known()) {
            notShown.add(messages.text("review.whatIf.turnUnknown", name));
        } else if (figures.shows(turn)) {
            double[] moved = new double[products.size()];
            moved[p] = turn.movedL();
            lines.add(new Line(
                    name,
                    messages.text("review.whatIf.moved", Message.value(QuantityKind.VOLUME, turn.movedL())),
                    nitrogenOf(moved, "review.whatIf.movedShort"),
                    messages.text(
                            "review.whatIf.turnGround",
                            Message.area(turn.beyond5M2(), job.coverage().coveredAreaM2()),
                            limit),
                    DASH));
            assumes.add(messages.text("review.whatIf.turnAssumes", name, takenOut));
        } else {
            notShown.add(
                    turn.beyond5M2() > 0
                            ? messages.text(
                                    "review.whatIf.turnNoGain", name, takenOut, Message.area(turn.beyond5M2()), limit)
                            : messages.text("review.whatIf.turnNoGainAtAll", name, takenOut, limit));
        }
    }

    private void slower(WhatIf.Slower one) {
        double[] gained = new double[job.rig().products().size()];
        gained[one.product()] = -one.gainedL();
        lines.add(new Line(
                messages.text("review.whatIf.speed", Message.value(QuantityKind.SPEED, one.holdsMps())),
                liquids(gained),
                nitrogen(gained),
                messages.text(
                        "review.whatIf.speedGround",
                        Message.area(one.areaM2(), job.coverage().coveredAreaM2()),
                        Message.duration(one.extraS())),
                money(gained)));
        assumes.add(messages.text("review.whatIf.speedAssumes", Message.value(QuantityKind.SPEED, one.drivenMps())));
    }

    private void inTime(WhatIf.InTime one) {
        double[] gained = new double[job.rig().products().size()];
        gained[one.product()] = -one.gainedL();
        boolean on = one.kind() == FindingKind.LATE_ON;
        boolean all = one.rows().isEmpty() || one.rows().size() == job.rig().rows();
        Message name = Message.of(on ? "review.whatIf.onInTime" : "review.whatIf.offInTime");
        lines.add(new Line(
                all
                        ? messages.text("review.whatIf.allRows", name)
                        : messages.text("review.whatIf.someRows", name, one.rows()),
                liquids(gained),
                nitrogen(gained),
                messages.text(
                        "review.whatIf.lessSkipped",
                        Message.area(one.areaM2(), job.coverage().coveredAreaM2())),
                money(gained)));
        assumes.add(messages.text("review.whatIf.inTimeAssumes", name));
    }

    /** {@code 29 gal less}; of several products each with its name. */
    private String liquids(double[] savedL) {
        List<String> parts = new ArrayList<>();
        for (int p = 0; p < savedL.length; p++) {
            String name = savedL.length > 1 ? " " + job.rig().products().get(p).name() : "";
            if (!Double.isFinite(savedL[p])) {
                parts.add(f.unknown() + name);
            } else if (savedL[p] != 0) {
                double half = figures.halfL(p, savedL[p]);
                double size = Math.abs(savedL[p]);
                parts.add(messages.text(lessKey(savedL[p]), within(QuantityKind.VOLUME, size, half) + name));
            }
        }
        return parts.isEmpty() ? DASH : String.join(", ", parts);
    }

    private String nitrogen(double[] savedL) {
        return nitrogenOf(savedL, lessKey(figures.nitrogenKg(savedL)));
    }

    private String nitrogenOf(double[] litres, String key) {
        double size = Math.abs(figures.nitrogenKg(litres));
        double half = Math.abs(figures.nitrogenKg(halves(litres)));
        return Double.isFinite(size) ? messages.text(key, within(QuantityKind.NITROGEN, size, half)) : f.unknown();
    }

    /** The value without digits below its uncertainty, and never with more digits than its kind has. */
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

    private String ground(double lessM2, String lessKey, String moreKey) {
        double size = Math.abs(lessM2);
        QuantityKind measure = f.kindBeside(size, job.coverage().overlapAreaM2());
        String usual = f.areaBeside(size, job.coverage().overlapAreaM2());
        String denied = f.valueWithin(measure, size, size - figures.halfM2(), size + figures.halfM2());
        return messages.text(lessM2 >= 0 ? lessKey : moreKey, denied.length() < usual.length() ? denied : usual);
    }

    private String money(double[] savedL) {
        List<String> parts = new ArrayList<>();
        Map<String, Double> half = figures.money(halves(savedL));
        figures.money(savedL).forEach((currency, amount) -> {
            int places = half.getOrDefault(currency, 0.0) >= 0.5 ? 0 : 2;
            parts.add(messages.text(lessKey(amount), f.fixed(Math.abs(amount), places) + "\u00a0" + currency));
        });
        return parts.isEmpty() ? DASH : String.join(", ", parts);
    }

    private static String lessKey(double saved) {
        return saved >= 0 ? "review.whatIf.less" : "review.whatIf.more";
    }

    private static String capital(String text) {
        return Character.toUpperCase(text.charAt(0)) + text.substring(1);
    }
}
