package io.rowledger.units;

/** What a figure measures, with the SI unit it is kept in and a figure as a person would write it. */
public enum Dimension {
    /** Metres. */
    LENGTH("a length", "m, cm, mm, ft or in", "5.9 m"),
    /** Kilograms per litre. */
    DENSITY("a density", "lb/gal or kg/L", "11.06 lb/gal"),
    /** Volume per area, litres per square metre. */
    RATE("a volume per area", "gal/ac or L/ha", "42 gal/ac"),
    /** Seconds. */
    TIME("a time", "s, min or h", "0.8 s"),
    /** Volume per time, litres per second. */
    FLOW("a flow", "gal/min, oz/min, L/min or L/s", "0.45 gal/min"),
    /** Metres per second. */
    SPEED("a speed", "mph, km/h, m/s or kn", "5.5 mph"),
    /** Pascals. */
    PRESSURE("a pressure", "psi, kPa or bar", "30 psi"),
    /** Radians. */
    ANGLE("an angle", "deg or rad", "90 deg"),
    /** Radians per second. */
    TURN_RATE("a turn rate", "deg/s or rad/s", "3 deg/s"),
    /** A share of one. */
    FRACTION("a share", "%", "28 %"),
    /** Kilograms per square metre. */
    MASS_PER_AREA("a weight per area", "lb/ac or kg/ha", "180 lb/ac");

    private final String words;
    private final String unitsToWrite;
    private final String example;

    Dimension(String words, String unitsToWrite, String example) {
        this.words = words;
        this.unitsToWrite = unitsToWrite;
        this.example = example;
    }

    /** The dimension with its article, such as "a length". */
    public String words() {
        return words;
    }

    /** The units a message proposes, such as "gal/ac or L/ha". */
    public String unitsToWrite() {
        return unitsToWrite;
    }

    /** A whole figure as a person would write it, such as "5.9 m". */
    public String example() {
        return example;
    }

    /** The unit of the example, the one to propose where only one can be named. */
    public String exampleUnit() {
        return example.substring(example.indexOf(' ') + 1);
    }
}
