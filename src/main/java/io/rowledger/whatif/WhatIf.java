package io.rowledger.whatif;

import io.rowledger.coverage.Coverage;
import io.rowledger.coverage.sections.ShutOffCase;
import io.rowledger.diagnose.Diagnosis;
import io.rowledger.diagnose.detect.SupplyLimitedDetector;
import io.rowledger.diagnose.signal.Figure;
import io.rowledger.finding.Finding;
import io.rowledger.finding.FindingKind;
import io.rowledger.rate.Delivery;
import io.rowledger.rate.TurnShift;
import io.rowledger.rate.TurnShifts;
import io.rowledger.strip.Strips;
import io.rowledger.track.Poses;
import java.util.ArrayList;
import java.util.List;

/**
 * The same drive with other machinery or another speed, against what happened.
 *
 * @param shutOffs kinds of section control, finest first
 * @param turns turn compensation, per product in rig order
 * @param speeds another speed, one per supply limit found
 * @param inTime rows on and off in time, one per late on or early off found
 */
public record WhatIf(List<ShutOffCase> shutOffs, List<TurnShift> turns, List<Slower> speeds, List<InTime> inTime) {
    /** No comparison. */
    public static final WhatIf NOTHING = new WhatIf(List.of(), List.of(), List.of(), List.of());

    /** Copies the lists. */
    public WhatIf {
        shutOffs = List.copyOf(shutOffs);
        turns = List.copyOf(turns);
        speeds = List.copyOf(speeds);
        inTime = List.copyOf(inTime);
    }

    /**
     * A speed at which the supply would have held the target.
     *
     * @param product index in rig order
     * @param holdsMps that speed, m/s
     * @param drivenMps mean speed of the bar over the ground it was faster on, m/s
     * @param areaM2 ground it crossed faster with rows delivering, m²
     * @param gainedL volume which that ground lacked of its target, L
     * @param extraS additional time, s
     */
    public record Slower(
            int product, double holdsMps, double drivenMps, double areaM2, double gainedL, double extraS) {}

    /**
     * Rows on and off in time.
     *
     * @param kind late on or early off
     * @param product index in rig order
     * @param rows from 1; empty for the whole bar
     * @param areaM2 skipped ground that would have been covered, m²
     * @param gainedL volume it would have received, L
     */
    public record InTime(FindingKind kind, int product, List<Integer> rows, double areaM2, double gainedL) {
        /** Copies the rows. */
        public InTime {
            rows = List.copyOf(rows);
        }
    }

    /** Returns all comparisons of a job. */
    public static WhatIf of(Strips strips, Delivery delivery, Coverage coverage, Diagnosis diagnosis) {
        List<Slower> speeds = new ArrayList<>();
        List<InTime> inTime = new ArrayList<>();
        for (int i = 0; i < diagnosis.findings().size(); i++) {
            Finding finding = diagnosis.findings().get(i);
            int product = diagnosis.windows().get(i).product();
            if (finding.kind() == FindingKind.SUPPLY_LIMITED) {
                for (Figure figure : diagnosis.figures().get(i)) {
                    if (figure.label().equals(SupplyLimitedDetector.HOLDING_SPEED)) {
                        speeds.add(slower(strips, delivery, product, finding, figure.value()));
                    }
                }
            } else if (finding.kind() == FindingKind.LATE_ON || finding.kind() == FindingKind.EARLY_OFF) {
                inTime.add(new InTime(
                        finding.kind(), product, finding.rows(), finding.areaM2(), Math.max(0, -finding.volumeL())));
            }
        }
        return new WhatIf(coverage.shutOffCases(), TurnShifts.of(strips, delivery), speeds, inTime);
    }

    private static Slower slower(Strips strips, Delivery delivery, int p, Finding limit, double holdsMps) {
        Poses poses = strips.poses();
        double widthM = 0;
        for (int r = 0; r < strips.rows(); r++) {
            widthM += strips.rightM(r) - strips.leftM(r);
        }
        double areaM2 = 0;
        double lackedL = 0;
        double seconds = 0;
        double distanceM = 0;
        for (int k = 0; k < poses.steps(); k++) {
            if (!poses.working(k) || poses.timeS(k) < limit.fromS() || poses.timeS(k) >= limit.toS()) {
                continue;
            }
            double barM2 = 0;
            double appliedM2 = 0;
            double lackL = 0;
            for (int r = 0; r < strips.rows(); r++) {
                double rowM2 = Math.max(0, strips.signedAreaM2(k, r));
                barM2 += rowM2;
                if (delivery.delivering(r, k)) {
                    appliedM2 += rowM2;
                    lackL += delivery.targetLPerM2(p, r, k) * rowM2 - delivery.flowLPerS(p, r, k) * poses.durationS(k);
                }
            }
            if (appliedM2 > 0 && barM2 / widthM > holdsMps * poses.durationS(k)) {
                areaM2 += appliedM2;
                lackedL += lackL;
                seconds += poses.durationS(k);
                distanceM += barM2 / widthM;
            }
        }
        return new Slower(
                p, holdsMps, distanceM / seconds, areaM2, Math.max(0, lackedL), distanceM / holdsMps - seconds);
    }
}
