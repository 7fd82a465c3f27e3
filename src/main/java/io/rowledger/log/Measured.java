package io.rowledger.log;

import io.rowledger.units.Dimension;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** A quantity a log can have a column for, with the names it goes by. */
enum Measured {
    TIME(
            "time",
            Dimension.TIME,
            "",
            Per.LOG,
            "time timestamp datetime dateandtime utc utctime timeutc gpstime gnsstime isotime epoch epochtime unixtime"),
    LAT("lat", Dimension.ANGLE, "deg", Per.LOG, "lat latitude gpslat gpslatitude gnsslatitude"),
    LON("lon", Dimension.ANGLE, "deg", Per.LOG, "lon long lng longitude gpslon gpslongitude gnsslongitude"),
    FLOW("flow", Dimension.FLOW, null, Per.OUTLET, "flow flowrate actualflow meteredflow actualflowrate"),
    TARGET(
            "target",
            Dimension.RATE,
            null,
            Per.PRODUCT,
            "target targetrate setpoint setpointrate setrate prescription prescribedrate desiredrate"),
    SPEED("speed", Dimension.SPEED, null, Per.LOG, "speed groundspeed gpsspeed gnssspeed speedoverground sog"),
    COURSE("course", Dimension.ANGLE, "deg", Per.LOG, "course cog courseoverground gpscourse gnsscourse"),
    DOWN("down", null, "", Per.LOG, "down bardown lowered implementdown workstate working toolbardown"),
    ON("on", null, "", Per.OUTLET, "on commandedon command valve state"),
    FIX("fix", null, "", Per.LOG, "fix fixtype fixquality gpsfix gpsquality gnssfix gnssquality quality gpsfixtype"),
    HDOP("hdop", null, "", Per.LOG, "hdop"),
    YAW_RATE("yaw_rate", Dimension.TURN_RATE, null, Per.LOG, "yawrate turnrate rateofturn"),
    ROLL("roll", Dimension.ANGLE, null, Per.LOG, "roll rollangle"),
    PRESSURE("pressure", Dimension.PRESSURE, null, Per.LOG_OR_OUTLET, "pressure press supplypressure linepressure"),
    FLOW_TOTAL(
            "flow_total", Dimension.FLOW, null, Per.PRODUCT, "flowtotal totalflow mainflow totalflowrate totalmeter");

    /** What there is one column of. */
    enum Per {
        LOG,
        PRODUCT,
        OUTLET,
        LOG_OR_OUTLET
    }

    private final String canonical;
    private final @Nullable Dimension dimension;
    private final @Nullable String impliedUnit;
    private final Per per;
    private final String names;

    Measured(String canonical, @Nullable Dimension dimension, @Nullable String impliedUnit, Per per, String names) {
        this.canonical = canonical;
        this.dimension = dimension;
        this.impliedUnit = impliedUnit;
        this.per = per;
        this.names = names;
    }

    /** The name the contract gives it, without row number and unit. */
    String canonical() {
        return canonical;
    }

    /** What its figures measure; null for states, digits and ratios. */
    @Nullable
    Dimension dimension() {
        return dimension;
    }

    /** The unit where the header has none: null where one must be written, empty where there is none to write. */
    @Nullable
    String impliedUnit() {
        return impliedUnit;
    }

    Per per() {
        return per;
    }

    /** Names it goes by, in lower case without separators. */
    List<String> names() {
        return List.of(names.split(" ", -1));
    }

    /** True where the column belongs to one product. */
    boolean ofProduct() {
        return this == FLOW || this == TARGET || this == FLOW_TOTAL;
    }

    /** True where the column holds small whole numbers: states and the fix digit. */
    boolean isState() {
        return this == DOWN || this == ON || this == FIX;
    }
}
