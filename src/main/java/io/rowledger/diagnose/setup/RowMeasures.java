package io.rowledger.diagnose.setup;

import io.rowledger.diagnose.Diagnosis;
import io.rowledger.diagnose.signal.RowBaseline;
import io.rowledger.finding.Finding;
import io.rowledger.finding.FindingKind;
import io.rowledger.rig.Hitch;
import io.rowledger.rig.Rig;
import io.rowledger.text.Message;
import java.util.List;

/** Setup parameters that the row detectors determine, outside share and row order, and the one that no log does, the wheels. */
final class RowMeasures {
    /** Scatter of meters of one kind from row to row, 1 sigma, as a share; common practice, no source. */
    private static final double METER_SIGMA = 0.02;

    private static final int MIN_ROWS = 4;

    private RowMeasures() {}

    /** Returns a parameter that a log without a meter for each row can't show. */
    static SetupMeasurement untold(SetupParameter parameter) {
        String key = parameter == SetupParameter.ROW_ORDER ? "columns" : "rows.outer_share";
        return SetupMeasurement.undetermined(parameter, -1, key, Double.NaN, Message.of("findings.setup.row.meters"));
    }

    static SetupMeasurement outsideShare(Rig rig, Diagnosis d) {
        String key = "rows.outer_share";
        int last = rig.rows() - 1;
        if (rig.rows() < MIN_ROWS) {
            return SetupMeasurement.undetermined(
                    SetupParameter.OUTSIDE_SHARE,
                    -1,
                    key,
                    Double.NaN,
                    Message.of("findings.setup.share.rows", MIN_ROWS));
        }
        double inside = rig.bands().get(1).widthM();
        double given = (rig.bands().get(0).widthM() + rig.bands().get(last).widthM()) / 2 / inside;
        Message alternative = Message.of("findings.setup.share.alternative");
        for (int i = 0; i < d.findings().size(); i++) {
            if (d.findings().get(i).kind() == FindingKind.OUTSIDE_SHARE) {
                double estimate = given * d.figures().get(i).get(0).value();
                double half = Estimate.Z90 * METER_SIGMA * estimate;
                return new SetupMeasurement(
                        SetupParameter.OUTSIDE_SHARE,
                        -1,
                        key,
                        given,
                        estimate,
                        estimate - half,
                        estimate + half,
                        true,
                        Message.of("findings.setup.share.differs"),
                        alternative);
            }
        }
        double sum = 0;
        int n = 0;
        for (RowBaseline row : d.baselines()) {
            boolean outside = row.row() == 1 || row.row() == rig.rows();
            if (outside && row.product() == 0 && row.evaluatedS() > 0) {
                sum += row.medianRatio();
                n++;
            }
        }
        if (n < 2) {
            return SetupMeasurement.undetermined(
                    SetupParameter.OUTSIDE_SHARE, -1, key, given, Message.of("findings.setup.share.unseen"));
        }
        double estimate = given * sum / n;
        double half = Estimate.Z90 * METER_SIGMA * estimate / Math.sqrt(n);
        return new SetupMeasurement(
                SetupParameter.OUTSIDE_SHARE,
                -1,
                key,
                given,
                estimate,
                estimate - half,
                estimate + half,
                false,
                Message.of("findings.setup.share.agrees"),
                alternative);
    }

    static SetupMeasurement rowOrder(Diagnosis d) {
        for (Finding finding : d.findings()) {
            if (finding.kind() == FindingKind.CHANNELS_SWAPPED && finding.rows().size() == 2) {
                int a = finding.rows().get(0);
                int b = finding.rows().get(1);
                Message basis = Message.of("findings.setup.order.swapped", a, b);
                return new SetupMeasurement(
                        SetupParameter.ROW_ORDER,
                        -1,
                        "columns",
                        Double.NaN,
                        Double.NaN,
                        Double.NaN,
                        Double.NaN,
                        true,
                        basis,
                        Message.of("findings.setup.order.alternative"));
            }
        }
        return SetupMeasurement.undetermined(
                SetupParameter.ROW_ORDER, -1, "columns", Double.NaN, Message.of("findings.setup.order.none"));
    }

    /** Returns the place of the wheels of a pull-type bar. */
    static List<SetupMeasurement> wheels(Rig rig) {
        return rig.hitch() != Hitch.PULL_TYPE
                ? List.of()
                : List.of(SetupMeasurement.undetermined(
                        SetupParameter.HITCH_TO_WHEELS,
                        -1,
                        "rig.hitch_to_wheels",
                        rig.hitchToWheelsM(),
                        Message.of("findings.setup.wheels.unseen")));
    }
}
