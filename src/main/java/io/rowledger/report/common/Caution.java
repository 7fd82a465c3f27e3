package io.rowledger.report.common;

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

    /**
     * What comes before a hand on the machine, in this order.
     *
     * <p>Order of closing and bleeding, and trapped pressure behind section and knife valves: M. Hanna, Iowa State
     * University. Plugged knives as a cause of accidents: B. Brink, Illinois Periodicals 1998. Bleed before
     * disconnecting: National Ag Safety Database (NASD) 2093.
     */
    public static List<String> opening() {
        return List.of(
                "Stop on level ground, put the tractor in park and take the key.",
                "Shut the tank valve.",
                "Open the farthest downstream knife and section valves.",
                "Then open the section valves upstream of them.",
                "Then open the main valve.",
                "Leave all of them open until the lines are clear.");
    }

    /**
     * What to wear, have at hand and know while doing so.
     *
     * <p>Five gallons of water with the applicator: Ohio OAC 901:5-3-10. Fifteen minutes of flushing: NASD 2093 and B.
     * Brink 1998. Goggles, gauntlets, upwind, never assume a line is empty: Minnesota Department of Agriculture 2022.
     */
    public static List<String> guards() {
        return List.of(
                "On before you start: goggles rated for the product, gauntlet gloves, long sleeves.",
                "Water at hand, at least 5 gallons (19 L) with the applicator. In the eyes or on the skin: flush at once for 15"
                        + " minutes and get medical help.",
                "Stay upwind.",
                "Plugged knives and closed section valves trap pressure: never assume a line is empty.",
                "Anhydrous ammonia: trained people only.",
                "The product label, the safety data sheet, local rules and the maker's manual come first.");
    }

    /** All of them, in the order they are printed. */
    public static List<String> all() {
        return List.of(BEFORE_OPENING, AMMONIA, RULES, METERS);
    }
}
