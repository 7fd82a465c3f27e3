package io.rowledger.diagnose;

import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.document.text.Messages;
import io.rowledger.finding.Finding;
import io.rowledger.finding.FindingKind;
import io.rowledger.sim.CurvePlan;
import io.rowledger.sim.FieldPlan;
import io.rowledger.sim.GnssModel;
import io.rowledger.sim.LogFormat;
import io.rowledger.sim.MeteringModel;
import io.rowledger.sim.PassPlan;
import io.rowledger.sim.Scenario;
import io.rowledger.sim.SimFault;
import io.rowledger.sim.SimRig;
import io.rowledger.sim.TargetMap;
import io.rowledger.text.Message;
import io.rowledger.units.UnitFormat;
import io.rowledger.units.UnitSystem;
import java.nio.file.Path;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Locale;

/** A small eight-row job with known faults: six passes of some 70 s, RTK at 5 Hz, 1 % meters. */
public final class FaultField {
    public static final int ROWS = 8;
    public static final double WORK_MPS = 2.3;

    /** In the middle of the second pass. */
    public static final double ONSET_S = 130;

    private static final double LENGTH_M = 160;
    private static final SimRig RIG = SimRig.drawn(ROWS);

    private FieldPlan.Layout layout = PassPlan.rectangle(LENGTH_M, 6, 0, RIG.widthM());
    private MeteringModel metering = MeteringModel.perRow().withShutOff(false);
    private TargetMap targets = TargetMap.constant();
    private LogFormat format = LogFormat.customaryUnits();

    public FaultField onArcs() {
        layout = CurvePlan.arcs(40, LENGTH_M, 6);
        return this;
    }

    /** Three rounds of the rear axle on a circle of this radius, clockwise. */
    public FaultField onCircle(double radiusM) {
        layout = CurvePlan.circle(radiusM, 3, WORK_MPS);
        return this;
    }

    public FaultField onLaps() {
        layout = PassPlan.field(new double[][] {{0, 0}, {170, 20}, {185, 60}, {10, 62}}, 1);
        metering = metering.withShutOff(true);
        return this;
    }

    public FaultField metering(MeteringModel value) {
        metering = value;
        return this;
    }

    public FaultField targetSteps() {
        targets = TargetMap.steps(0.3, 40, 1, 0.8, 1.2);
        return this;
    }

    public FaultField logging(LogFormat.Column... more) {
        format = format.with(more);
        return this;
    }

    /** Seconds since the Unix epoch of the first record. */
    public static double startS() {
        return new Scenario(1, RIG, PassPlan.rectangle(LENGTH_M, 1, 0, RIG.widthM()))
                .site()
                .startEpochS();
    }

    public Diagnosis with(Path folder, SimFault... faults) {
        write(folder, faults);
        return JobOnDisk.of(folder);
    }

    /** Writes {@code log.csv} and {@code rig.yaml}. */
    public void write(Path folder, SimFault... faults) {
        Scenario scenario = new Scenario(71, RIG, layout)
                .gnss(GnssModel.rtk(5))
                .metering(metering)
                .targets(targets)
                .format(format)
                .withoutGround();
        for (SimFault fault : faults) {
            scenario.fault(fault);
        }
        scenario.run().writeTo(folder);
    }

    /** The only finding, of this kind and these rows, fit to be printed. */
    public static Finding only(Diagnosis diagnosis, FindingKind kind, Integer... rows) {
        assertTrue(
                diagnosis.findings().size() == 1
                        && diagnosis.findings().get(0).kind() == kind
                        && diagnosis.findings().get(0).rows().equals(List.of(rows)),
                () -> "expected only " + kind + List.of(rows) + ", found " + brief(diagnosis));
        Finding found = diagnosis.findings().get(0);
        assertTrue(found.confidence() > 0.5 && found.confidence() < 1);
        assertTrue(text(found.evidence()).matches("(?s).*\\d.*"), text(found.evidence()));
        assertTrue(
                text(found.alternative()).length() > 20 && text(found.check()).length() > 20);
        // Whatever is opened, taken apart or cleaned comes after the caution.
        String check = text(found.check()).toLowerCase(Locale.ROOT);
        for (String touching : List.of("strainer", "orifice", "knife", "tighten")) {
            int at = check.indexOf(touching);
            assertTrue(at < 0 || check.lastIndexOf("pressure released", at) >= 0, check);
        }
        OnsetWindow window = diagnosis.windows().get(0);
        assertTrue(window.timeS().length > 20 && window.timeS().length == window.flowLPerS().length);
        assertTrue(Math.abs(found.latDeg()) > 1 && Math.abs(found.lonDeg()) > 1);
        return found;
    }

    static String text(Message message) {
        return Messages.english(new UnitFormat(UnitSystem.US, ZoneOffset.UTC)).text(message);
    }

    public static String brief(Diagnosis diagnosis) {
        StringBuilder b = new StringBuilder();
        for (Finding f : diagnosis.findings()) {
            b.append(f.kind())
                    .append(f.rows())
                    .append(' ')
                    .append(text(f.evidence()))
                    .append('\n');
        }
        return b.toString();
    }
}
