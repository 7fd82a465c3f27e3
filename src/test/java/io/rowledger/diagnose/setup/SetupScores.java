package io.rowledger.diagnose.setup;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;

/** Counts how near the measures come, how often their intervals hold the truth and how often a right setup is called wrong. */
final class SetupScores {
    private static final Map<SetupParameter, Double> BOUND =
            Map.of(SetupParameter.FLOW_LAG, 0.15, SetupParameter.DROP_OFFSET, 0.15, SetupParameter.SIDE_OFFSET, 0.04);

    /** skip and overlap is to come as near to the right setup's as this share. */
    private static final double NEAR = 0.1;

    /** One line of the table. */
    private static final class Line {
        private int all;
        private int told;
        private int within;
        private int held;
        private int differs;
        private double squares;
    }

    private final Map<String, Line> wrong = new TreeMap<>();
    private final List<String> far = new ArrayList<>();
    private final List<Double> skipOff = new ArrayList<>();
    private final List<Double> doubleOff = new ArrayList<>();
    private final List<Double> perEndM2 = new ArrayList<>();
    private final Map<String, int[]> within = new TreeMap<>();
    private double wrongOffM2;
    private double correctedOffM2;
    private double rightM2;
    private int rightSetups;
    private int rightCalledWrong;

    /** Measures read with the wrong rig file, and with the right one. */
    void add(RandomSetup.Drawn d, SetupCheck ofWrong, SetupCheck ofRight) {
        for (SetupMeasurement m : ofWrong.measurements()) {
            Double bound = BOUND.get(m.parameter());
            if (bound == null) {
                continue;
            }
            double truth =
                    switch (m.parameter()) {
                        case FLOW_LAG -> d.lagS();
                        case DROP_OFFSET -> d.dropM();
                        default -> d.barRightM();
                    };
            String rate = d.rateHz() < 1.5 ? ", 1 Hz" : ", 2 to 10 Hz";
            String receiver = d.rtk() ? " RTK" : " differential";
            String speeds = d.severalSpeeds() ? ", several speeds" : ", one speed";
            List<String> groups = m.parameter() == SetupParameter.DROP_OFFSET
                    ? List.of("", speeds, receiver, receiver + rate, receiver + speeds)
                    : List.of("", receiver, receiver + rate);
            for (String of : groups) {
                Line line = wrong.computeIfAbsent(m.parameter().jsonName() + of, k -> new Line());
                count(line, m, truth, bound);
            }
            if (System.getProperty("setup.details") != null && m.parameter() == SetupParameter.DROP_OFFSET) {
                System.out.printf(
                        Locale.ROOT,
                        "%d %s %s %.0f Hz %s: given %.2f true %.2f log %.2f sigma %.2f%n",
                        d.seed(),
                        d.layout(),
                        d.rtk() ? "RTK" : "differential",
                        d.rateHz(),
                        d.severalSpeeds() ? "several speeds" : "one speed",
                        m.given(),
                        truth,
                        m.estimate(),
                        (m.high() - m.low()) / 2 / Estimate.Z90);
            }
            if (m.determined() && Math.abs(m.estimate() - truth) > 2 * bound) {
                far.add(String.format(
                        Locale.ROOT,
                        "%s %s: %.3f for %.3f",
                        d.seed(),
                        m.parameter().jsonName(),
                        m.estimate(),
                        truth));
            }
        }
        rightSetups++;
        if (!ofRight.differing().isEmpty()) {
            rightCalledWrong++;
            far.add(d.seed() + " right, but called wrong: " + ofRight.differing());
        }
    }

    private static void count(Line line, SetupMeasurement m, double truth, double bound) {
        line.all++;
        if (!m.determined()) {
            return;
        }
        line.told++;
        line.within += Math.abs(m.estimate() - truth) <= bound ? 1 : 0;
        line.held += truth >= m.low() && truth <= m.high() ? 1 : 0;
        line.differs += m.differs() ? 1 : 0;
        line.squares += (m.estimate() - truth) * (m.estimate() - truth);
    }

    /** skip and overlap by a setup with such figures, and by the right one, m². */
    void swapped(String figures, double[] by, double[] byRight) {
        int[] counts = within.computeIfAbsent(figures, k -> new int[2]);
        for (int i = 0; i < 2; i++) {
            counts[i] += Math.abs(by[i] - byRight[i]) <= NEAR * byRight[i] ? 1 : 0;
        }
    }

    /** skip and overlap by the wrong setup, by the corrected one and by the right one, m². */
    void ground(double[] byWrong, double[] byCorrected, double[] byRight, int passes) {
        double sum = 0;
        for (int i = 0; i < 2; i++) {
            double off = Math.abs(byCorrected[i] - byRight[i]);
            (i == 0 ? skipOff : doubleOff).add(off / byRight[i]);
            wrongOffM2 += Math.abs(byWrong[i] - byRight[i]);
            correctedOffM2 += off;
            rightM2 += byRight[i];
            sum += off;
        }
        perEndM2.add(sum / (2 * passes));
    }

    String table(String title) {
        StringBuilder b = new StringBuilder(title).append('\n');
        b.append(String.format(
                Locale.ROOT,
                "%-44s %6s %6s %8s %9s %8s %9s%n",
                "measure",
                "jobs",
                "told",
                "rms",
                "in bound",
                "90 held",
                "differs"));
        wrong.forEach((name, line) -> b.append(String.format(
                Locale.ROOT,
                "%-44s %6d %6d %8.3f %7.1f %% %6.1f %% %9d%n",
                name,
                line.all,
                line.told,
                Math.sqrt(line.squares / line.told),
                100.0 * line.within / line.told,
                100.0 * line.held / line.told,
                line.differs)));
        b.append(String.format(Locale.ROOT, "right setups called wrong: %d of %d%n", rightCalledWrong, rightSetups));
        if (!skipOff.isEmpty()) {
            b.append(String.format(
                    Locale.ROOT,
                    "skip within 10 %% of the right setup's: %d of %d, double: %d; median off %.1f %% and %.1f %%%n",
                    near(skipOff),
                    skipOff.size(),
                    near(doubleOff),
                    100 * median(skipOff),
                    100 * median(doubleOff)));
            b.append(String.format(
                    Locale.ROOT,
                    "all jobs together: right setups have %.0f m2 of skip and overlap, the wrong ones are off by %.0f m2, the"
                            + " corrected ones by %.0f m2, %.1f %% of the right ones': %.1f %% of it is gone%n",
                    rightM2,
                    wrongOffM2,
                    correctedOffM2,
                    100 * correctedOffM2 / rightM2,
                    100 * (1 - correctedOffM2 / wrongOffM2)));
            b.append(String.format(
                    Locale.ROOT,
                    "skip and overlap off by a median of %.2f m2 at each end of a pass%n",
                    median(perEndM2)));
            within.forEach((figures, counts) -> b.append(
                    String.format(Locale.ROOT, "  with %-44s skip %d, double %d%n", figures, counts[0], counts[1])));
        }
        return b.toString();
    }

    private static int near(List<Double> off) {
        return (int) off.stream().filter(x -> x <= NEAR).count();
    }

    private static double median(List<Double> values) {
        return values.stream().sorted().skip(values.size() / 2).findFirst().orElse(Double.NaN);
    }

    List<String> far() {
        return far;
    }

    /** Share of the false ground that the correction took away. */
    double removed() {
        return 1 - correctedOffM2 / wrongOffM2;
    }

    /** What of the promises is broken, in words; intervals are held against theirs only where enough were seen. */
    List<String> broken(double leastWithin, int enough) {
        List<String> broken = new ArrayList<>();
        for (String name : List.of("flow_lag", "side_offset RTK")) {
            Line line = wrong.getOrDefault(name, new Line());
            if (line.within < leastWithin * line.told || line.told == 0) {
                broken.add(name + " within its bound in " + line.within + " of " + line.told);
            }
        }
        for (String name : List.of("flow_lag", "drop_offset", "side_offset")) {
            Line line = wrong.getOrDefault(name, new Line());
            double held = (double) line.held / line.told;
            if (line.told >= enough && (held < 0.85 || held > 0.95)) {
                broken.add(name + " intervals hold the truth in " + line.held + " of " + line.told);
            }
        }
        // At one speed no log tells a length from a habit; at several it does, as far as its interval says.
        Line oneSpeed = wrong.getOrDefault("drop_offset, one speed", new Line());
        if (oneSpeed.differs > 0) {
            broken.add(oneSpeed.differs + " lengths contradicted at one speed");
        }
        if (wrong.getOrDefault("drop_offset, several speeds", new Line()).differs == 0) {
            broken.add("no length contradicted at several speeds");
        }
        if (50 * rightCalledWrong > Math.max(50, rightSetups)) {
            broken.add(rightCalledWrong + " of " + rightSetups + " right setups called wrong");
        }
        return broken;
    }
}
