package io.rowledger.diagnose.setup;

/**
 * Where a pass starts or stops.
 *
 * @param pass from 1
 * @param start true for a start
 * @param timeS when, s
 * @param eastM the middle of the drop line there
 * @param northM the middle of the drop line there
 * @param headingRad the bar's heading there
 * @param speedMps speed of the drop line there
 * @param halfM how far it may lie ahead or behind, m: the bar was lowered or lifted between two records
 */
record PassEnd(
        int pass,
        boolean start,
        double timeS,
        double eastM,
        double northM,
        double headingRad,
        double speedMps,
        double halfM) {}
