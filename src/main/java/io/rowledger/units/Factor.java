package io.rowledger.units;

/**
 * Exact factors between customary units and SI.
 *
 * <p>Source: NIST SP 811 (2008) Appendix B and NIST Handbook 44 Appendix C. The inch, the pound and the US gallon are
 * exact by definition; the others follow from them. Value in the named unit × factor = value in SI units, with L for
 * volume and kg/L for density.
 */
public final class Factor {
    /** Meters in an inch, exact. */
    public static final double METRES_PER_INCH = 0.0254;
    /** Meters in an international foot, exact. */
    public static final double METRES_PER_FOOT = 0.3048;
    /** Meters in a mile, exact. */
    public static final double METRES_PER_MILE = 1609.344;
    /** Square meters in an international acre (43,560 square feet), exact. */
    public static final double SQUARE_METRES_PER_ACRE = 4046.8564224;
    /** Square meters in a hectare, exact. */
    public static final double SQUARE_METRES_PER_HECTARE = 10_000.0;
    /** Liters in a US gallon (231 cubic inches), exact. */
    public static final double LITRES_PER_GALLON = 3.785411784;
    /** Liters in a US fluid ounce, exact. */
    public static final double LITRES_PER_FLUID_OUNCE = LITRES_PER_GALLON / 128.0;
    /** Liters in an imperial gallon, exact. */
    public static final double LITRES_PER_IMPERIAL_GALLON = 4.54609;
    /** Kilograms in an avoirdupois pound, exact. */
    public static final double KILOGRAMS_PER_POUND = 0.45359237;
    /** Meters per second in a mile per hour, exact. */
    public static final double METRES_PER_SECOND_PER_MPH = 0.44704;
    /** Meters per second in a kilometer per hour. */
    public static final double METRES_PER_SECOND_PER_KMH = 1.0 / 3.6;
    /** Meters per second in a knot (1852 m an hour, exact). */
    public static final double METRES_PER_SECOND_PER_KNOT = 1852.0 / 3600.0;
    /** Liters per second in a US gallon per minute. */
    public static final double LITRES_PER_SECOND_PER_GPM = LITRES_PER_GALLON / 60.0;
    /** Liters per second in a liter per minute. */
    public static final double LITRES_PER_SECOND_PER_LPM = 1.0 / 60.0;
    /** Liters per square meter in a US gallon per acre. */
    public static final double LITRES_PER_SQUARE_METRE_PER_GPA = LITRES_PER_GALLON / SQUARE_METRES_PER_ACRE;
    /** Liters per square meter in a liter per hectare, exact. */
    public static final double LITRES_PER_SQUARE_METRE_PER_LPHA = 1.0e-4;
    /** Kilograms per liter in a pound per US gallon. */
    public static final double KILOGRAMS_PER_LITRE_PER_LBGAL = KILOGRAMS_PER_POUND / LITRES_PER_GALLON;
    /** Kilograms per square meter in a pound per acre. */
    public static final double KILOGRAMS_PER_SQUARE_METRE_PER_LBAC = KILOGRAMS_PER_POUND / SQUARE_METRES_PER_ACRE;
    /** Pascals in a pound-force per square inch (NIST SP 811, rounded there to seven digits). */
    public static final double PASCALS_PER_PSI = 6894.757;

    private Factor() {}
}
