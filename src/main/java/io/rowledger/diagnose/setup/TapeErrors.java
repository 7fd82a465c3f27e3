package io.rowledger.diagnose.setup;

import org.apache.commons.statistics.distribution.NormalDistribution;

/**
 * How likely a length in a rig file is off by how much: a mixture of normal distributions. Most lengths are right within an
 * inch or two; others are off by inches, by a foot, or by a swapped unit or another point of the bar. Common practice, no
 * source.
 */
final class TapeErrors {
    private static final double FOOT_M = 0.3048;

    private static final double[] WEIGHTS = {0.80, 0.08, 0.025, 0.025, 0.07};
    private static final double[] MEANS_M = {0, 0, -FOOT_M, FOOT_M, 0};
    private static final double[] SIGMAS_M = {0.03, 0.12, 0.04, 0.04, 1.2};

    private TapeErrors() {}

    /**
     * Returns the probability that a length is off by more than a limit.
     *
     * @param limitM the limit, m
     * @param errorM error that something else shows, m
     * @param sigmaM its standard deviation, m
     */
    static double chanceBeyond(double limitM, double errorM, double sigmaM) {
        double all = 0;
        double beyond = 0;
        for (int i = 0; i < WEIGHTS.length; i++) {
            // Two normal densities of one number multiply to a normal one, weighted by how well they agree.
            double variance = SIGMAS_M[i] * SIGMAS_M[i];
            double both = variance + sigmaM * sigmaM;
            double weight = WEIGHTS[i]
                    * NormalDistribution.of(MEANS_M[i], Math.sqrt(both)).density(errorM);
            double mean = (MEANS_M[i] * sigmaM * sigmaM + errorM * variance) / both;
            NormalDistribution product = NormalDistribution.of(mean, Math.sqrt(variance * sigmaM * sigmaM / both));
            all += weight;
            beyond += weight * (1 - product.probability(-limitM, limitM));
        }
        return all > 0 ? beyond / all : 1;
    }
}
