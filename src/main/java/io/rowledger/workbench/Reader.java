package io.rowledger.workbench;

import com.sun.net.httpserver.HttpExchange;
import io.rowledger.document.text.Messages;
import io.rowledger.units.UnitFormat;
import io.rowledger.units.UnitSystem;
import java.time.ZoneOffset;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * How a person reads the page.
 *
 * @param language English or Spanish
 * @param units of figures
 */
record Reader(Locale language, UnitSystem units) {
    private static final Locale SPANISH = Locale.forLanguageTag("es");

    /**
     * Who sent a request. The page says its language and units in headers, a stream of events its language in the address; where
     * neither does, as for the page itself, the browser's first language counts. Units are those of the United States unless the
     * page says metric.
     */
    static Reader of(HttpExchange exchange) {
        String language = exchange.getRequestHeaders().getFirst("X-Language");
        if (language == null) {
            language = parameter(exchange);
        }
        if (language == null) {
            language = exchange.getRequestHeaders().getFirst("Accept-Language");
        }
        boolean spanish = language != null && language.regionMatches(true, 0, "es", 0, 2);
        boolean metric = "metric".equals(exchange.getRequestHeaders().getFirst("X-Units"));
        return new Reader(spanish ? SPANISH : Locale.ENGLISH, metric ? UnitSystem.METRIC : UnitSystem.US);
    }

    private static @Nullable String parameter(HttpExchange exchange) {
        try {
            return Call.query(exchange).get("language");
        } catch (HttpRefusal e) {
            // The address can't be read, which is what this reader is about to be told.
            return null;
        }
    }

    /** The words of the page's language, with figures in its units. */
    Messages messages() {
        return new Messages(new UnitFormat(units, ZoneOffset.UTC).in(language));
    }

    /** The name under which a review page holds its text for this reader: {@code es-metric}. */
    String key() {
        return language.getLanguage() + "-" + (units == UnitSystem.METRIC ? "metric" : "us");
    }
}
