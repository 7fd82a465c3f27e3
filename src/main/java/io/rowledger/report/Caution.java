package io.rowledger.report;

import java.util.List;

/**
 * What every report that leads someone to act says first.
 *
 * <p>Fifteen minutes of flushing: National Ag Safety Database 2093 and the safety sheets of UAN solutions (GHS eye
 * irritation 2A). Trapped pressure and the order of closing and bleeding: Iowa State University Extension.
 */
public final class Caution {
    /** Before a wrench touches the machine. */
    public static final String BEFORE_OPENING = "Before you open a line, knife or valve: stop, shut the tank valve, "
            + "isolate every source of energy and let the pressure out of the whole system, plugged knives included. "
            + "Wear eye protection, gloves and long sleeves; keep clean water at hand. Liquid in the eyes or on the skin: "
            + "flush with water for at least 15 minutes and get medical help.";
    /** Ammonia is another matter than solutions. */
    public static final String AMMONIA =
            "Anhydrous ammonia is for trained people only. Never take a line to be empty; " + "work upwind.";
    /** What the report isn't. */
    public static final String RULES =
            "This report is not legal advice and no license to apply. The product label, the "
                    + "safety data sheet, local nutrient and setback rules and licensed practice come first.";
    /** What the meters can't tell. */
    public static final String METERS = "Rates come from the flow meters and positions in the log. A meter that reads "
            + "wrong makes a wrong rate here: catch and measure before you change a setting.";

    private Caution() {}

    /** All of them, in the order they are printed. */
    public static List<String> all() {
        return List.of(BEFORE_OPENING, AMMONIA, RULES, METERS);
    }
}
