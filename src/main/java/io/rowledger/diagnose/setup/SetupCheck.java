package io.rowledger.diagnose.setup;

import java.util.List;

/**
 * What the log says about the setup.
 *
 * @param measures one by one: flow lags in rig order, drop line, side, antenna, wheels, outside share, row order
 */
public record SetupCheck(List<Measure> measures) {
    /** Copies the list. */
    public SetupCheck {
        measures = List.copyOf(measures);
    }

    /** Those that the log contradicts. */
    public List<Measure> differing() {
        return measures.stream().filter(Measure::differs).toList();
    }
}
