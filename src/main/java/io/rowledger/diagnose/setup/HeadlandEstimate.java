package io.rowledger.diagnose.setup;

/**
 * Drop offset error and lowering habit from headland crossings, fitted together: a normal distribution in two dimensions.
 *
 * <p>The habit is the mean of how late the bar is lowered and lifted. It moves an end along the direction of travel by speed ×
 * habit, a drop line set up too far back moves it against it. So at one speed v only the mismatch m = error − v·habit is
 * determined, and the two share it as far as the habit's prior allows.
 *
 * @param errorM how much farther back than it is the drop line is set up, m
 * @param habitS how much later than on the line the bar is lowered and lifted, mean of both, s
 * @param errorVarM2 variance of the error, m²
 * @param habitVarS2 variance of the habit, s²
 * @param covMS covariance of both, m·s
 * @param n number of crossings
 */
record HeadlandEstimate(double errorM, double habitS, double errorVarM2, double habitVarS2, double covMS, int n) {
    /**
     * Standard deviation of the prior of the habit, s: a person lowers and lifts up to 2 s early or late; common practice, no
     * source. The same for half the difference between lowering and lifting.
     */
    static final double HABIT_PRIOR_S = 1;

    /** Returns the half of the mismatch at a headland that is crossed at this speed (m/s), m. */
    double mismatchM(double speedMps) {
        return errorM - speedMps * habitS;
    }

    /** Returns the standard deviation of {@link #mismatchM}, m. */
    double mismatchSigmaM(double speedMps) {
        return Math.sqrt(Math.max(0, errorVarM2 + speedMps * speedMps * habitVarS2 - 2 * speedMps * covMS));
    }

    double errorSigmaM() {
        return Math.sqrt(errorVarM2);
    }

    double habitSigmaS() {
        return Math.sqrt(habitVarS2);
    }

    /** Sums of a mixture of normal distributions of error, habit and the difference between lowering and lifting. */
    static final class Mixture {
        private double weights;
        private final double[] mean = new double[3];
        private final double[][] square = new double[3][3];

        void add(double weight, double[] pointMean, double[][] covariance) {
            weights += weight;
            for (int a = 0; a < mean.length; a++) {
                mean[a] += weight * pointMean[a];
                for (int b = 0; b < mean.length; b++) {
                    square[a][b] += weight * (covariance[a][b] + pointMean[a] * pointMean[b]);
                }
            }
        }

        HeadlandEstimate estimate(int n) {
            return new HeadlandEstimate(
                    mean[0] / weights, mean[1] / weights, covariance(0, 0), covariance(1, 1), covariance(0, 1), n);
        }

        private double covariance(int a, int b) {
            return square[a][b] / weights - mean[a] / weights * mean[b] / weights;
        }
    }
}
