package io.rowledger.report.review;

import io.rowledger.analysis.CorrectedRun;
import io.rowledger.analysis.SetupReview;
import io.rowledger.coverage.Coverage;
import io.rowledger.diagnose.setup.SetupMeasurement;
import io.rowledger.diagnose.setup.SetupParameter;
import io.rowledger.document.text.Messages;
import io.rowledger.report.common.Fact;
import io.rowledger.report.common.Limits;
import io.rowledger.report.review.PassReview.Setup;
import io.rowledger.report.review.PassReview.SetupLine;
import io.rowledger.report.review.PassReview.SetupSide;
import io.rowledger.rig.Product;
import io.rowledger.rig.RigCorrection;
import io.rowledger.text.Message;
import io.rowledger.units.Factor;
import io.rowledger.units.UnitFormat;
import io.rowledger.units.UnitSystem;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Builds the section on the setup: the lengths of the rig file against what the log shows. */
final class SetupSection {
    private static final int INCHES_PER_FOOT = 12;

    private final SetupReview setup;
    private final List<Product> products;
    private final Coverage before;
    private final Messages messages;
    private final UnitFormat f;

    /** The section of a job whose coverage by the rig file is {@code coverage}. */
    SetupSection(SetupReview setup, List<Product> products, Coverage coverage, Messages messages) {
        this.setup = setup;
        this.products = products;
        this.before = coverage;
        this.messages = messages;
        this.f = messages.units();
    }

    Setup build() {
        List<SetupLine> told = new ArrayList<>();
        List<Fact> untold = new ArrayList<>();
        for (SetupMeasurement m : setup.check().measurements()) {
            if (m.determined() || m.differs()) {
                told.add(line(m));
            } else {
                untold.add(new Fact(name(m), messages.text(m.basis())));
            }
        }
        CorrectedRun run = setup.corrected();
        return new Setup(
                summary(told, untold), told, untold, run == null ? List.of() : sides(run.coverage()), sidesSummary());
    }

    private String summary(List<SetupLine> told, List<Fact> untold) {
        List<SetupMeasurement> differing = setup.check().differing();
        if (told.isEmpty()) {
            return messages.text("review.setup.nothingTold");
        }
        if (differing.isEmpty()) {
            return untold.isEmpty()
                    ? messages.text("review.setup.agrees")
                    : messages.text("review.setup.agreesPartly", told.size(), told.size() + untold.size());
        }
        List<String> names = differing.stream()
                .map(m -> name(m).substring(0, 1).toLowerCase(Locale.ROOT) + name(m).substring(1))
                .toList();
        return messages.text("review.setup.contradicts", names.size(), String.join("; ", names), first(differing));
    }

    /** What to do first: a tape measures lengths and nothing else. */
    private static Message first(List<SetupMeasurement> differing) {
        boolean lengths = differing.stream().anyMatch(m -> switch (m.parameter()) {
            case DROP_OFFSET, SIDE_OFFSET, ANTENNA_AHEAD, HITCH_TO_WHEELS -> true;
            case FLOW_LAG, OUTSIDE_SHARE, ROW_ORDER -> false;
        });
        return Message.of(lengths ? "review.setup.measureFirst" : "review.setup.checkFirst");
    }

    private String sidesSummary() {
        if (setup.corrected() != null) {
            return messages.text("review.setup.corrected", SetupReview.CORRECTED_FILE);
        }
        if (setup.correction().lines().isEmpty()) {
            return setup.check().changes().isEmpty() ? "" : messages.text("review.setup.notCorrectable");
        }
        return messages.text("review.setup.runAgain");
    }

    private SetupLine line(SetupMeasurement m) {
        double half = (m.high() - m.low()) / 2;
        return new SetupLine(
                name(m),
                figure(m, m.given(), half),
                figure(m, m.estimate(), half),
                m.determined()
                        ? messages.text("review.setup.between", figure(m, m.low(), half), figure(m, m.high(), half))
                        : "",
                messages.text(m.differs() ? "review.setup.differs" : "review.setup.agreesShort"),
                m.differs() ? "act" : "",
                change(m),
                messages.text(m.basis()),
                messages.text(m.alternative()),
                m.key());
    }

    private String change(SetupMeasurement m) {
        RigCorrection.Line line = setup.line(m);
        if (line == null) {
            return m.differs() ? messages.text("review.setup.changeKey", m.key()) : "";
        }
        Message where = Message.of(
                m.parameter() == SetupParameter.SIDE_OFFSET ? "review.setup.lineSide" : "review.setup.line",
                line.line(),
                line.path());
        return line.before().isEmpty()
                ? messages.text("review.setup.changeNew", where, line.after())
                : messages.text("review.setup.change", where, line.before(), line.after());
    }

    private String name(SetupMeasurement m) {
        String name = messages.text("review.parameter." + m.parameter().name().toLowerCase(Locale.ROOT));
        return m.parameter() == SetupParameter.FLOW_LAG && m.product() >= 0 && products.size() > 1
                ? messages.text(
                        "review.setup.ofProduct",
                        name,
                        products.get(m.product()).name())
                : name;
    }

    /** A measure as it is taken: feet and inches or meters, no finer than its interval bears. */
    private String figure(SetupMeasurement m, double si, double half) {
        if (!Double.isFinite(si)) {
            return "\u2013";
        }
        if (m.parameter() == SetupParameter.FLOW_LAG) {
            return messages.text("words.quality.seconds", Message.decimal(si, 2));
        }
        if (m.parameter() == SetupParameter.OUTSIDE_SHARE) {
            return f.fixed(si, 2);
        }
        if (m.parameter() == SetupParameter.SIDE_OFFSET) {
            String size = length(Math.abs(si), half);
            return size.equals(length(0, half))
                    ? size
                    : messages.text(si < 0 ? "review.setup.left" : "review.setup.right", size);
        }
        return length(si, half);
    }

    private String length(double si, double half) {
        return f.system() == UnitSystem.US ? feet(si, half) : f.fixed(si, 2) + "\u00a0m";
    }

    private String feet(double m, double half) {
        int parts = half < Factor.METRES_PER_INCH ? 4 : 2;
        long rounded = Math.round(Math.abs(m) / Factor.METRES_PER_INCH * parts);
        double inches = (double) rounded / parts;
        long feet = (long) (inches / INCHES_PER_FOOT);
        double rest = inches - feet * INCHES_PER_FOOT;
        String sign = m < 0 && rounded > 0 ? "\u2212" : "";
        int decimals = rest == Math.rint(rest) ? 0 : 2 * rest == Math.rint(2 * rest) ? 1 : 2;
        return sign + (feet > 0 ? feet + "\u00a0ft\u00a0" : "") + f.fixed(rest, decimals) + "\u00a0in";
    }

    private List<SetupSide> sides(Coverage after) {
        List<SetupSide> sides = new ArrayList<>();
        double most = Math.max(before.coveredAreaM2(), after.coveredAreaM2());
        sides.add(side("review.figure.skipped", before.skipAreaM2(), after.skipAreaM2(), most));
        sides.add(side("review.figure.overlap", before.overlapAreaM2(), after.overlapAreaM2(), most));
        sides.add(side("review.figure.covered", before.coveredAreaM2(), after.coveredAreaM2(), most));
        for (int p = 0; p < products.size(); p++) {
            double was = before.received().get(p).within10Pct();
            double is = after.received().get(p).within10Pct();
            String label = messages.text("review.received.within", Limits.wholePct(Limits.ACT_PCT));
            sides.add(new SetupSide(
                    products.size() > 1
                            ? messages.text(
                                    "review.setup.ofProduct",
                                    label,
                                    products.get(p).name())
                            : label,
                    f.percent(was),
                    f.percent(is),
                    points(was - is)));
        }
        return sides;
    }

    private String points(double off) {
        if (!Double.isFinite(off)) {
            return "\u2013";
        }
        String key = off < 0 ? "review.setup.pointsUnder" : off > 0 ? "review.setup.pointsOver" : "review.setup.points";
        return messages.text(key, Message.decimal(Math.abs(off), 1));
    }

    private SetupSide side(String labelKey, double before, double after, double most) {
        String made = f.areaBeside(Math.abs(before - after), most);
        return new SetupSide(
                messages.text(labelKey),
                f.areaBeside(before, most),
                f.areaBeside(after, most),
                before == after
                        ? made
                        : messages.text(before > after ? "review.setup.tooMuch" : "review.setup.tooLittle", made));
    }
}
