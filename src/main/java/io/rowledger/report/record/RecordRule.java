package io.rowledger.report.record;

import io.rowledger.text.Message;
import java.util.List;
import java.util.Locale;

/**
 * Published rules on what a nutrient application record holds, each read in its source: rules known only from memory are not
 * here. Examples: the reader's own local rules decide. The items
 * that they ask for are in {@link RecordFields}; place, citation and period are in the bundle {@code record}.
 */
public enum RecordRule {
    /** For those who apply for hire or on more than 50 acres; from a certificate holder. */
    OHIO(Status.CITED, "ohio", "oh"),
    /** Applicators for hire. */
    MARYLAND_HIRE(Status.CITED, "maryland", "md"),
    /** Farmers with a nutrient management plan. */
    MARYLAND_FARM(Status.CITED, "maryland", "md"),
    /** Turf; it asks for address and label. Shown in the list of all rules only. */
    MARYLAND_TURF(Status.CITED),
    /** The record that a customer gets. */
    MINNESOTA_HIRE(Status.CITED, "minnesota", "mn"),
    /** Users above a yearly amount. */
    INDIANA(Status.IN_PART, "indiana", "in"),
    /** Yearly nitrogen reports of districts. */
    NEBRASKA(Status.IN_PART, "nebraska", "ne"),
    /** A yearly plan. */
    WISCONSIN(Status.CITED, "wisconsin", "wi"),
    /** Advice of an extension service, after NRCS Code 590. */
    UTAH(Status.CITED, "utah", "ut");

    /** How well the authors of the program know a rule. */
    public enum Status {
        /** Read in the cited source. */
        CITED,
        /** Read in part, or as a proposal. */
        IN_PART
    }

    private final Status status;
    // List.of never changes; the checker knows no types from which it could tell.
    @SuppressWarnings("ImmutableEnumChecker")
    private final List<String> states;

    RecordRule(Status status, String... states) {
        this.status = status;
        this.states = List.of(states);
    }

    /**
     * True if this is a rule of a state that a record may name.
     *
     * @param state its name or postal code, in any case
     */
    boolean isOf(String state) {
        return states.contains(state.strip().toLowerCase(Locale.ROOT));
    }

    /** Name and postal code of the state whose rule it is, in lower case; empty for a rule of no state. */
    public List<String> states() {
        return states;
    }

    /** Whose rule it is, short. */
    Message place() {
        return text("place");
    }

    /** The source. */
    Message citation() {
        return text("citation");
    }

    /** How long records have to be kept. */
    Message period() {
        return text("period");
    }

    /** To whom or what it applies; "-" if there is nothing to add. */
    Message note() {
        return text("note");
    }

    private Message text(String part) {
        return Message.of("record.rule." + name() + "." + part);
    }

    /** How well it is known. */
    public Status status() {
        return status;
    }

    /** When the source was read or published. */
    Message read() {
        return text("read");
    }
}
