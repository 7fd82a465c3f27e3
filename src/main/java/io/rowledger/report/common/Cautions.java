package io.rowledger.report.common;

import io.rowledger.text.Message;
import java.util.List;

/**
 * Safety cautions that every report that leads someone to act prints.
 *
 * <p>Fifteen minutes of flushing: National Ag Safety Database (NASD) 2093, B. Brink, Illinois Periodicals 1998, and the safety
 * data sheets of UAN solutions (GHS eye irritation 2A). Order of closing and bleeding, and trapped pressure behind section and
 * knife valves: M. Hanna, Iowa State University Extension. Plugged knives as a cause of accidents: B. Brink 1998. Bleed before
 * disconnecting: NASD 2093. Five gallons of water with the applicator: Ohio OAC 901:5-3-10. Goggles, gauntlets, upwind, never
 * assume a line is empty: Minnesota Department of Agriculture 2022.
 */
public final class Cautions {
    /** Before a hand touches the machine. */
    public static final Message BEFORE_OPENING = Message.of("cautions.beforeOpening");
    /** Anhydrous ammonia. */
    public static final Message AMMONIA = Message.of("cautions.ammonia");
    /** That the report is not legal advice. */
    public static final Message RULES = Message.of("cautions.rules");
    /** That rates rest on meters. */
    public static final Message METERS = Message.of("cautions.meters");

    private Cautions() {}

    /** The steps before anyone opens the system, in their order. */
    public static List<Message> opening() {
        return List.of(
                Message.of("cautions.opening.stop"),
                Message.of("cautions.opening.tank"),
                Message.of("cautions.opening.catch"),
                Message.of("cautions.opening.downstream"),
                Message.of("cautions.opening.upstream"),
                Message.of("cautions.opening.main"),
                Message.of("cautions.opening.leaveOpen"));
    }

    /** What to wear, have at hand and know while doing so. */
    public static List<Message> guards() {
        return List.of(
                Message.of("cautions.guards.wear"),
                Message.of("cautions.guards.water"),
                Message.of("cautions.guards.upwind"),
                Message.of("cautions.guards.trapped"),
                Message.of("cautions.guards.ammonia"),
                Message.of("cautions.guards.first"));
    }

    /** What stands before any step at the machine. */
    public static List<Message> first() {
        return List.of(BEFORE_OPENING, AMMONIA);
    }

    /** What the report is not, and what its rates rest on. */
    public static List<Message> last() {
        return List.of(RULES, METERS);
    }
}
