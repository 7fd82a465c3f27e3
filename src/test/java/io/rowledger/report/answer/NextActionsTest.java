package io.rowledger.report.answer;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.analysis.Analysis;
import io.rowledger.document.text.Messages;
import io.rowledger.finding.Finding;
import io.rowledger.report.answer.NextActions.Action;
import io.rowledger.report.answer.NextActions.Kind;
import io.rowledger.report.common.JobView;
import io.rowledger.report.common.SyntheticJob;
import io.rowledger.report.findings.FindingUncertainties;
import io.rowledger.units.UnitFormat;
import io.rowledger.units.UnitSystem;
import java.time.ZoneOffset;
import java.util.List;
import org.junit.jupiter.api.Test;

class NextActionsTest {
    private static NextActions of(Analysis a) {
        Messages messages = Messages.english(new UnitFormat(UnitSystem.METRIC, ZoneOffset.UTC));
        JobView job = new JobView(a.rig(), a.log(), a.track(), a.delivery(), a.rates(), a.coverage(), a.intervals());
        FindingUncertainties uncertainties =
                new FindingUncertainties(a.rig(), a.strips(), a.track(), a.coverage(), a.diagnosis(), a.intervals());
        return NextActions.of(job, a.findings(), uncertainties, a.whatIf(), messages);
    }

    private static String plain(String text) {
        return text.replace('\u00a0', ' ');
    }

    /**
     * Figures by hand from {@link SyntheticJob}: 40 L lost by row 7; 5 skips of 200 m² at 0.04 L/m² are 40 L; row 3 is 6 % over
     * its 80 L. The overlap of 160 m² is 0.8 % of 20,000 m², less than one in a hundred, and asks for nothing.
     */
    @Test
    void actions_are_named_by_what_they_cost() {
        List<Action> actions = of(new SyntheticJob().withFinding().build()).actions();
        assertEquals(3, actions.size());
        assertEquals(40, actions.get(0).costL(), 1e-9);
        assertEquals(List.of(7), actions.get(0).rows());
        assertEquals("Check row 7", actions.get(0).title());
        assertEquals(
                "Row 7 looks plugged: 40.0 L too little on 0.10 ha. with the system bled, look at knife 7",
                plain(actions.get(0).text()));
        assertEquals(40, actions.get(1).costL(), 1e-9);
        assertEquals(Kind.DRIVE, actions.get(1).kind());
        assertEquals(4.8, actions.get(2).costL(), 1e-9);
        assertEquals(List.of(3), actions.get(2).rows());
        assertTrue(
                actions.get(2).text().contains("row 3 at +6.0%"), actions.get(2).text());
    }

    /**
     * The first pass began at the field's southwest corner, 36 m west of the middle. Five strips of 250 m each, from west to
     * east, begin at either end: driving them one after the other, up and down, takes the least.
     */
    @Test
    void stops_are_named_in_the_order_that_takes_the_least_driving() {
        Action drive = of(new SyntheticJob().withFinding().build()).actions().get(1);
        assertEquals(List.of("S1", "S2", "S3", "S4", "S5"), drive.places());
        assertEquals(
                "Go in this order: S1, S2, S3, S4, S5. 0.10 ha got nothing; take 40.0 L along."
                        + " Shut off the rows that would run over covered corn.",
                plain(drive.text()));
    }

    /** 160 and 90 of a square meter each are 250 m² of 20,000 m², more than one in a hundred: 10 L at 0.04 L/m². */
    @Test
    void overlap_asks_for_a_change_from_one_in_a_hundred_on() {
        Action overlaps =
                of(new SyntheticJob().extraPlaces(90).build()).actions().get(2);
        assertEquals(Kind.CHANGE, overlaps.kind());
        assertEquals(10, overlaps.costL(), 1e-9);
        assertTrue(overlaps.text().contains("10.0\u00a0L too much"), overlaps.text());
        assertTrue(overlaps.text().contains("pass ran into covered ground (O1)"), overlaps.text());
    }

    @Test
    void findings_beyond_the_third_are_told_by_their_titles() {
        Finding row7 = new SyntheticJob().withFinding().build().findings().get(0);
        List<Finding> four = List.of(with(row7, 2, -4), with(row7, 4, -1), with(row7, 5, -3), with(row7, 7, -2));
        NextActions next = of(new SyntheticJob().even().withFindings(four).build());
        assertEquals(
                List.of(List.of(2), List.of(5), List.of(7)),
                next.actions().stream().map(Action::rows).toList());
        assertEquals(List.of("Row 4 looks plugged."), next.alsoFound());
    }

    private static Finding with(Finding like, int row, double volumeL) {
        return new Finding(
                like.kind(),
                List.of(row),
                like.fromS(),
                like.toS(),
                like.confidence(),
                like.areaM2(),
                volumeL,
                Double.NaN,
                like.latDeg(),
                like.lonDeg(),
                like.evidence(),
                like.alternative(),
                like.check(),
                like.meters());
    }

    @Test
    void an_even_job_asks_for_nothing_and_an_empty_one_says_nothing() {
        NextActions even = of(new SyntheticJob().even().build());
        assertEquals(List.of(), even.actions());
        assertTrue(even.nothing().startsWith("Nothing to do"), even.nothing());
        NextActions empty = of(new SyntheticJob().withoutPasses().build());
        assertEquals(List.of(), empty.actions());
        assertEquals("", empty.nothing());
    }
}
