package io.rowledger.workbench;

import io.rowledger.units.UnitSystem;
import java.util.Locale;

/**
 * How a person reads the page.
 *
 * @param language English or Spanish
 * @param units of figures
 */
record Reader(Locale language, UnitSystem units) {
    /** The name under which a review page holds its text for this reader: {@code es-metric}. */
    String key() {
        return language.getLanguage() + "-" + (units == UnitSystem.METRIC ? "metric" : "us");
    }
}
