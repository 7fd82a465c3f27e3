package io.rowledger.units;

/** System of units in reports. Inside the program everything is SI. */
public enum UnitSystem {
    /** US customary: acres, feet, US gallons, pounds, miles per hour. */
    US,
    /** Metric as used on farms: hectares, meters, liters, kilograms, kilometers per hour. */
    METRIC
}
