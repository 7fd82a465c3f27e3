package io.rowledger.report.sections;

import io.rowledger.coverage.CoverageDefect;
import io.rowledger.text.Message;
import java.util.Locale;

/** Words for the causes of skips and overlaps. */
public final class DefectPhrases {
    private DefectPhrases() {}

    /** The likely cause. */
    public static Message cause(CoverageDefect.Cause cause) {
        return Message.of("words.cause." + cause.name().toLowerCase(Locale.ROOT));
    }

    /** What to look at on the spot to confirm the cause; common practice, no source. */
    public static Message lookAt(CoverageDefect.Cause cause) {
        return Message.of("words.lookAt." + cause.name().toLowerCase(Locale.ROOT));
    }
}
