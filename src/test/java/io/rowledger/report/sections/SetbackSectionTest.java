package io.rowledger.report.sections;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.report.common.ReportOptions;
import io.rowledger.report.common.SyntheticJob;
import io.rowledger.report.common.Views;
import io.rowledger.report.review.PassReviewReport;
import io.rowledger.report.review.PassReviewTest;
import io.rowledger.setback.Setback;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.Test;

/** Setbacks in words; the figures are worked by hand from {@link SyntheticJob#withSetbacks}. */
class SetbackSectionTest {
    private static SetbackSection section(SyntheticJob job, ReportOptions options) {
        return Objects.requireNonNull(Views.setbacks(job.build(), options));
    }

    private static String plain(String text) {
        return text.replace('\u00a0', ' ');
    }

    private static Setback[] places() {
        return Objects.requireNonNull(new SyntheticJob().withSetbacks().build().setbacks())
                .places()
                .toArray(new Setback[0]);
    }

    @Test
    void without_a_keep_out_file_there_is_no_section() {
        assertNull(Views.setbacks(new SyntheticJob().build(), PassReviewTest.us()));
        assertFalse(PassReviewReport.of(new SyntheticJob().build(), PassReviewTest.us())
                .content()
                .hasSetbacks());
    }

    @Test
    void nothing_inside_is_said_plainly() {
        Setback[] p = places();
        SetbackSection one = section(new SyntheticJob().setbacks(p[1]), PassReviewTest.metric());
        assertEquals("Nothing was applied within the setback of the one place given.", one.summary());
        assertFalse(one.anythingInside());
        assertEquals(List.of(), one.details());
        assertEquals("4.2 m", plain(one.lines().get(0).closest()));
        assertEquals("none", one.lines().get(0).applied());
        SetbackSection three = section(new SyntheticJob().setbacks(p[1], p[2], p[1]), PassReviewTest.metric());
        assertEquals(
                "Nothing was applied within the setbacks of the 3 places given. One place was not reached: more than"
                        + " 5 km (3 miles) from anything applied.",
                plain(three.summary()));
        assertEquals("not reached", three.lines().get(1).closest());
    }

    @Test
    void what_was_applied_is_named_place_by_place() {
        SetbackSection s = section(new SyntheticJob().withSetbacks(), PassReviewTest.metric());
        assertTrue(s.anythingInside());
        assertTrue(
                plain(s.summary())
                        .startsWith("Liquid was applied within the setbacks of 1 of the 3 places given: Well & pump"
                                + " (40.0 L)."),
                s.summary());
        SetbackSection.Line well = s.lines().get(0);
        assertEquals(
                List.of(
                        "18.3 m",
                        "0.0 m",
                        "40.0 L",
                        "17.0 kg N",
                        "600 m²",
                        "13:03:20\u201313:03:51",
                        "2",
                        "3\u20135",
                        "act"),
                List.of(
                        plain(well.setback()),
                        plain(well.closest()),
                        plain(well.applied()),
                        plain(well.nitrogen()),
                        plain(well.ground()),
                        well.when(),
                        well.passes(),
                        well.rows(),
                        well.mark()));
        assertEquals(1, s.details().size());
        assertTrue(s.basis().contains("user's own, from keep-out.geojson"), s.basis());
    }

    @Test
    void a_drop_is_never_printed_as_nothing() {
        Setback well = places()[0];
        Setback drop = new Setback(
                well.keepOut(),
                new double[] {0.01},
                new double[] {0.004},
                0.2,
                well.firstS(),
                well.lastS(),
                List.of(1),
                List.of(1),
                new Setback.Worst(1, 1, well.firstS(), 0.01, 0, 0),
                3);
        SetbackSection s = section(new SyntheticJob().setbacks(drop), PassReviewTest.metric());
        assertEquals("less than 0.1 L", plain(s.lines().get(0).applied()));
        assertEquals("less than 0.1 kg N", plain(s.lines().get(0).nitrogen()));
        assertEquals("< 1 m²", plain(s.lines().get(0).ground()));
    }

    @Test
    void the_verdict_says_it_too() {
        List<String> verdict = PassReviewReport.of(
                        new SyntheticJob().setbacks(places()[1]).build(), PassReviewTest.us())
                .content()
                .verdict();
        assertTrue(
                verdict.contains("Nothing was applied within the setback of the one place given."), verdict.toString());
    }
}
