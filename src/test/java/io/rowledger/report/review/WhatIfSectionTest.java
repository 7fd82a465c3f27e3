package io.rowledger.report.review;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.analysis.Analysis;
import io.rowledger.coverage.sections.Grouping;
import io.rowledger.coverage.sections.ShutOffCase;
import io.rowledger.document.text.Messages;
import io.rowledger.finding.FindingKind;
import io.rowledger.rate.TurnShift;
import io.rowledger.report.common.SyntheticJob;
import io.rowledger.report.common.Views;
import io.rowledger.report.review.WhatIfSection.Line;
import io.rowledger.rig.Job;
import io.rowledger.rig.Price;
import io.rowledger.units.UnitFormat;
import io.rowledger.units.UnitSystem;
import io.rowledger.whatif.WhatIf;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** Figures by pocket calculator: UAN of 1.325 kg/L with 32 % N holds 0.424 kg N a liter. */
class WhatIfSectionTest {
    private static final UnitFormat METRIC = new UnitFormat(UnitSystem.METRIC, ZoneOffset.UTC);
    private static final double[] ROWS = new double[10];

    private static Job prices(Map<String, Price> prices) {
        return new Job(Map.of(), List.of(), List.of(), Double.NaN, Double.NaN, Map.of(), List.of(), prices, List.of());
    }

    private static Analysis job(SyntheticJob job, WhatIf whatIf) {
        Analysis a = job.build();
        return new Analysis(
                a.rig(),
                a.log(),
                a.track(),
                a.strips(),
                a.delivery(),
                a.rates(),
                a.coverage(),
                a.diagnosis(),
                a.intervals(),
                a.setup(),
                a.notes(),
                null,
                null,
                List.of(),
                List.of(),
                whatIf);
    }

    private static ShutOffCase rows(double overlapLessM2, double... savedL) {
        Grouping grouping =
                new Grouping(Grouping.Kind.ROWS, List.of(List.of(1), List.of(2), List.of(3, 4, 5, 6, 7, 8, 9, 10)));
        return new ShutOffCase(grouping, savedL, 0, overlapLessM2, 0, 0, overlapLessM2, 0, 0);
    }

    private static WhatIf shutOff(ShutOffCase one) {
        return new WhatIf(List.of(one), List.of(), List.of(), List.of());
    }

    private static String plain(String text) {
        return text.replace('\u00a0', ' ');
    }

    @Test
    void litres_become_nitrogen_and_money_at_the_price_entered() {
        // 100 L × 0.424 kg = 42.4 kg N; 1.85 USD/gal ÷ 3.785411784 L = 0.48872 USD/L.
        Price price = new Price("USD", 1.85 / 3.785411784, Double.NaN, "1.85 USD/gal");
        Analysis a = job(new SyntheticJob().block(prices(Map.of("uan", price))), shutOff(rows(2500, 100)));
        Line line = section(a, METRIC).lines().get(0);
        assertEquals("Row-by-row shut-off", line.what());
        assertEquals("100.0 L less", plain(line.liquid()));
        assertEquals("42.4 kg N less", plain(line.nitrogen()));
        assertEquals("0.25 ha less overlap", plain(line.ground()));
        assertEquals(48.872, figures(a).money(0, 100), 0.001);
        assertTrue(plain(line.money()).matches("(48\\.87|49) USD less"), line.money());
    }

    @Test
    void a_price_by_weight_goes_by_the_density() {
        // 420 EUR/t × 1.325 kg/L = 0.5565 EUR/L.
        Price price = new Price("EUR", Double.NaN, 0.42, "420 EUR/t");
        Analysis a = job(new SyntheticJob().block(prices(Map.of("uan", price))), shutOff(rows(2500, -100)));
        assertEquals(-55.65, figures(a).money(0, -100), 1e-9);
        assertTrue(section(a, METRIC).lines().get(0).money().endsWith("EUR more"));
    }

    @Test
    void two_currencies_never_add_up_and_one_does() {
        Price usd = new Price("USD", 0.5, Double.NaN, "0.5 USD/L");
        Price eur = new Price("EUR", 2, Double.NaN, "2 EUR/L");
        SyntheticJob two = new SyntheticJob().withSecondProduct();
        String second = two.build().rig().products().get(1).key();
        Analysis mixed = job(two.block(prices(Map.of("uan", usd, second, eur))), shutOff(rows(2500, 10, 3)));
        assertEquals(Map.of("USD", 5.0, "EUR", 6.0), figures(mixed).money(new double[] {10, 3}));
        Price also = new Price("USD", 2, Double.NaN, "2 USD/L");
        Analysis same = job(two.block(prices(Map.of("uan", usd, second, also))), shutOff(rows(2500, 10, 3)));
        assertEquals(Map.of("USD", 11.0), figures(same).money(new double[] {10, 3}));
    }

    @Test
    void without_a_price_there_is_no_money() {
        WhatIfSection section = section(job(new SyntheticJob(), shutOff(rows(2500, 100))), METRIC);
        assertFalse(section.hasMoney());
        assertEquals("\u2013", section.lines().get(0).money());
    }

    @Test
    void a_change_too_small_to_tell_is_said_to_be_none_the_log_can_show() {
        WhatIfSection section = section(job(new SyntheticJob(), shutOff(rows(0, 0))), METRIC);
        assertFalse(section.hasLines());
        assertTrue(section.assumes().isEmpty());
        assertTrue(
                section.notShown().get(0).startsWith("Row-by-row shut-off: no gain the log can show"),
                section.notShown().get(0));
    }

    @Test
    void turn_compensation_moves_liquid_and_saves_none_or_can_not_be_told() {
        TurnShift none = new TurnShift(300, 0.1, ROWS, 12.5, 4000, 0);
        TurnShift well = new TurnShift(300, 0.97, ROWS, 0.1, 0, 0);
        TurnShift untold = new TurnShift(3, Double.NaN, ROWS, 0, 0, 0);
        WhatIfSection shown =
                section(job(new SyntheticJob(), new WhatIf(List.of(), List.of(none), List.of(), List.of())), METRIC);
        assertEquals(
                "12.5 L to other rows, none saved", plain(shown.lines().get(0).liquid()));
        assertEquals("5.3 kg N moved", plain(shown.lines().get(0).nitrogen()));
        assertTrue(
                shown.assumes().get(0).contains("10% of the turning"),
                shown.assumes().get(0));
        WhatIfSection kept =
                section(job(new SyntheticJob(), new WhatIf(List.of(), List.of(well), List.of(), List.of())), METRIC);
        assertFalse(kept.hasLines());
        assertTrue(kept.notShown().get(0).contains("97%"), kept.notShown().get(0));
        WhatIfSection open =
                section(job(new SyntheticJob(), new WhatIf(List.of(), List.of(untold), List.of(), List.of())), METRIC);
        assertTrue(
                open.notShown().get(0).contains("can't be told"),
                open.notShown().get(0));
    }

    @Test
    void another_speed_and_rows_in_time_use_more_liquid() {
        WhatIf.Slower slower = new WhatIf.Slower(0, 2, 2.5, 8000, 40, 600);
        WhatIf.InTime late = new WhatIf.InTime(FindingKind.LATE_ON, 0, List.of(2, 3), 150, 6);
        WhatIfSection section = section(
                job(new SyntheticJob(), new WhatIf(List.of(), List.of(), List.of(slower), List.of(late))), METRIC);
        Line speed = section.lines().get(0);
        assertEquals("At 7.2 km/h at most", plain(speed.what()));
        assertTrue(plain(speed.liquid()).endsWith("L more"), speed.liquid());
        assertEquals("0.80 ha at its rate, 10 min 0 s more", plain(speed.ground()));
        Line inTime = section.lines().get(1);
        assertEquals(
                "On in time: rows 2, 3",
                plain(inTime.what()).replace("2\u20133", "2, 3").replace("2 and 3", "2, 3"));
        assertTrue(plain(inTime.liquid()).endsWith("L more"), inTime.liquid());
    }

    private static WhatIfSection section(Analysis a, UnitFormat f) {
        return WhatIfWriter.section(a.whatIf(), Views.job(a), Messages.english(f));
    }

    private static WhatIfFigures figures(Analysis a) {
        return new WhatIfFigures(a.rig(), a.coverage(), a.intervals(), a.rates().sweptAreaM2());
    }
}
