package io.rowledger.finding;

import io.rowledger.text.Message;
import java.util.List;

/**
 * One thing that is probably wrong, with what it rests on and what it cost.
 *
 * @param kind what it is
 * @param rows the outlets concerned, from 1 at the left, ascending; empty where it concerns the whole bar
 * @param fromS first sign, seconds since the Unix epoch
 * @param toS last sign, seconds since the Unix epoch
 * @param confidence how sure, 0 to 1
 * @param areaM2 ground it touched, m²
 * @param volumeL liquid too little (negative) or too much (positive), L
 * @param nitrogenKg the same as nitrogen, kg
 * @param latDeg a place to look, degrees WGS 84
 * @param lonDeg a place to look, degrees WGS 84
 * @param evidence one or two sentences with numbers
 * @param alternative what else could explain it
 * @param check what to look at on the machine to tell them apart: steps parted by semicolons, cheapest and safest first
 * @param meters numbers of the meters, from 1, that feed these rows where a meter feeds several rows: then the rows are all of
 *     theirs, because the log can't tell them apart; empty where each row has a meter of its own
 */
public record Finding(
        FindingKind kind,
        List<Integer> rows,
        double fromS,
        double toS,
        double confidence,
        double areaM2,
        double volumeL,
        double nitrogenKg,
        double latDeg,
        double lonDeg,
        Message evidence,
        Message alternative,
        Message check,
        List<Integer> meters) {
    /** Checks the ranges and copies the rows. */
    public Finding {
        rows = List.copyOf(rows);
        meters = List.copyOf(meters);
        if (!(confidence >= 0 && confidence <= 1)) {
            throw new IllegalArgumentException("confidence outside 0..1: " + confidence);
        }
        if (toS < fromS) {
            throw new IllegalArgumentException("a finding that ends before it starts: " + fromS + " to " + toS);
        }
    }

    /** The same of these meters with all their rows. */
    public Finding withMeters(List<Integer> numbers) {
        return new Finding(
                kind,
                rows,
                fromS,
                toS,
                confidence,
                areaM2,
                volumeL,
                nitrogenKg,
                latDeg,
                lonDeg,
                evidence,
                alternative,
                check,
                numbers);
    }
}
