package io.rowledger.diagnose;

import io.rowledger.sim.Console;
import io.rowledger.sim.LogFormat;
import java.util.function.UnaryOperator;

/** Forms in which consoles write logs, and ways of driving that logs have. Sizes are common practice, no source. */
enum LogForm {
    /** Four decimals, the flow of the instant. */
    IDEAL(0, Console.NONE, f -> f),
    ROUNDED_TENTH(0, Console.NONE.rounded(0.1), f -> f.withUnits(true)),
    ROUNDED_HUNDREDTH(0, Console.NONE.rounded(0.01), f -> f.withUnits(true)),
    AVERAGED_3_S(0, Console.NONE.averaged(3), f -> f),
    AVERAGED_5_S(0, Console.NONE.averaged(5).rounded(0.01), f -> f.withUnits(true)),
    HELD_2_S(0, Console.NONE.held(2), f -> f),
    ONE_HERTZ_TENTH(1, Console.NONE.rounded(0.1), f -> f.withUnits(true)),
    FIVE_SECONDS(1, Console.NONE.oneIn(5), f -> f),
    ROWS_IN_TURN(5, Console.NONE.skewed(0.2), f -> f),
    COMMANDS(0, Console.NONE, f -> f.with(LogFormat.Column.ON)),
    FEW_COLUMNS(
            0,
            Console.NONE,
            f -> f.without(
                    LogFormat.Column.DOWN,
                    LogFormat.Column.TARGET,
                    LogFormat.Column.ON,
                    LogFormat.Column.TOTAL,
                    LogFormat.Column.SPEED,
                    LogFormat.Column.COURSE)),
    STOP_AND_GO(0, Console.NONE, f -> f),
    /** Ends of passes at a slope to the bar, where rows shut off one by one outside of the field, half of them with commands logged. */
    SLOPED_ENDS(0, Console.NONE, f -> f),
    /** Passes of 50 to 80 m. */
    SHORT_FIELD(0, Console.NONE, f -> f);

    private final double rateHz;

    @SuppressWarnings("ImmutableEnumChecker") // a record of numbers
    private final Console console;

    @SuppressWarnings("ImmutableEnumChecker") // a function without state
    private final UnaryOperator<LogFormat> columns;

    LogForm(double rateHz, Console console, UnaryOperator<LogFormat> columns) {
        this.rateHz = rateHz;
        this.console = console;
        this.columns = columns;
    }

    /** Records a second of the receiver, or 0 where any will do. */
    double rateHz() {
        return rateHz;
    }

    Console console() {
        return console;
    }

    LogFormat format(LogFormat drawn) {
        return columns.apply(drawn);
    }
}
