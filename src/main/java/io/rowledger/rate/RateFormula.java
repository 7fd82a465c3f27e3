package io.rowledger.rate;

/**
 * Rate, speed and width to flow, and back.
 *
 * <p>In SI, flow = rate × speed × width with L/s, L/m², m/s and m. In customary units the same is
 * gal/min = gal/ac × mph × in ÷ 5940, in metric L/min = L/ha × km/h × m ÷ 600; both constants are exact. Source: e.g.
 * Cornell Cooperative Extension, Crop and Pest Management Guidelines 2024, Grapes, section 7.6.
 */
public final class RateFormula {
    private RateFormula() {}

    /** Flow, L/s, that puts down the rate (L/m²) at this speed (m/s) over this width (m). */
    public static double flowLPerS(double rateLPerM2, double speedMps, double widthM) {
        return rateLPerM2 * speedMps * widthM;
    }

    /** Rate, L/m², that a flow (L/s) puts down at this speed (m/s) over this width (m). */
    public static double rateLPerM2(double flowLPerS, double speedMps, double widthM) {
        return flowLPerS / (speedMps * widthM);
    }

    /**
     * Error of a row's rate against the bar's mean under uniform flow: v/vᵢ − 1.
     *
     * @param barSpeedMps band-weighted mean forward speed of the bar, v
     * @param rowSpeedMps forward speed of the row, vᵢ, greater than 0
     */
    public static double turnError(double barSpeedMps, double rowSpeedMps) {
        return barSpeedMps / rowSpeedMps - 1;
    }
}
