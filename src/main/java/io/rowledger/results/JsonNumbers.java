package io.rowledger.results;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Instant;

/**
 * Numbers in files for machines: so many decimals as mean something, plain notation, the same in every locale; and
 * {@code null} or nothing where a figure isn't known.
 */
public final class JsonNumbers {
    /** A square centimetre is less than a strip's edge can be known to. */
    public static final int AREA_M2 = 2;
    /** A millilitre. */
    public static final int VOLUME_L = 3;
    /** Rates in L/ha. */
    public static final int RATE = 2;
    /** Percent. */
    public static final int PCT = 3;
    /** Metres. */
    public static final int LENGTH_M = 2;
    /** A gram of nitrogen. */
    public static final int NITROGEN_KG = 3;
    /** Degrees: 1 mm on the ground (RFC 7946 section 11.2 advises against more than the data holds). */
    public static final int DEGREES = 8;

    private JsonNumbers() {}

    /** The number without trailing zeros, or null where it isn't finite. */
    public static @org.jspecify.annotations.Nullable BigDecimal of(double value, int decimals) {
        if (!Double.isFinite(value)) {
            return null;
        }
        BigDecimal rounded = BigDecimal.valueOf(value).setScale(decimals, RoundingMode.HALF_UP);
        return rounded.signum() == 0 ? BigDecimal.ZERO : rounded.stripTrailingZeros();
    }

    /** The same as text; empty where it isn't finite. */
    public static String text(double value, int decimals) {
        BigDecimal number = of(value, decimals);
        return number == null ? "" : number.toPlainString();
    }

    /** A field of a JSON object. */
    public static void field(JsonGenerator json, String name, double value, int decimals) throws IOException {
        json.writeFieldName(name);
        BigDecimal number = of(value, decimals);
        if (number == null) {
            json.writeNull();
        } else {
            json.writeNumber(number.toPlainString());
        }
    }

    /** An instant as ISO 8601 in UTC to the millisecond, or null. */
    public static @org.jspecify.annotations.Nullable String time(double epochS) {
        return Double.isFinite(epochS)
                ? Instant.ofEpochMilli(Math.round(epochS * 1000)).toString()
                : null;
    }
}
