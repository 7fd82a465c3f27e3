package io.rowledger.stats;

/**
 * Mean and spread of weighted values in one pass, without the cancellation of sums of squares.
 *
 * <p>D. H. D. West, "Updating mean and variance estimates: an improved method", Comm. ACM 22 (1979) 532-535. Weights are
 * amounts (areas, m²), so the spread of the population divides by the sum of weights; with unit weights the sample's
 * divides by n − 1.
 */
public final class WeightedMoments {
    private double weight;
    private double mean;
    private double squares;

    /** Adds a value with a weight of at least 0; a weight of 0 changes nothing. */
    public void add(double value, double weightOfValue) {
        if (weightOfValue > 0) {
            weight += weightOfValue;
            double delta = value - mean;
            mean += delta * (weightOfValue / weight);
            squares += weightOfValue * delta * (value - mean);
        }
    }

    /** Sum of the weights. */
    public double weight() {
        return weight;
    }

    /** Weighted mean; NaN where nothing was added. */
    public double mean() {
        return weight > 0 ? mean : Double.NaN;
    }

    /** Standard deviation of the whole population the weights describe; NaN where nothing was added. */
    public double populationDeviation() {
        return weight > 0 ? Math.sqrt(squares / weight) : Double.NaN;
    }

    /** Standard deviation of a sample with unit weights, dividing by n − 1; NaN below two values. */
    public double sampleDeviation() {
        return weight > 1 ? Math.sqrt(squares / (weight - 1)) : Double.NaN;
    }

    /** Coefficient of variation of the population, as a fraction; NaN where the mean is 0 or unknown. */
    public double variation() {
        return mean() == 0 ? Double.NaN : populationDeviation() / mean();
    }
}
