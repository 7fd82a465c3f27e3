package io.rowledger.sim;

/**
 * How the liquid is metered.
 *
 * @param turnCompensation each row follows its own speed; else all follow the bar's mean speed
 * @param shutOff rows shut off one by one over ground already covered
 * @param controllerLagS pure delay from speed and target to the flow
 * @param responseS first-order time constant of the flow
 * @param valveS first-order time constant of opening and closing
 * @param onLatencyS from the command to the valve opening (the shut-off looks ahead by as much)
 * @param offLatencyS from the command to the valve closing (likewise)
 * @param meterNoisePct rms of the meter, percent of reading, new with every record
 * @param supplyCapLPerS most the pump gives, all rows of a product together, L/s
 * @param meanOverInterval log the mean flow since the last record; else (default) the value at the record's instant
 */
public record MeteringModel(
        boolean turnCompensation,
        boolean shutOff,
        double controllerLagS,
        double responseS,
        double valveS,
        double onLatencyS,
        double offLatencyS,
        double meterNoisePct,
        double supplyCapLPerS,
        boolean meanOverInterval) {
    /** Row-by-row metering: compensates for turns, shuts off over covered ground, 1 % meters. */
    public static MeteringModel perRow() {
        return new MeteringModel(true, true, 0.1, 0.4, 0.1, 0.15, 0.1, 1, Double.POSITIVE_INFINITY, false);
    }

    /** One rate for the whole bar: no turn compensation, no row shut-off. */
    public static MeteringModel wholeBar() {
        return new MeteringModel(false, false, 0.2, 0.8, 0.2, 0.25, 0.2, 1, Double.POSITIVE_INFINITY, false);
    }

    /** No lag, no noise, no shut-off: flow is exactly what the target asks. */
    public static MeteringModel ideal() {
        return new MeteringModel(true, false, 0, 0, 0, 0, 0, 0, Double.POSITIVE_INFINITY, false);
    }

    /** The same with or without row shut-off. */
    public MeteringModel withShutOff(boolean on) {
        return new MeteringModel(
                turnCompensation,
                on,
                controllerLagS,
                responseS,
                valveS,
                onLatencyS,
                offLatencyS,
                meterNoisePct,
                supplyCapLPerS,
                meanOverInterval);
    }

    /** The same with or without turn compensation. */
    public MeteringModel withTurnCompensation(boolean on) {
        return new MeteringModel(
                on,
                shutOff,
                controllerLagS,
                responseS,
                valveS,
                onLatencyS,
                offLatencyS,
                meterNoisePct,
                supplyCapLPerS,
                meanOverInterval);
    }

    /** The same with another lag and time constant, s. */
    public MeteringModel withResponse(double lagS, double timeConstantS) {
        return new MeteringModel(
                turnCompensation,
                shutOff,
                lagS,
                timeConstantS,
                valveS,
                onLatencyS,
                offLatencyS,
                meterNoisePct,
                supplyCapLPerS,
                meanOverInterval);
    }

    /** The same with another valve time constant and latencies, s. */
    public MeteringModel withValve(double valve, double onLatency, double offLatency) {
        return new MeteringModel(
                turnCompensation,
                shutOff,
                controllerLagS,
                responseS,
                valve,
                onLatency,
                offLatency,
                meterNoisePct,
                supplyCapLPerS,
                meanOverInterval);
    }

    /** The same with another meter noise, percent rms. */
    public MeteringModel withNoise(double pct) {
        return new MeteringModel(
                turnCompensation,
                shutOff,
                controllerLagS,
                responseS,
                valveS,
                onLatencyS,
                offLatencyS,
                pct,
                supplyCapLPerS,
                meanOverInterval);
    }

    /** The same with a weaker pump, L/s. */
    public MeteringModel withSupplyCap(double capLPerS) {
        return new MeteringModel(
                turnCompensation,
                shutOff,
                controllerLagS,
                responseS,
                valveS,
                onLatencyS,
                offLatencyS,
                meterNoisePct,
                capLPerS,
                meanOverInterval);
    }

    /** The same logging means over the record interval. */
    public MeteringModel loggingMeans() {
        return new MeteringModel(
                turnCompensation,
                shutOff,
                controllerLagS,
                responseS,
                valveS,
                onLatencyS,
                offLatencyS,
                meterNoisePct,
                supplyCapLPerS,
                true);
    }
}
