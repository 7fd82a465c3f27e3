package io.rowledger.rig;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.document.text.TestNotes;
import io.rowledger.rig.Amount.DensityFrom;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Factors by hand from the pound (0.45359237 kg), the US gallon (3.785411784 L) and the acre (4046.8564224 m²). */
class JobReaderTest {
    private static final double LB_PER_AC = 0.45359237 / 4046.8564224;
    private static final double GAL = 3.785411784;

    private static final String RIG = """
            rig: {antenna: {ahead_of_axle: 1 m}, axle_to_hitch: 1 m, hitch: mounted, hitch_to_drop: 2 m}
            rows: {count: 2, spacing: 76 cm}
            products:
              uan: {name: UAN 32-0-0, density: 11.06 lb/gal, density_at: 60 F, analysis: 32-0-0}
              ats: {analysis: 12-0-0-26}
            job:
            """;

    @TempDir
    Path folder;

    private Rig rig(String job) throws IOException {
        String indented = job.indent(2);
        return RigReader.read(Files.writeString(folder.resolve("rig.yaml"), RIG + indented))
                .rig();
    }

    private Job job(String job) throws IOException {
        return rig(job).job();
    }

    @Test
    void facts_are_kept_as_entered_in_their_order_and_blanks_were_not_entered() throws IOException {
        Job job = job("""
                farm: Two Oaks
                crop: " Corn "
                applicator:
                weather: {wind: 8 mph SW, sky: clear}
                phone: 0123
                """);
        assertEquals(
                List.of("farm", "crop", "weather.wind", "weather.sky", "phone"),
                List.copyOf(job.facts().keySet()));
        assertEquals(" Corn ", job.facts().get("crop"));
        assertEquals("0123", job.facts().get("phone"));
        assertEquals(Optional.of("8 mph SW"), job.fact("wind"));
        assertEquals(Optional.empty(), job.fact("applicator"));
        assertEquals(List.of(), job.notes());
        assertEquals(ZoneOffset.UTC, job.zone());
        assertEquals(ZoneId.of("America/Chicago"), job("zone: America/Chicago").zone());
    }

    @Test
    void a_near_miss_is_printed_as_entered_and_said_and_other_keys_are_not() throws IOException {
        Job job = job("""
                certifcate: CA-0000
                Soil-Moisture: moist
                phone: 0123
                helper: A
                ticket: 12
                """);
        assertEquals("CA-0000", job.facts().get("certifcate"));
        assertEquals(
                List.of(
                        "job: certifcate is not a key that the record looks for. Did you mean certificate? It is printed as"
                                + " entered.",
                        "job: Soil-Moisture is not a key that the record looks for. Did you mean soil_moisture? It is printed"
                                + " as entered.",
                        "job: ticket is not a key that the record looks for. Did you mean tickets? It is printed as entered."),
                TestNotes.texts(job.notes()));
    }

    @Test
    void plan_cap_and_credits_are_nitrogen_per_area() throws IOException {
        Job job = job("""
                plan: 180 lb/ac
                cap: 210 lb N/ac
                credits:
                  - {what: Soybeans before, nitrogen: 45 kg/ha}
                """);
        assertEquals(180 * LB_PER_AC, job.planKgPerM2(), 1e-12);
        assertEquals(210 * LB_PER_AC, job.capKgPerM2(), 1e-12);
        assertEquals("180 lb/ac", job.facts().get("plan"));
        assertEquals("Soybeans before", job.credits().get(0).what());
        assertEquals(0.0045, job.credits().get(0).nitrogenKgPerM2(), 1e-15);
        assertTrue(Double.isNaN(Job.NONE.planKgPerM2()));
        assertTrue(Double.isNaN(Job.NONE.capKgPerM2()));
    }

    @Test
    void an_earlier_application_is_nutrients_or_rate_density_and_analysis() throws IOException {
        List<EarlierApplication> earlier = job("""
                earlier:
                  - {date: 2025-11-04, what: Ammonia in the fall, nitrogen: 60 lb/ac}
                  - {date: 2026-04-21, what: Starter, rate: 10 gal/ac, density: 11.65 lb/gal, analysis: 10-34-0}
                  - {date: 2026-03-30, what: Urea and sulfate, rate: 200 lb/ac, analysis: 33-0-0-12}
                """).earlier();
        assertEquals(60 * LB_PER_AC, earlier.get(0).nitrogenKgPerM2(), 1e-12);
        assertTrue(Double.isNaN(earlier.get(0).phosphateKgPerM2()));
        assertEquals("2025-11-04", earlier.get(0).date());
        // 10 gal x 11.65 lb/gal = 116.5 lb: 11.65 lb N and 39.61 lb P2O5 an acre
        assertEquals(11.65 * LB_PER_AC, earlier.get(1).nitrogenKgPerM2(), 1e-12);
        assertEquals(39.61 * LB_PER_AC, earlier.get(1).phosphateKgPerM2(), 1e-12);
        assertEquals(0, earlier.get(1).potashKgPerM2());
        assertEquals("10 gal/ac at 11.65 lb/gal, 10-34-0", earlier.get(1).entered());
        assertEquals(66 * LB_PER_AC, earlier.get(2).nitrogenKgPerM2(), 1e-12);
        assertEquals(24 * LB_PER_AC, earlier.get(2).sulfurKgPerM2(), 1e-12);
        assertEquals("200 lb/ac, 33-0-0-12", earlier.get(2).entered());
    }

    @Test
    void tickets_turn_weight_into_volume_by_their_own_density_or_the_products() throws IOException {
        Job job = job("""
                order: {uan: 1300 gal, ats: 2 ton}
                tickets:
                  - {number: A-17, date: 2026-06-02, product: uan, weight: 14380 lb}
                  - {number: A-18, product: uan, volume: 500 gal, density: 11.2 lb/gal, temperature: 20 C}
                  - {number: A-19, product: ats, weight: 4000 lb}
                  - {number: A-20, product: ats, weight: 1104 lb, volume: 100 gal}
                """);
        assertEquals(1300 * GAL, job.order().get("uan").volumeL(), 1e-9);
        assertEquals(1300 * 11.06 * 0.45359237, job.order().get("uan").massKg(), 1e-9);
        assertEquals(4000 * 0.45359237, job.order().get("ats").massKg(), 1e-9);
        assertTrue(Double.isNaN(job.order().get("ats").volumeL()));
        LoadTicket first = job.tickets().get(0);
        // 14,380 lb at 11.06 lb/gal: 1300.181 gal
        assertEquals(14380 / 11.06 * GAL, first.amount().volumeL(), 1e-9);
        assertEquals(DensityFrom.PRODUCT, first.amount().densityFrom());
        assertTrue(Double.isNaN(first.temperatureC()));
        LoadTicket second = job.tickets().get(1);
        assertEquals(5600 * 0.45359237, second.amount().massKg(), 1e-9);
        assertEquals(DensityFrom.TICKET, second.amount().densityFrom());
        assertEquals(20, second.temperatureC());
        assertTrue(Double.isNaN(job.tickets().get(2).amount().volumeL()));
        assertEquals(DensityFrom.NONE, job.tickets().get(2).amount().densityFrom());
        assertEquals(
                List.of("Load ticket A-18: its density is 1.3% above that of UAN 32-0-0 in the rig file. Nitrogen"
                        + " follows the rig file."),
                TestNotes.texts(job.notes()));
    }

    @Test
    void a_price_is_kept_in_its_currency_by_volume_or_weight() throws IOException {
        Rig rig = rig("price: {uan: 1.85 USD/gal, ats: 420 eur per t}");
        Map<String, Price> prices = rig.job().prices();
        assertEquals("USD", prices.get("uan").currency());
        assertEquals(1.85 / GAL, prices.get("uan").perL(), 1e-12);
        assertEquals("EUR", prices.get("ats").currency());
        assertEquals(0.42, prices.get("ats").perKg(), 1e-12);
        assertTrue(Double.isNaN(prices.get("ats").perLitreOf(rig.products().get(1))));
        assertEquals(1.85 / GAL, prices.get("uan").perLitreOf(rig.products().get(0)), 1e-12);
        assertEquals("$", job("price: {uan: $2/gal}").prices().get("uan").currency());
    }

    @Test
    void a_density_carries_the_temperature_it_is_for() throws IOException {
        Rig rig = rig("farm: Two Oaks");
        assertEquals(28 / 1.8, rig.products().get(0).densityAtC(), 1e-12);
        assertTrue(Double.isNaN(rig.products().get(1).densityAtC()));
    }
}
