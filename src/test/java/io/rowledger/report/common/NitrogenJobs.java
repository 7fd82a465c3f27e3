package io.rowledger.report.common;

import io.rowledger.report.record.RecordField;
import io.rowledger.report.record.RecordFields;
import io.rowledger.rig.Amount;
import io.rowledger.rig.Amount.DensityFrom;
import io.rowledger.rig.Credit;
import io.rowledger.rig.EarlierApplication;
import io.rowledger.rig.Job;
import io.rowledger.rig.LoadTicket;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Job blocks for the record's tests; people and places are made up. */
public final class NitrogenJobs {
    private NitrogenJobs() {}

    /** Every fact the record looks for, so that it is at its longest. */
    public static Map<String, String> facts() {
        Map<String, String> facts = new LinkedHashMap<>();
        for (RecordField field : RecordFields.all()) {
            if (field.from() == RecordField.From.JOB
                    && !List.of("field", "zone").contains(field.key())) {
                facts.put(field.key(), "Given for " + field.key().replace('_', ' '));
            }
        }
        return facts;
    }

    /**
     * Starter of 20 kg N/ha, a credit of 10, plan and cap as given (kg/ha); 800 L ordered, 770 L delivered on two
     * tickets.
     */
    public static Job full(double planKgPerHa, double capKgPerHa) {
        return new Job(
                facts(),
                List.of(new EarlierApplication("2026-04-28", "Starter", 0.002, 0.0068, 0, 0, "20 kg/ha")),
                List.of(new Credit("Soybeans before", 0.001, "10 kg/ha")),
                planKgPerHa / 10_000,
                capKgPerHa / 10_000,
                Map.of("uan", litres(800)),
                List.of(
                        new LoadTicket("4711", "2026-06-13", "uan", litres(400), 15),
                        new LoadTicket("4712", "2026-06-14", "uan", litres(370), Double.NaN)),
                Map.of(),
                List.of());
    }

    static Amount litres(double volumeL) {
        return new Amount(volumeL, Double.NaN, Double.NaN, DensityFrom.NONE, volumeL + " L");
    }
}
