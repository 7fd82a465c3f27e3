package io.rowledger.log.taskdata;

import io.rowledger.finding.RegularFile;
import io.rowledger.text.Message;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * One binary time log as a log with a column for each quantity, named as in any other log: every figure is the stored whole
 * number with its decimal point put in, so nothing is rounded on the way.
 */
public final class TaskLog {
    /** Share of the records with a rate from which those without motion are told: a start of work may be a record or two. */
    public static final double MIN_STANDING_SHARE = 0.01;

    /** The decimals of a position in 1e-7 degrees. */
    private static final int POSITION_DECIMALS = 7;
    /** A rate of 0.01 mm³/m² is 1e-8 L/m² = 1e-4 L/ha. */
    private static final int RATE_DECIMALS = 4;

    private static final int THOUSANDTHS = 3;
    private static final double ML_PER_L = 1000;
    private static final int FLOW_DECIMALS = 6;
    /** Longest step over which a flow is added up, s. */
    private static final double MAX_STEP_S = 10;

    private final String name;
    private final String sha256;
    private final String form;
    private final TimeLog log;
    private final LogHeader header;
    private final Layout layout;
    private final LogClock clock;
    private final GroundSpeed speed;
    private final boolean hasStatus;
    private final boolean bySection;
    private final List<String> headers = new ArrayList<>();
    private final List<String> origins = new ArrayList<>();
    private final List<Message> notes = new ArrayList<>();
    private final List<Cell> cells = new ArrayList<>();

    private interface Cell {
        String of(int i);
    }

    /**
     * A time log with its meaning.
     *
     * @param bySection true to give the one flow of the bar beside the states of its sections
     */
    TaskLog(ReadFile file, String form, ElementValues values, Layout layout, LogClock clock, boolean bySection) {
        this.bySection = bySection;
        this.name = file.name();
        this.sha256 = file.sha256();
        this.form = form;
        this.header = values.header();
        this.log = values.log();
        this.layout = layout;
        this.clock = clock;
        this.speed = new GroundSpeed(this.log, layout.speed());
        this.hasStatus = this.log.status.length > 0 || this.header.fixedStatus() >= 0;
        notes.addAll(layout.notes());
        notes.addAll(clock.notes());
        if (this.log.brokenOff) {
            notes.add(Message.of("notes.taskdata.broken_off", RegularFile.name(name), this.log.records));
        }
        place();
        states();
        for (Layout.Group group : layout.groups()) {
            product(group);
        }
    }

    /** The binary file as given. */
    public String name() {
        return name;
    }

    /** Digest of the binary file, lower-case hex. */
    public String sha256() {
        return sha256;
    }

    /** What kind of log it is, for a person. */
    public String form() {
        return form;
    }

    /** Column names as in any log, with units. */
    public List<String> headers() {
        return List.copyOf(headers);
    }

    /** How many records it has. */
    public int records() {
        return log.records;
    }

    /** Assumptions made, a sentence each. */
    public List<Message> notes() {
        return List.copyOf(notes);
    }

    /** The fields of record i (from 0), one for each column; empty where it has no figure. */
    public String[] fields(int i) {
        String[] fields = new String[cells.size()];
        for (int c = 0; c < fields.length; c++) {
            fields[c] = cells.get(c).of(i);
        }
        return fields;
    }

    /** What each column was read from, for a person: element and entry of the data dictionary; empty for the record's own. */
    public List<String> origins() {
        return List.copyOf(origins);
    }

    private void add(String column, Cell cell) {
        headers.add(column);
        cells.add(cell);
        origins.add("");
    }

    private void add(String column, int value, Cell cell) {
        headers.add(column);
        cells.add(cell);
        LogHeader.Value from = header.values().get(value);
        origins.add(from.element() + ": " + Ddi.words(from.ddi()));
    }

    private void place() {
        add("time", clock::text);
        add("lat", i -> GroundSpeed.isPlace(log, i) ? decimal(log.north[i], POSITION_DECIMALS) : "");
        add("lon", i -> GroundSpeed.isPlace(log, i) ? decimal(log.east[i], POSITION_DECIMALS) : "");
        if (hasStatus) {
            add("fix", i -> fix(log.status(i)));
        }
        if (log.hdop.length > 0) {
            add("hdop", i -> log.hdop[i] == TimeLog.NO_DOP || log.hdop[i] == 0 ? "" : decimal(log.hdop[i], 1));
        }
        if (layout.speed() >= 0) {
            int value = layout.speed();
            add("speed[m/s]", value, i -> isFigure(raw(value, i)) ? decimal(raw(value, i), THOUSANDTHS) : "");
        }
    }

    /**
     * The position status as an NMEA 0183 quality digit. ISO 11783-10 counts 0 to 8 as NMEA 2000 and NMEA 0183 do (no fix,
     * GNSS, differential, precise, RTK fixed, RTK float, dead reckoning, manual, simulated); 14 is an error, 15 not there
     * (from memory).
     */
    private static String fix(int status) {
        if (status == 14) {
            return "0";
        }
        return status < 0 || status > 8 ? "" : String.valueOf(status);
    }

    private void states() {
        if (!layout.down().isEmpty()) {
            add("down", layout.down().get(0), i -> state(down(i)));
        }
        List<Layout.Outlet> outlets = layout.groups().get(0).outlets();
        for (int r = 0; r < outlets.size(); r++) {
            Layout.State state = outlets.get(r).commanded();
            if (state != null && !layout.whole()) {
                add(numbered("on", r), state.value(), i -> state(state.of(raw(state.value(), i))));
            }
        }
        for (int k = 0; k < layout.sections().size() && bySection; k++) {
            Layout.State state = layout.sections().get(k).state();
            if (state != null) {
                add(numbered("on", k), state.value(), i -> state(state.of(raw(state.value(), i))));
            }
        }
    }

    private static String state(int state) {
        return state < 0 ? "" : state == 0 ? "0" : "1";
    }

    /** Whether any part of the bar works: 1, 0; −1 if not logged. */
    private int down(int i) {
        int down = -1;
        for (int value : layout.down()) {
            down = Math.max(down, new Layout.State(value, 0).of(raw(value, i)));
        }
        return down;
    }

    private void product(Layout.Group group) {
        String prefix = group.key().isEmpty() ? "" : group.key() + ".";
        if (!group.targets().isEmpty()) {
            add(prefix + "target[L/ha]", group.targets().get(0).value(), i -> target(group.targets(), i));
        }
        boolean rates = false;
        for (int r = 0; r < group.outlets().size(); r++) {
            Layout.Outlet outlet = group.outlets().get(r);
            boolean metered = outlet.actual().ddi() == Ddi.ACTUAL_PER_TIME;
            rates |= !metered;
            add(
                    prefix + (bySection ? "flow" : numbered("flow", r)) + "[ml/s]",
                    outlet.actual().value(),
                    metered ? i -> flow(outlet.actual().value(), i) : i -> made(outlet, i));
        }
        if (group.total() >= 0) {
            add(prefix + "flow_total[ml/s]", group.total(), i -> flow(group.total(), i));
        }
        if (rates) {
            notes.add(Message.of(
                    layout.speed() >= 0 ? "notes.taskdata.rates.speed" : "notes.taskdata.rates.positions",
                    RegularFile.name(name)));
            noteStanding(group);
        }
    }

    /** Notes rates where the position repeats itself to the last digit and no speed is logged: standing, or a receiver that hangs. */
    private void noteStanding(Layout.Group group) {
        int applied = 0;
        int standing = 0;
        for (int i = 0; i < log.records && layout.speed() < 0; i++) {
            int at = i;
            boolean rate = group.outlets().stream().anyMatch(outlet -> {
                int raw = raw(outlet.actual().value(), at);
                return raw > 0 && isFigure(raw);
            });
            applied += rate ? 1 : 0;
            standing += rate && speed.mps(i) == 0 ? 1 : 0;
        }
        if (standing > MIN_STANDING_SHARE * applied) {
            notes.add(Message.of("notes.log.rates.standing", RegularFile.name(name), standing));
        }
    }

    private String flow(int value, int i) {
        return isFigure(raw(value, i)) ? decimal(raw(value, i), THOUSANDTHS) : "";
    }

    /** A flow from a rate per area; a section that is off or lifted applies nothing, whatever rate is still logged. */
    private String made(Layout.Outlet outlet, int i) {
        int rate = raw(outlet.actual().value(), i);
        Layout.State is = outlet.actualState();
        boolean off = down(i) == 0 || (is != null && is.of(raw(is.value(), i)) == 0);
        if (off || rate == 0) {
            return "0";
        }
        double mlPerS = outlet.actual().lPerM2(rate) * ML_PER_L * outlet.width().atM(log, i) * speed.mps(i);
        return isFigure(rate) && Double.isFinite(mlPerS) ? decimal(Math.round(mlPerS * 1e6), FLOW_DECIMALS) : "";
    }

    /** The target rate of a record; empty if sections have different ones. */
    private String target(List<Layout.Amount> targets, int i) {
        String common = "";
        for (Layout.Amount target : targets) {
            int raw = raw(target.value(), i);
            if (!isFigure(raw) || (raw == 0 && targets.size() > 1)) {
                continue;
            }
            boolean ml = target.ddi() == Ddi.SETPOINT_PER_AREA_ML;
            // 0.1 ml/m² is 1 L/ha.
            String text = ml ? decimal(raw, 0) : decimal(raw, RATE_DECIMALS);
            if (!common.isEmpty() && !common.equals(text)) {
                return "";
            }
            common = text;
        }
        return common;
    }

    private int raw(int value, int i) {
        return log.values[value][i];
    }

    /** Negative amounts and both ends of the range stand for "no value". */
    private static boolean isFigure(int raw) {
        return raw >= 0 && raw != Integer.MAX_VALUE;
    }

    /** Share of the records with any section on in which only some were; NaN if no state is logged. */
    double partlyOn() {
        int on = 0;
        int partly = 0;
        for (int i = 0; i < log.records && layout.sections().size() > 1; i++) {
            int some = 0;
            for (Layout.Section section : layout.sections()) {
                Layout.State state = section.state();
                some += state != null && state.of(raw(state.value(), i)) == 1 ? 1 : 0;
            }
            on += some > 0 ? 1 : 0;
            partly += some > 0 && some < layout.sections().size() ? 1 : 0;
        }
        return on == 0 ? Double.NaN : (double) partly / on;
    }

    /** The volume and area that the flows and widths of the first product add up to; gaps of more than 10 s left out. */
    ControllerTotals.Sum sum() {
        List<Layout.Outlet> outlets = layout.groups().get(0).outlets();
        double volumeL = 0;
        double areaM2 = 0;
        for (int i = 0; i + 1 < log.records; i++) {
            double seconds = (log.clockMs[i + 1] - log.clockMs[i]) / 1000.0;
            if (!(seconds > 0) || seconds > MAX_STEP_S) {
                continue;
            }
            for (Layout.Outlet outlet : outlets) {
                boolean metered = outlet.actual().ddi() == Ddi.ACTUAL_PER_TIME;
                String flow = metered ? flow(outlet.actual().value(), i) : made(outlet, i);
                double mlPerS = flow.isEmpty() ? 0 : Double.parseDouble(flow);
                double m2PerS = outlet.width().atM(log, i) * speed.mps(i);
                volumeL += mlPerS / ML_PER_L * seconds;
                areaM2 += mlPerS > 0 && m2PerS > 0 ? m2PerS * seconds : 0;
            }
        }
        return new ControllerTotals.Sum(volumeL, areaM2);
    }

    /** Records with a place. */
    int places() {
        int places = 0;
        for (int i = 0; i < log.records; i++) {
            places += GroundSpeed.isPlace(log, i) ? 1 : 0;
        }
        return places;
    }

    Layout layout() {
        return layout;
    }

    LogHeader header() {
        return header;
    }

    private static String numbered(String what, int row) {
        return String.format(Locale.ROOT, "%s_%02d", what, row + 1);
    }

    private static String decimal(long raw, int decimals) {
        return BigDecimal.valueOf(raw, decimals).toPlainString();
    }
}
