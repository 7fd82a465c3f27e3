package io.rowledger.report.rows;

import io.rowledger.document.chart.Canvas;
import io.rowledger.document.chart.Palette;
import io.rowledger.document.chart.Scale;
import io.rowledger.document.chart.Scale.Tick;
import io.rowledger.track.Pass;
import io.rowledger.units.UnitFormat;
import java.util.ArrayList;
import java.util.List;

/**
 * Working time as an axis: the passes one after another, turns and pauses left out, so that no fault begins in a gap and two days
 * of work fill one sheet. By hand: passes from 0 to 100 s and from 160 to 260 s; second 170 of the day is second 110 of the work,
 * and second 130, in the turn, is second 100.
 */
final class WorkClock {
    /** Room between two labels, pt. */
    private static final double BETWEEN_PT = 8;
    /** Steps between marks of a short window, s. */
    private static final int[] STEPS_S = {10, 20, 30, 60, 120, 300};

    private final List<Pass> passes;
    private final double[] before;

    WorkClock(List<Pass> passes) {
        this.passes = List.copyOf(passes);
        this.before = new double[passes.size() + 1];
        for (int i = 0; i < passes.size(); i++) {
            before[i + 1] = before[i] + passes.get(i).endS() - passes.get(i).startS();
        }
    }

    /** Working time until an instant, s. */
    double at(double epochS) {
        for (int i = 0; i < passes.size(); i++) {
            Pass pass = passes.get(i);
            if (epochS <= pass.endS()) {
                return before[i] + Math.max(0, epochS - pass.startS());
            }
        }
        return workingS();
    }

    /** Length of all passes, s. */
    double workingS() {
        return before[passes.size()];
    }

    /** Working time at which each pass but the first begins, s. */
    double[] turns() {
        double[] turns = new double[Math.max(0, passes.size() - 1)];
        for (int i = 0; i < turns.length; i++) {
            turns[i] = before[i + 1];
        }
        return turns;
    }

    /** The whole job; marks at the start of passes, as many as have room, with the date where a new day begins. */
    Scale wholeJob(Canvas canvas, double plotPt, UnitFormat f) {
        double all = Math.max(1, workingS());
        List<Tick> ticks = new ArrayList<>();
        double free = Double.NEGATIVE_INFINITY;
        int dated = -1;
        for (int i = 0; i < passes.size(); i++) {
            double startS = passes.get(i).startS();
            boolean newDay = dated < 0
                    ? !f.sameDay(startS, passes.get(passes.size() - 1).endS())
                    : !f.sameDay(passes.get(dated).startS(), startS);
            String text = newDay ? f.shortDateAndTime(startS) : f.minute(startS);
            double half = canvas.width(text, Palette.LABEL) / 2;
            double x = before[i] / all * plotPt;
            if (x - half >= free && x + half <= plotPt + BETWEEN_PT) {
                ticks.add(new Tick(before[i], text));
                // The axis begins a label at its mark where it would reach too far to the left.
                free = Math.max(x, half) + half + BETWEEN_PT;
                dated = i;
            }
        }
        return new Scale(0, all, ticks, false, false);
    }

    /** A short stretch of work between two instants with round times of day as marks. */
    Scale window(double fromS, double toS, UnitFormat f) {
        double low = at(fromS);
        double high = Math.max(low + 1, at(toS));
        int step = STEPS_S[STEPS_S.length - 1];
        for (int i = STEPS_S.length - 1; i >= 0; i--) {
            step = (high - low) / STEPS_S[i] <= 7 ? STEPS_S[i] : step;
        }
        List<Tick> ticks = new ArrayList<>();
        for (Pass pass : passes) {
            double last = Math.min(pass.endS(), toS);
            for (double t = Math.ceil(Math.max(pass.startS(), fromS) / step) * step; t <= last; t += step) {
                ticks.add(new Tick(at(t), step < 60 ? f.clock(t) : f.minute(t)));
            }
        }
        return new Scale(low, high, ticks, false, false);
    }
}
