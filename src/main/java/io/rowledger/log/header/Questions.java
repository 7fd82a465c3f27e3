package io.rowledger.log.header;

import io.rowledger.finding.UnusableInputException;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

/** Receives refusals: throws the first one for a report, collects all of them for an inspection. */
public final class Questions {
    private final boolean collecting;
    private final List<UnusableInputException> all = new ArrayList<>();

    private Questions(boolean collecting) {
        this.collecting = collecting;
    }

    /** Throws each refusal. */
    public static Questions thrown() {
        return new Questions(false);
    }

    /** Collects the refusals. */
    public static Questions collected() {
        return new Questions(true);
    }

    /** Throws or collects a refusal. */
    public void ask(UnusableInputException question) {
        if (!collecting) {
            throw question;
        }
        if (all.stream().noneMatch(other -> Objects.equals(other.getMessage(), question.getMessage()))) {
            all.add(question);
        }
    }

    /** Runs a step whose refusal may be collected. */
    public void attempt(Runnable step) {
        try {
            step.run();
        } catch (UnusableInputException e) {
            ask(e);
        }
    }

    /** Returns the refusals collected so far. */
    public List<UnusableInputException> all() {
        return List.copyOf(all);
    }
}
