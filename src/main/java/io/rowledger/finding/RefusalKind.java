package io.rowledger.finding;

/** What a refusal is about, where a caller does something of its own about it, such as showing choices. */
public enum RefusalKind {
    /** A flow whose column has no unit. */
    FLOW_UNIT,
    /** A volume per area whose column has no unit. */
    RATE_UNIT,
    /** A column without a unit that can be a flow or a volume per area. */
    FLOW_OR_RATE_UNIT,
    /** Another column without a unit, or one with a unit of something else. */
    UNIT,
    /** No column for time, latitude or longitude. */
    COLUMN,
    /** No column for a flow or a rate. */
    FLOW_COLUMN,
    /** Two columns for one quantity. */
    SAME_QUANTITY,
    /** Rows or meters of the log that differ from those of the rig file. */
    ROWS,
    /** Times without a time zone where it decides. */
    ZONE,
    /** Times of day without a date. */
    DATE,
    /** Dates that read differently in another order of day, month and year. */
    DATE_ORDER,
    /** Seconds of the GPS week without the week. */
    GPS_WEEK,
    /** Volumes of which it is not known what they count from. */
    COUNTS,
    /** Pulses of which it is not known how many come from a gallon or liter. */
    PULSES,
    /** A file that is empty, damaged or cut off. */
    DAMAGED,
    /** A packed file that unpacks to far more than a log. */
    DECOMPRESSION_BOMB,
    /** A file of a form that is no log. */
    NOT_A_LOG,
    /** A log of which no record, or too few, can be used. */
    RECORDS,
    /** A column whose values are not what its name says. */
    VALUES,
    /** Work in places too far apart for one field. */
    APART,
    /** Task data of several tasks. */
    TASKS,
    /** A folder that another start of the program has open. */
    FOLDER_IN_USE,
    /** A folder that can't be written to. */
    FOLDER_CLOSED,
    /** A key that a block of the rig file lacks. */
    KEY,
    /** A figure in the rig file that is not one of its dimension. */
    FIGURE
}
