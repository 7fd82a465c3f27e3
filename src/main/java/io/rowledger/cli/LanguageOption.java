package io.rowledger.cli;

import java.util.Locale;
import picocli.CommandLine.Option;

/** In which language a person reads. */
@SuppressWarnings("NullAway.Init")
final class LanguageOption {
    /** A language that documents are translated into. */
    enum Language {
        /** English as farmers in the United States speak it. */
        EN,
        /** Spanish as people who run rigs in the United States read it. */
        ES
    }

    @Option(
            names = "--language",
            defaultValue = "en",
            paramLabel = "en|es",
            description =
                    "Language of the pass review, the row diagnosis, the comparison, review.html and the places: English or"
                            + " Spanish."
                            + " Other documents are in English.")
    private Language language;

    Locale locale() {
        return language == Language.ES ? Locale.forLanguageTag("es") : Locale.ENGLISH;
    }
}
