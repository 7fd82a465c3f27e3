package io.rowledger.diagnose;

import io.rowledger.diagnose.signal.Case;
import io.rowledger.diagnose.signal.LogLimits;
import io.rowledger.finding.FindingKind;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Properties;

/**
 * From what a detector states to the share of such findings that are right: logistic calibration (J. Platt, Probabilistic outputs
 * for support vector machines, Advances in Large Margin Classifiers, 1999, 61-74) with what the log resolves as further inputs.
 * <pre>
 * p = 1 / (1 + exp(−(base + kind + level · ln(c / (1 − c)) + Σ form·x)))
 * </pre>
 * c is the stated confidence; x are the rounding step over the usual flow (at most 1), averaging and hold over 5 s, the interval
 * over 5 s (both at most 1), and 1 for a log without a work state. p rises with c and falls with each x. The coefficients stand in
 * {@code confidence.properties}, which names the simulated logs they were fitted on; a normal prior shrinks
 * kinds that were seldom seen there toward the mean of all kinds. Values are kept between {@value #MIN} and {@value #MAX}: no finite set of logs shows
 * more.
 */
final class Calibration {
    static final double MIN = 0.3;
    static final double MAX = 0.98;

    /** Names of the inputs that describe the form of a log, in order. */
    static final List<String> FORMS = List.of("rounding", "smear", "interval", "noWorkState");

    private static final double FULL_S = 5;

    private final boolean none;
    private final double base;
    private final double level;
    private final Map<FindingKind, Double> kinds;
    private final double[] forms;

    private Calibration(boolean none, double base, double level, Map<FindingKind, Double> kinds, double[] forms) {
        this.none = none;
        this.base = base;
        this.level = level;
        this.kinds = kinds;
        this.forms = forms;
    }

    /** Leaves confidences as the detectors state them. */
    static Calibration none() {
        return new Calibration(true, 0, 1, Map.of(), new double[FORMS.size()]);
    }

    /** The coefficients that come with the program. */
    static Calibration fitted() {
        Properties p = new Properties();
        try (InputStream in = Calibration.class.getResourceAsStream("confidence.properties")) {
            if (in == null) {
                throw new IllegalStateException("confidence.properties is missing");
            }
            p.load(in);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        Map<FindingKind, Double> kinds = new EnumMap<>(FindingKind.class);
        for (FindingKind kind : FindingKind.values()) {
            kinds.put(kind, value(p, "kind." + kind.jsonName()));
        }
        double[] forms =
                FORMS.stream().mapToDouble(name -> value(p, "form." + name)).toArray();
        return new Calibration(false, value(p, "base"), value(p, "level"), kinds, forms);
    }

    /** A coefficient; 0 for a kind that was never seen. */
    private static double value(Properties p, String key) {
        return Double.parseDouble(p.getProperty(key, "0"));
    }

    /** The inputs that describe the form of a log, each from 0 to 1, in the order of {@link #FORMS}. */
    static double[] form(LogLimits limits, boolean workState) {
        return new double[] {
            Math.min(1, limits.resolution()),
            Math.min(1, limits.smearS() / FULL_S),
            Math.min(1, limits.intervalS() / FULL_S),
            workState ? 0 : 1
        };
    }

    /** Returns the case with its calibrated confidence. */
    Case of(Case found, double[] form) {
        return none ? found : found.withConfidence(confidence(found.kind(), found.confidence(), form));
    }

    /** Share of such findings that are right (1). */
    double confidence(FindingKind kind, double stated, double[] form) {
        double sum = base + kinds.getOrDefault(kind, 0.0) + level * Math.log(stated / (1 - stated));
        for (int i = 0; i < forms.length; i++) {
            sum += forms[i] * form[i];
        }
        return Math.max(MIN, Math.min(MAX, 1 / (1 + Math.exp(-sum))));
    }
}
