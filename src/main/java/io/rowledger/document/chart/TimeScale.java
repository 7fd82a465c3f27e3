package io.rowledger.document.chart;

import io.rowledger.document.chart.Scale.Tick;
import io.rowledger.units.UnitFormat;
import java.util.ArrayList;
import java.util.List;

/** Time axes in the reader's clock. */
public final class TimeScale {
    /** Steps between marks, s; all divide a day. */
    private static final int[] STEPS_S = {10, 20, 30, 60, 120, 300, 600, 1200, 1800, 3600, 7200, 14400, 43200, 86400};

    private static final int MAX_MARKS = 9;
    private static final int MINUTE_S = 60;

    private TimeScale() {}

    /** The time from one instant to a later one, epoch seconds, with at most nine marks; over several days they name the day. */
    public static Scale of(double fromS, double toS, UnitFormat f) {
        double endS = Math.max(toS, fromS + 1);
        int step = STEPS_S[STEPS_S.length - 1];
        for (int i = STEPS_S.length - 1; i >= 0; i--) {
            step = (endS - fromS) / STEPS_S[i] <= MAX_MARKS ? STEPS_S[i] : step;
        }
        boolean oneDay = f.date(fromS).equals(f.date(endS));
        List<Tick> ticks = new ArrayList<>();
        for (double t = Math.ceil(fromS / step) * step; t <= endS; t += step) {
            String clock = step < MINUTE_S ? f.clock(t) : f.minute(t);
            ticks.add(new Tick(t, oneDay ? clock : f.dateAndTime(t)));
        }
        return new Scale(fromS, endS, ticks, false, false);
    }
}
