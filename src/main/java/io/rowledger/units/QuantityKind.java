package io.rowledger.units;

import static io.rowledger.units.Factor.KILOGRAMS_PER_LITRE_PER_LBGAL;
import static io.rowledger.units.Factor.KILOGRAMS_PER_POUND;
import static io.rowledger.units.Factor.KILOGRAMS_PER_SQUARE_METRE_PER_LBAC;
import static io.rowledger.units.Factor.LITRES_PER_GALLON;
import static io.rowledger.units.Factor.LITRES_PER_SECOND_PER_GPM;
import static io.rowledger.units.Factor.LITRES_PER_SECOND_PER_LPM;
import static io.rowledger.units.Factor.LITRES_PER_SQUARE_METRE_PER_GPA;
import static io.rowledger.units.Factor.LITRES_PER_SQUARE_METRE_PER_LPHA;
import static io.rowledger.units.Factor.METRES_PER_FOOT;
import static io.rowledger.units.Factor.METRES_PER_INCH;
import static io.rowledger.units.Factor.METRES_PER_SECOND_PER_KMH;
import static io.rowledger.units.Factor.METRES_PER_SECOND_PER_MPH;
import static io.rowledger.units.Factor.PASCALS_PER_PSI;
import static io.rowledger.units.Factor.SQUARE_METRES_PER_ACRE;
import static io.rowledger.units.Factor.SQUARE_METRES_PER_HECTARE;

/**
 * Kind of quantity that a report prints: its US and metric unit and the number of decimals to print.
 *
 * <p>Values of {@code coarseFrom} or more are printed with fewer decimals, because logs don't support more digits.
 */
public enum QuantityKind {
    /** Field-sized areas; SI in m². */
    AREA("ac", SQUARE_METRES_PER_ACRE, "ha", SQUARE_METRES_PER_HECTARE, 2, 100, 1),
    /** Areas of single skips and overlaps; SI in m². */
    PATCH("ft²", METRES_PER_FOOT * METRES_PER_FOOT, "m²", 1, 1, 10, 0),
    /** Distances on the ground; SI in m. */
    LENGTH("ft", METRES_PER_FOOT, "m", 1, 1, 100, 0),
    /** Lengths of the machine; SI in m. */
    DIMENSION("ft", METRES_PER_FOOT, "m", 1, 2, 1000, 1),
    /** Small lengths such as position noise; SI in m. */
    SMALL_LENGTH("in", METRES_PER_INCH, "cm", 0.01, 1, 100, 0),
    /** Volume of liquid; SI in L. */
    VOLUME("gal", LITRES_PER_GALLON, "L", 1, 1, 1000, 0),
    /** Volume per time through a meter; SI in L/s. */
    FLOW("gal/min", LITRES_PER_SECOND_PER_GPM, "L/min", LITRES_PER_SECOND_PER_LPM, 2, 10, 1),
    /** Volume per area; SI in L/m². */
    RATE("gal/ac", LITRES_PER_SQUARE_METRE_PER_GPA, "L/ha", LITRES_PER_SQUARE_METRE_PER_LPHA, 1, 100, 0),
    /** Mass of nitrogen; SI in kg. */
    NITROGEN("lb N", KILOGRAMS_PER_POUND, "kg N", 1, 1, 100, 0),
    /** Mass of nitrogen per area; SI in kg/m². */
    NITROGEN_RATE("lb N/ac", KILOGRAMS_PER_SQUARE_METRE_PER_LBAC, "kg N/ha", 1 / SQUARE_METRES_PER_HECTARE, 1, 100, 0),
    /** Speed; SI in m/s. */
    SPEED("mph", METRES_PER_SECOND_PER_MPH, "km/h", METRES_PER_SECOND_PER_KMH, 1, 100, 0),
    /** Pressure; SI in Pa. */
    PRESSURE("psi", PASCALS_PER_PSI, "kPa", 1000, 0, 1, 0),
    /** Density; in kg/L. Three decimals below 2 (kg/L), two above (lb/gal). */
    DENSITY("lb/gal", KILOGRAMS_PER_LITRE_PER_LBGAL, "kg/L", 1, 3, 2, 2);

    private final String usUnit;
    private final double usSi;
    private final String metricUnit;
    private final double metricSi;
    private final int fineDecimals;
    private final double coarseFrom;
    private final int coarseDecimals;

    QuantityKind(
            String usUnit,
            double usSi,
            String metricUnit,
            double metricSi,
            int fineDecimals,
            double coarseFrom,
            int coarseDecimals) {
        this.usUnit = usUnit;
        this.usSi = usSi;
        this.metricUnit = metricUnit;
        this.metricSi = metricSi;
        this.fineDecimals = fineDecimals;
        this.coarseFrom = coarseFrom;
        this.coarseDecimals = coarseDecimals;
    }

    /** Returns the unit symbol, for instance {@code gal/ac}. */
    public String unit(UnitSystem system) {
        return system == UnitSystem.US ? usUnit : metricUnit;
    }

    /** Converts an SI value to the unit of the system. */
    public double from(double si, UnitSystem system) {
        return si / siPerUnit(system);
    }

    /** Converts a value in the unit of the system to SI. */
    public double toSi(double value, UnitSystem system) {
        return value * siPerUnit(system);
    }

    /** Returns the number of decimals to print for a value in the unit of the system. */
    int decimals(double value) {
        return Math.abs(value) < coarseFrom ? fineDecimals : coarseDecimals;
    }

    private double siPerUnit(UnitSystem system) {
        return system == UnitSystem.US ? usSi : metricSi;
    }
}
