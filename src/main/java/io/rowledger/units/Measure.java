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
import static io.rowledger.units.Factor.SQUARE_METRES_PER_ACRE;
import static io.rowledger.units.Factor.SQUARE_METRES_PER_HECTARE;

/**
 * A kind of figure a report prints: the unit it is read in and how many decimals of it mean something.
 *
 * <p>Decimals fall as the figure grows, so that no digit is printed that the log can't carry: see {@link #decimals}.
 */
public enum Measure {
    /** Field-sized areas; SI in m². */
    AREA("ac", SQUARE_METRES_PER_ACRE, "ha", SQUARE_METRES_PER_HECTARE, 2, 100, 1),
    /** Patches of ground; SI in m². */
    PATCH("ft²", METRES_PER_FOOT * METRES_PER_FOOT, "m²", 1, 1, 10, 0),
    /** Ways and distances on the ground; SI in m. */
    LENGTH("ft", METRES_PER_FOOT, "m", 1, 1, 100, 0),
    /** Measures of a machine; SI in m. */
    DIMENSION("ft", METRES_PER_FOOT, "m", 1, 2, 1000, 1),
    /** Small lengths such as position noise; SI in m. */
    SMALL_LENGTH("in", METRES_PER_INCH, "cm", 0.01, 1, 100, 0),
    /** Liquid; SI in L. */
    VOLUME("gal", LITRES_PER_GALLON, "L", 1, 1, 1000, 0),
    /** Liquid per time through a meter; SI in L/s. */
    FLOW("gal/min", LITRES_PER_SECOND_PER_GPM, "L/min", LITRES_PER_SECOND_PER_LPM, 2, 10, 1),
    /** Liquid per ground; SI in L/m². */
    RATE("gal/ac", LITRES_PER_SQUARE_METRE_PER_GPA, "L/ha", LITRES_PER_SQUARE_METRE_PER_LPHA, 1, 100, 0),
    /** Nitrogen; SI in kg. */
    NITROGEN("lb N", KILOGRAMS_PER_POUND, "kg N", 1, 1, 100, 0),
    /** Nitrogen per ground; SI in kg/m². */
    NITROGEN_RATE("lb N/ac", KILOGRAMS_PER_SQUARE_METRE_PER_LBAC, "kg N/ha", 1 / SQUARE_METRES_PER_HECTARE, 1, 100, 0),
    /** Speed; SI in m/s. */
    SPEED("mph", METRES_PER_SECOND_PER_MPH, "km/h", METRES_PER_SECOND_PER_KMH, 1, 100, 0),
    /** Density; in kg/L. A third decimal below 2, where only kilograms per liter are. */
    DENSITY("lb/gal", KILOGRAMS_PER_LITRE_PER_LBGAL, "kg/L", 1, 3, 2, 2);

    private final String usUnit;
    private final double usSi;
    private final String metricUnit;
    private final double metricSi;
    private final int fineDecimals;
    private final double coarseFrom;
    private final int coarseDecimals;

    Measure(
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

    /** The unit's sign, for instance {@code gal/ac}. */
    public String unit(UnitSystem system) {
        return system == UnitSystem.US ? usUnit : metricUnit;
    }

    /** An SI value in the unit a person reads. */
    public double from(double si, UnitSystem system) {
        return si / siPerUnit(system);
    }

    /** A value in the unit a person reads in SI. */
    public double toSi(double value, UnitSystem system) {
        return value * siPerUnit(system);
    }

    /** Decimals to print for a value already in the unit a person reads. */
    int decimals(double value) {
        return Math.abs(value) < coarseFrom ? fineDecimals : coarseDecimals;
    }

    private double siPerUnit(UnitSystem system) {
        return system == UnitSystem.US ? usSi : metricSi;
    }
}
