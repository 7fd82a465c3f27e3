package io.rowledger.units;

/** Dimension of a quantity that people write, the SI unit it is kept in, and the units a message proposes for it. */
public enum Dimension {
    /** Meters. */
    LENGTH("a length", "m, cm, mm, ft or in", "5.9 m"),
    /** Kilograms per liter. */
    DENSITY("a density", "lb/gal or kg/L", "11.06 lb/gal"),
    /** Volume per area, liters per square meter. */
    RATE("a volume per area", "gal/ac or L/ha", "42 gal/ac"),
    /** Seconds. */
    TIME("a time", "s, min or h", "0.8 s"),
    /** Volume per time, liters per second. */
    FLOW("a flow", "gal/min, oz/min, L/min or L/s", "0.45 gal/min"),
    /** Meters per second. */
    SPEED("a speed", "mph, km/h, m/s or kn", "5.5 mph"),
    /** Pascals. */
    PRESSURE("a pressure", "psi, kPa or bar", "30 psi"),
    /** Radians. */
    ANGLE("an angle", "deg or rad", "90 deg"),
    /** Radians per second. */
    TURN_RATE("a turn rate", "deg/s or rad/s", "3 deg/s"),
    /** Dimensionless fraction; 1 is the whole. */
    FRACTION("a share", "%", "28 %"),
    /** Kilograms per square meter. */
    MASS_PER_AREA("a weight per area", "lb/ac or kg/ha", "180 lb/ac"),
    /** Liters. */
    VOLUME("a volume", "gal or L", "1300 gal"),
    /** Kilograms. */
    MASS("a weight", "lb, ton, kg or t", "14380 lb"),
    /** Degrees Celsius; its units differ by an offset too, see {@link Temperature}. */
    TEMPERATURE("a temperature", "F or C", "60 F");

    private final String words;
    private final String unitsToWrite;
    private final String example;

    Dimension(String words, String unitsToWrite, String example) {
        this.words = words;
        this.unitsToWrite = unitsToWrite;
        this.example = example;
    }

    /** Returns the dimension with its article, such as "a length". */
    public String words() {
        return words;
    }

    /** Returns the units a message proposes, such as "gal/ac or L/ha". */
    public String unitsToWrite() {
        return unitsToWrite;
    }

    /** Returns an example with its unit, such as "5.9 m". */
    public String example() {
        return example;
    }

    /** Returns the unit of {@link #example}, for messages that can name only one unit. */
    public String exampleUnit() {
        return example.substring(example.indexOf(' ') + 1);
    }
}
