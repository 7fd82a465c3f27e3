package io.rowledger.results;

import io.rowledger.rig.Credit;
import io.rowledger.rig.EarlierApplication;
import io.rowledger.rig.Job;
import io.rowledger.units.Factor;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;

/**
 * {@code job} of the summary: what the log can't know, as entered, with its figures in SI.
 *
 * @param zone of printed times
 * @param facts as entered, by key
 */
record JobJson(
        String zone,
        Map<String, String> facts,
        @Decimals(JobJson.PER_HA) double planNitrogenKgPerHa,
        @Decimals(JobJson.PER_HA) double capNitrogenKgPerHa,
        List<Earlier> earlier,
        List<OneCredit> credits) {
    /** Decimals of nutrients in kg/ha: a figure of three digits in any unit comes back as it went in. */
    static final int PER_HA = 4;

    static JobJson of(Job job, ZoneId zone) {
        return new JobJson(
                zone.getId(),
                job.facts(),
                perHa(job.planKgPerM2()),
                perHa(job.capKgPerM2()),
                job.earlier().stream().map(Earlier::of).toList(),
                job.credits().stream().map(OneCredit::of).toList());
    }

    /** An application before this job, over the whole field. */
    record Earlier(
            String date,
            String what,
            @Decimals(PER_HA) double nitrogenKgPerHa,
            @Decimals(PER_HA) double phosphateKgPerHa,
            @Decimals(PER_HA) double potashKgPerHa,
            @Decimals(PER_HA) double sulfurKgPerHa,
            String entered) {
        static Earlier of(EarlierApplication earlier) {
            return new Earlier(
                    earlier.date(),
                    earlier.what(),
                    perHa(earlier.nitrogenKgPerM2()),
                    perHa(earlier.phosphateKgPerM2()),
                    perHa(earlier.potashKgPerM2()),
                    perHa(earlier.sulfurKgPerM2()),
                    earlier.entered());
        }

        EarlierApplication application() {
            return new EarlierApplication(
                    date,
                    what,
                    perM2(nitrogenKgPerHa),
                    perM2(phosphateKgPerHa),
                    perM2(potashKgPerHa),
                    perM2(sulfurKgPerHa),
                    entered);
        }
    }

    /** A nitrogen credit, over the whole field. */
    record OneCredit(String what, @Decimals(PER_HA) double nitrogenKgPerHa, String entered) {
        static OneCredit of(Credit credit) {
            return new OneCredit(credit.what(), perHa(credit.nitrogenKgPerM2()), credit.entered());
        }

        Credit credit() {
            return new Credit(what, perM2(nitrogenKgPerHa), entered);
        }
    }

    static double perHa(double perM2) {
        return perM2 * Factor.SQUARE_METRES_PER_HECTARE;
    }

    static double perM2(double perHa) {
        return perHa / Factor.SQUARE_METRES_PER_HECTARE;
    }
}
