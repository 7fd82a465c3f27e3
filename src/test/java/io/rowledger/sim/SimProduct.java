package io.rowledger.sim;

/**
 * A liquid of the simulated job.
 *
 * @param key key in rig file and column names
 * @param name what the rig file says
 * @param densityKgPerL density
 * @param analysis N-P-K, as printed
 * @param targetLPerM2 target rate, L/m²
 * @param flowLagS how much later the meter shows what left the outlet
 * @param densityAt the temperature the density is for, as the rig file says it; empty for none
 */
public record SimProduct(
        String key,
        String name,
        double densityKgPerL,
        String analysis,
        double targetLPerM2,
        double flowLagS,
        String densityAt) {
    /** A product whose density's temperature nobody noted. */
    public SimProduct(
            String key, String name, double densityKgPerL, String analysis, double targetLPerM2, double flowLagS) {
        this(key, name, densityKgPerL, analysis, targetLPerM2, flowLagS, "");
    }

    /** Liters a square meter in one US gallon an acre: 231 in³ of 16.387064 mL over 4046.8564224 m² (exact). */
    public static final double L_PER_M2_IN_GAL_PER_AC = 231 * 0.016387064 / 4046.8564224;

    /** UAN 32-0-0 at 11.06 lb/gal and this many US gallons an acre. */
    public static SimProduct uan32(double galPerAc) {
        return new SimProduct(
                "uan",
                "UAN 32-0-0",
                11.06 * 0.45359237 / (231 * 0.016387064),
                "32-0-0",
                galPerAc * L_PER_M2_IN_GAL_PER_AC,
                0);
    }

    /** Ammonium thiosulfate 12-0-0-26S at this many US gallons an acre. */
    public static SimProduct ats(double galPerAc) {
        return new SimProduct(
                "ats",
                "ATS 12-0-0-26S",
                11.04 * 0.45359237 / (231 * 0.016387064),
                "12-0-0-26",
                galPerAc * L_PER_M2_IN_GAL_PER_AC,
                0);
    }

    /** The same with a late meter. */
    public SimProduct withFlowLag(double lagS) {
        return new SimProduct(key, name, densityKgPerL, analysis, targetLPerM2, lagS, densityAt);
    }

    /** The same with the temperature its density is for, such as "60 F". */
    public SimProduct withDensityAt(String temperature) {
        return new SimProduct(key, name, densityKgPerL, analysis, targetLPerM2, flowLagS, temperature);
    }
}
