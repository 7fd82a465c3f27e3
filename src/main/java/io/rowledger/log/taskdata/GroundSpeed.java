package io.rowledger.log.taskdata;

/** Speed over ground of a time log's records: as logged, else from the positions a second before and after. */
final class GroundSpeed {
    /** Over this long the speed is taken to either side: noise of a centimeter is 1 cm/s then. */
    private static final long WINDOW_MS = 1000;
    /** Farther apart two records say nothing of the speed between them. */
    private static final long MAX_MS = 6000;

    private static final double DEG = 1e-7;
    /** Half axis and squared eccentricity of WGS 84 (NIMA TR 8350.2). */
    private static final double AXIS_M = 6_378_137;

    private static final double ECCENTRICITY2 = 0.00669437999014;
    /** Records looked at to either side, whatever their clock says. */
    private static final int MAX_RECORDS = 200;

    private final TimeLog log;
    private final int value;

    /** Uses the given value of the log, or the positions where it is −1. */
    GroundSpeed(TimeLog log, int value) {
        this.log = log;
        this.value = value;
    }

    /** True where the record has a position on the globe other than the one that means none. */
    static boolean isPlace(TimeLog log, int i) {
        if (log.north.length == 0 || log.east.length == 0) {
            return false;
        }
        boolean on = Math.abs((long) log.north[i]) <= 900_000_000L && Math.abs((long) log.east[i]) <= 1_800_000_000L;
        return on && (log.north[i] != 0 || log.east[i] != 0) && log.status(i) != 0;
    }

    /** m/s, NaN where nothing tells it. */
    double mps(int i) {
        if (value >= 0) {
            int raw = log.values[value][i];
            return raw >= 0 && raw != Integer.MAX_VALUE ? raw / 1000.0 : Double.NaN;
        }
        int from = i;
        int to = i;
        while (from > Math.max(0, i - MAX_RECORDS) && isNear(from - 1, i)) {
            from--;
        }
        while (to < Math.min(log.records - 1, i + MAX_RECORDS) && isNear(i, to + 1)) {
            to++;
        }
        if (from == to) {
            from = Math.max(0, i - 1);
            to = Math.min(log.records - 1, i + 1);
        }
        double seconds = (log.clockMs[to] - log.clockMs[from]) / 1000.0;
        boolean known = isPlace(log, from) && isPlace(log, to) && isPlace(log, i);
        if (!known || !(seconds > 0) || seconds * 1000 > MAX_MS) {
            return Double.NaN;
        }
        double latRad = Math.toRadians(log.north[i] * DEG);
        double w2 = 1 - ECCENTRICITY2 * Math.sin(latRad) * Math.sin(latRad);
        double acrossM = AXIS_M / Math.sqrt(w2);
        double alongM = acrossM * (1 - ECCENTRICITY2) / w2;
        double north = Math.toRadians((log.north[to] - (double) log.north[from]) * DEG) * alongM;
        double east = Math.toRadians((log.east[to] - (double) log.east[from]) * DEG) * acrossM * Math.cos(latRad);
        return Math.hypot(north, east) / seconds;
    }

    private boolean isNear(int before, int after) {
        long ms = log.clockMs[after] - log.clockMs[before];
        return ms >= 0 && ms <= WINDOW_MS && isPlace(log, before) && isPlace(log, after);
    }
}
