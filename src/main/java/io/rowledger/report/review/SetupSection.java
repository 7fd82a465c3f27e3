package io.rowledger.report.review;

import io.rowledger.analysis.CorrectedRun;
import io.rowledger.analysis.SetupReview;
import io.rowledger.coverage.Coverage;
import io.rowledger.diagnose.setup.SetupMeasurement;
import io.rowledger.diagnose.setup.SetupParameter;
import io.rowledger.document.text.Messages;
import io.rowledger.document.text.Wording;
import io.rowledger.report.common.Fact;
import io.rowledger.report.review.PassReview.Setup;
import io.rowledger.report.review.PassReview.SetupLine;
import io.rowledger.report.review.PassReview.SetupSide;
import io.rowledger.rig.Product;
import io.rowledger.rig.RigCorrection;
import io.rowledger.units.Factor;
import io.rowledger.units.UnitFormat;
import io.rowledger.units.UnitSystem;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** What the log says about the setup, for the person who holds the tape measure. */
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
            return "The log can't say whether the setup is right.";
        }
        if (differing.isEmpty()) {
            return untold.isEmpty()
                    ? "Nothing in the log contradicts the rig file."
                    : "What the log can tell, " + told.size() + " of "
                            + Wording.counted(told.size() + untold.size(), "measure", "measures")
                            + ", does not contradict the rig file.";
        }
        List<String> names = differing.stream()
                .map(m -> name(m).substring(0, 1).toLowerCase(Locale.ROOT) + name(m).substring(1))
                .toList();
        return "The log contradicts the rig file in " + Wording.counted(names.size(), "measure", "measures") + ": "
                + String.join("; ", names) + ". " + first(differing);
    }

    /** A tape tells lengths and nothing else. */
    private static String first(List<SetupMeasurement> differing) {
        boolean lengths = differing.stream().anyMatch(m -> switch (m.parameter()) {
            case DROP_OFFSET, SIDE_OFFSET, ANTENNA_AHEAD, HITCH_TO_WHEELS -> true;
            case FLOW_LAG, OUTSIDE_SHARE, ROW_ORDER -> false;
        });
        return lengths
                ? "Measure with a tape before changing anything."
                : "Check at the machine before changing anything; the row diagnosis says how.";
    }

    private String sidesSummary() {
        if (setup.corrected() != null) {
            return "The ground was laid out a second time with the log's figures in place of the rig file's. "
                    + SetupReview.CORRECTED_FILE
                    + ", beside this review, is your rig file with only those figures replaced; your own file"
                    + " is as it was, and every other figure of this review rests on it.";
        }
        if (setup.correction().lines().isEmpty()) {
            return setup.check().changes().isEmpty()
                    ? ""
                    : "The rig file can't be corrected as it is written, or not to such a figure; what would change stands"
                            + " below.";
        }
        return "Run the report again with --apply-setup-check to see the ground as these figures would lay it out.";
    }

    private SetupLine line(SetupMeasurement m) {
        RigCorrection.Line line = setup.line(m);
        String change = "";
        if (line != null) {
            String path = "Line " + line.line() + " of the rig file, " + line.path()
                    + (m.parameter() == SetupParameter.SIDE_OFFSET ? ", left is negative: " : ": ");
            change = path + (line.before().isEmpty() ? "a new line, " : "from " + line.before() + " to ") + line.after()
                    + ".";
        } else if (m.differs()) {
            change = "In the rig file: " + m.key() + ".";
        }
        double half = (m.high() - m.low()) / 2;
        return new SetupLine(
                name(m),
                figure(m, m.given(), half),
                figure(m, m.estimate(), half),
                m.determined() ? figure(m, m.low(), half) + " to " + figure(m, m.high(), half) : "",
                m.differs() ? "differs" : "agrees",
                m.differs() ? "act" : "",
                change,
                messages.text(m.basis()),
                messages.text(m.alternative()));
    }

    private String name(SetupMeasurement m) {
        String product = m.product() >= 0 && products.size() > 1
                ? ", " + products.get(m.product()).name()
                : "";
        return switch (m.parameter()) {
            case FLOW_LAG -> "How much later the meters show the flow" + product;
            case DROP_OFFSET -> "Hitch pin back to the drop line";
            case SIDE_OFFSET -> "Bar aside of the tractor's center line";
            case ANTENNA_AHEAD -> "Rear axle forward to the antenna";
            case HITCH_TO_WHEELS -> "Hitch pin back to the bar's wheels";
            case OUTSIDE_SHARE -> "Width of each outside outlet, in rows";
            case ROW_ORDER -> "Which meter belongs to which row";
        };
    }

    /** A measure as it is taken: feet and inches or meters, no finer than its interval bears. */
    private String figure(SetupMeasurement m, double si, double half) {
        if (!Double.isFinite(si)) {
            return "\u2013";
        }
        if (m.parameter() == SetupParameter.FLOW_LAG) {
            return f.fixed(si, 2) + "\u00a0s";
        }
        if (m.parameter() == SetupParameter.OUTSIDE_SHARE) {
            return f.fixed(si, 2);
        }
        if (m.parameter() == SetupParameter.SIDE_OFFSET) {
            String size = length(Math.abs(si), half);
            return size.equals(length(0, half)) ? size : size + (si < 0 ? " left" : " right");
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
        sides.add(side("Skipped", before.skipAreaM2(), after.skipAreaM2(), most));
        sides.add(side("Doubled", before.overlapAreaM2(), after.overlapAreaM2(), most));
        sides.add(side("Covered", before.coveredAreaM2(), after.coveredAreaM2(), most));
        for (int p = 0; p < products.size(); p++) {
            double was = before.received().get(p).within10Pct();
            double is = after.received().get(p).within10Pct();
            String of = products.size() > 1 ? ", " + products.get(p).name() : "";
            sides.add(new SetupSide(
                    "Covered ground within 10% of target" + of, f.percent(was), f.percent(is), points(was - is)));
        }
        return sides;
    }

    private String points(double off) {
        return Double.isFinite(off)
                ? f.fixed(Math.abs(off), 1) + " points" + (off < 0 ? " too few" : off > 0 ? " too many" : "")
                : "\u2013";
    }

    private SetupSide side(String what, double before, double after, double most) {
        String made = f.areaBeside(Math.abs(before - after), most);
        return new SetupSide(
                what,
                f.areaBeside(before, most),
                f.areaBeside(after, most),
                before == after ? made : made + (before > after ? " too much" : " too little"));
    }
}
