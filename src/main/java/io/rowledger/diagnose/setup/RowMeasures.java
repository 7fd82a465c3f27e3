package io.rowledger.diagnose.setup;

import io.rowledger.diagnose.Diagnosis;
import io.rowledger.diagnose.signal.RowBaseline;
import io.rowledger.finding.Finding;
import io.rowledger.finding.FindingKind;
import io.rowledger.rig.Hitch;
import io.rowledger.rig.Rig;
import java.util.List;

/** What the rows' own detectors say about the setup: outside share and row order. And what no log tells. */
final class RowMeasures {
    /** Meters of one kind differ by so much from row to row, 1 sigma of a share; common practice, no source. */
    private static final double METER_SIGMA = 0.02;

    private static final int MIN_ROWS = 4;

    private RowMeasures() {}

    static SetupMeasurement outsideShare(Rig rig, Diagnosis d) {
        String key = "rows.outer_share";
        int last = rig.rows() - 1;
        if (rig.rows() < MIN_ROWS) {
            return SetupMeasurement.undetermined(
                    SetupParameter.OUTSIDE_SHARE,
                    -1,
                    key,
                    Double.NaN,
                    "Fewer than four rows have no inside to be held against.");
        }
        double inside = rig.bands().get(1).widthM();
        double was = (rig.bands().get(0).widthM() + rig.bands().get(last).widthM()) / 2 / inside;
        String alternative = "one wrong orifice in both outside rows.";
        for (int i = 0; i < d.findings().size(); i++) {
            if (d.findings().get(i).kind() == FindingKind.OUTSIDE_SHARE) {
                double is = was * d.figures().get(i).get(0).value();
                double half = Estimate.Z90 * METER_SIGMA * is;
                return new SetupMeasurement(
                        SetupParameter.OUTSIDE_SHARE,
                        -1,
                        key,
                        was,
                        is,
                        is - half,
                        is + half,
                        true,
                        "Both outside rows gave what another share of a row calls for, while the rows between agreed.",
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
                    SetupParameter.OUTSIDE_SHARE,
                    -1,
                    key,
                    was,
                    "The outside rows could not be held against the others. Drive some minutes straight with all rows on.");
        }
        double is = was * sum / n;
        double half = Estimate.Z90 * METER_SIGMA * is / Math.sqrt(n);
        return new SetupMeasurement(
                SetupParameter.OUTSIDE_SHARE,
                -1,
                key,
                was,
                is,
                is - half,
                is + half,
                false,
                "The outside rows gave, band for band, what the inside rows gave.",
                alternative);
    }

    static SetupMeasurement rowOrder(Diagnosis d) {
        for (Finding finding : d.findings()) {
            if (finding.kind() == FindingKind.CHANNELS_SWAPPED && finding.rows().size() == 2) {
                int a = finding.rows().get(0);
                int b = finding.rows().get(1);
                String basis = "Rows " + a + " and " + b
                        + " each followed the other's place. If that is how the hoses or wires run, give row " + a
                        + " the header of row " + b + " under columns, and the other way round.";
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
                        "A leak on one of them and a restriction on the other would hold on straight ground as well.");
            }
        }
        return SetupMeasurement.undetermined(
                SetupParameter.ROW_ORDER,
                -1,
                "columns",
                Double.NaN,
                "No two rows look crossed. Only turns with liquid on, rows of unequal width or rows that shut off alone tell rows"
                        + " apart; neighbors hardly at all.");
    }

    /** The wheels' place, for a pull-type bar. */
    static List<SetupMeasurement> wheels(Rig rig) {
        return rig.hitch() != Hitch.PULL_TYPE
                ? List.of()
                : List.of(SetupMeasurement.undetermined(
                        SetupParameter.HITCH_TO_WHEELS,
                        -1,
                        "rig.hitch_to_wheels",
                        rig.hitchToWheelsM(),
                        "How far the bar cuts inside a turn would tell, but the log only holds where the antenna was: passes"
                                + " beside one another cut in alike, and no flow says where the bar ran. Drive a circle with the"
                                + " bar lowered and measure the two rings it leaves from their middle, the hitch pin's and the"
                                + " bar's wheels': the length is the root of the one squared less the other squared."));
    }
}
