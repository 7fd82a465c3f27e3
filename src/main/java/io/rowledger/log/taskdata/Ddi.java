package io.rowledger.log.taskdata;

/**
 * The entries of the ISO 11783-11 data dictionary that are read, by number. Values are signed 32-bit integers; figure =
 * value × resolution. Units and resolutions as published in the on-line data base of ISO 11783-11 (isobus.net).
 */
final class Ddi {
    /** Setpoint volume per area, 0.01 mm³/m². */
    static final int SETPOINT_PER_AREA = 1;
    /** Actual volume per area, 0.01 mm³/m². */
    static final int ACTUAL_PER_AREA = 2;
    /** Actual mass per area, 1 mg/m². */
    static final int ACTUAL_MASS_PER_AREA = 7;
    /** Actual volume per time, 1 mm³/s. */
    static final int ACTUAL_PER_TIME = 37;
    /** Setpoint working width, 1 mm. */
    static final int SETPOINT_WIDTH = 66;
    /** Actual working width, 1 mm. */
    static final int ACTUAL_WIDTH = 67;
    /** Maximum working width, 1 mm. */
    static final int MAXIMUM_WIDTH = 70;
    /** Application total volume, 1 L. */
    static final int TOTAL_VOLUME = 80;
    /** Total area, 1 m². */
    static final int TOTAL_AREA = 116;
    /** Device element offset, 1 mm, forward of the device's reference point. */
    static final int OFFSET_X = 134;
    /** Device element offset, 1 mm, right of the device's reference point. */
    static final int OFFSET_Y = 135;
    /** Actual work state: 0 off, 1 on, 2 error, 3 not available. */
    static final int WORK_STATE = 141;
    /** Connector type. */
    static final int CONNECTOR_TYPE = 157;
    /** Actual condensed work state of sections 1 to 16; the next DDIs hold sections 17 and up. */
    static final int CONDENSED_STATE = 161;
    /** Setpoint work state, as the actual one. */
    static final int SETPOINT_WORK_STATE = 289;
    /** Setpoint condensed work state of sections 1 to 16. */
    static final int SETPOINT_CONDENSED_STATE = 290;
    /** True rotation point, 1 mm forward of the reference point. */
    static final int ROTATION_POINT_X = 306;
    /** Application total volume, 1 ml. */
    static final int TOTAL_VOLUME_ML = 351;
    /** Actual speed, 1 mm/s. */
    static final int ACTUAL_SPEED = 397;
    /** Actual application rate of nitrogen, 1 mg/m². */
    static final int ACTUAL_NITROGEN = 433;
    /** Setpoint volume per area, second pair, 0.1 ml/m². */
    static final int SETPOINT_PER_AREA_ML = 588;
    /** Actual volume per area, second pair, 0.1 ml/m². */
    static final int ACTUAL_PER_AREA_ML = 589;

    /** Sections in one condensed work state, two bits each, the left one lowest. */
    static final int SECTIONS_PER_STATE = 16;
    /** Number of DDIs for condensed work states. */
    static final int CONDENSED_STATES = 16;

    /** 1 mm³/s, in ml/s. */
    static final double PER_TIME_ML_PER_S = 1e-3;
    /** 0.01 mm³/m², in L/m². */
    static final double PER_AREA_L_PER_M2 = 1e-8;
    /** 0.1 ml/m², in L/m². */
    static final double PER_AREA_ML_L_PER_M2 = 1e-4;

    private Ddi() {}

    /** True for the actual volumes per area. */
    static boolean isActualPerArea(int ddi) {
        return ddi == ACTUAL_PER_AREA || ddi == ACTUAL_PER_AREA_ML;
    }

    /** True for the flow or rate of an element. */
    static boolean isActual(int ddi) {
        return ddi == ACTUAL_PER_TIME || isActualPerArea(ddi);
    }

    /** True for the setpoints of volume per area. */
    static boolean isSetpointPerArea(int ddi) {
        return ddi == SETPOINT_PER_AREA || ddi == SETPOINT_PER_AREA_ML;
    }

    /** True for an actual condensed work state. */
    static boolean isCondensed(int ddi) {
        return ddi >= CONDENSED_STATE && ddi < CONDENSED_STATE + CONDENSED_STATES;
    }

    /** True for a setpoint condensed work state. */
    static boolean isSetpointCondensed(int ddi) {
        return ddi >= SETPOINT_CONDENSED_STATE && ddi < SETPOINT_CONDENSED_STATE + CONDENSED_STATES;
    }

    /** True for the working widths of an element. */
    static boolean isWidth(int ddi) {
        return ddi == SETPOINT_WIDTH || ddi == ACTUAL_WIDTH || ddi == MAXIMUM_WIDTH;
    }

    /** True for what controllers add up over a task. */
    static boolean isTotal(int ddi) {
        return ddi == TOTAL_VOLUME || ddi == TOTAL_VOLUME_ML || ddi == TOTAL_AREA;
    }

    /** True for a value that is read from every record of a time log. */
    static boolean isRead(int ddi) {
        return isActual(ddi)
                || isSetpointPerArea(ddi)
                || isCondensed(ddi)
                || isSetpointCondensed(ddi)
                || isWidth(ddi)
                || isTotal(ddi)
                || ddi == WORK_STATE
                || ddi == SETPOINT_WORK_STATE
                || ddi == ACTUAL_SPEED;
    }

    /** What a person calls it, with its number. */
    static String words(int ddi) {
        String name =
                switch (ddi) {
                    case SETPOINT_PER_AREA, SETPOINT_PER_AREA_ML -> "setpoint volume per area";
                    case ACTUAL_PER_AREA, ACTUAL_PER_AREA_ML -> "actual volume per area";
                    case 6 -> "setpoint mass per area";
                    case ACTUAL_MASS_PER_AREA -> "actual mass per area";
                    case 36 -> "setpoint volume per time";
                    case ACTUAL_PER_TIME -> "actual volume per time";
                    case SETPOINT_WIDTH -> "setpoint working width";
                    case ACTUAL_WIDTH -> "actual working width";
                    case MAXIMUM_WIDTH -> "maximum working width";
                    case TOTAL_VOLUME, TOTAL_VOLUME_ML -> "total volume";
                    case TOTAL_AREA -> "total area";
                    case 117 -> "effective total distance";
                    case WORK_STATE -> "actual work state";
                    case 160 -> "section control state";
                    case SETPOINT_WORK_STATE -> "setpoint work state";
                    case ACTUAL_SPEED -> "actual speed";
                    case ACTUAL_NITROGEN -> "actual rate of nitrogen";
                    default -> isCondensed(ddi) || isSetpointCondensed(ddi) ? "work states of sections" : "";
                };
        return name.isEmpty() ? "DDI " + ddi : name + " (DDI " + ddi + ")";
    }
}
