package io.rowledger.results;

import io.rowledger.units.UnitFormat;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * Numbers in files for machines: so many decimals as mean something, plain notation, the same in every locale; and
 * {@code null} or nothing where a figure isn't known.
 */
public final class JsonNumbers {
    /** Areas in m²: 0.01 m² is less than the uncertainty of a strip's edge. */
    public static final int AREA_M2 = 2;
    /** Volumes in L: a milliliter. */
    public static final int VOLUME_L = 3;
    /** Rates in L/ha. */
    public static final int RATE = 2;
    /** Percent. */
    public static final int PCT = 3;
    /** Lengths in m: a centimeter. */
    public static final int LENGTH_M = 2;
    /** Masses in kg: a gram. */
    public static final int MASS_KG = 3;
    /** Degrees: 1 mm on the ground (RFC 7946 section 11.2 advises against more than the data holds). */
    public static final int DEGREES = 8;

    /** More than any figure has, for figures that were rounded before. */
    static final int MAX_DECIMALS = 8;

    private JsonNumbers() {}

    /** The double nearest to the number with so many decimals; NaN where it isn't finite. */
    static double rounded(double value, int decimals) {
        BigDecimal number = of(value, decimals);
        return number == null ? Double.NaN : number.doubleValue();
    }

    /** The number without trailing zeros, or null where it isn't finite. */
    public static @Nullable BigDecimal of(double value, int decimals) {
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

    /** An instant of epoch seconds, to the millisecond; null where it isn't known. */
    public static @Nullable Instant instant(double epochS) {
        return UnitFormat.isKnown(epochS) ? Instant.ofEpochMilli(Math.round(epochS * 1000)) : null;
    }

    /** Epoch seconds of an instant; NaN for null. */
    static double epochS(@Nullable Instant time) {
        return time == null ? Double.NaN : time.toEpochMilli() / 1000.0;
    }

    /** An instant of epoch seconds as ISO 8601 in UTC to the millisecond; null where it isn't known. */
    public static @Nullable String time(double epochS) {
        Instant time = instant(epochS);
        return time == null ? null : time.toString();
    }
}
