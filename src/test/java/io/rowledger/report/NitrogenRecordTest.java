package io.rowledger.report;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.report.NitrogenRecord.BudgetLine;
import io.rowledger.report.NitrogenRecord.Item;
import io.rowledger.report.NitrogenRecord.MapClass;
import io.rowledger.report.NitrogenRecord.Missing;
import io.rowledger.report.NitrogenRecord.Sentence;
import io.rowledger.rig.Job;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** Every expected figure is worked by hand from the job described at {@link SyntheticJob}. */
class NitrogenRecordTest {
    private static NitrogenRecord metric(SyntheticJob job) {
        return NitrogenRecordBuilder.build(job.build(), PassReviewTest.metric());
    }

    private static NitrogenRecord us(SyntheticJob job) {
        return NitrogenRecordBuilder.build(job.build(), PassReviewTest.us());
    }

    private static String plain(String text) {
        return text.replace('\u00a0', ' ');
    }

    private static List<String> answer(NitrogenRecord record) {
        return record.answer().stream().map(s -> plain(s.text())).toList();
    }

    private static String item(List<Item> items, String label) {
        return plain(items.stream()
                .filter(i -> i.label().equals(label))
                .findFirst()
                .orElseThrow(() -> new AssertionError(label + " not in " + items))
                .value());
    }

    @Test
    void the_answer_says_how_much_on_how_much_ground_and_how_evenly() {
        // 764.8 L x 1.325 kg/L x 0.32 = 324.3 kg on 1.9 ha: 170.7 kg/ha. Of 20,000 m2: 1,000 skipped (5), 160 doubled
        // (0.8, the largest remainder, so 1), none short, the rest within 10 %.
        assertEquals(
                List.of(
                        "By the flow meters, 171 kilograms of nitrogen a hectare went onto 1.90 hectares, 324 kilograms in "
                                + "all: 764.8 L of UAN 32-0-0.",
                        "On 94 of every 100 hectares, what the ground received was within 10% of the target of 170 kg N/ha; "
                                + "on none it was less, on 1 more, and 5 were skipped.",
                        "0.10 ha was skipped inside the boundary and 0.016 ha was covered twice."),
                answer(metric(new SyntheticJob())));
    }

    @Test
    void the_same_in_customary_units() {
        // 324.2752 kg / 0.45359237 = 714.9 lb; 19,000 m2 / 4,046.8564224 = 4.695 ac; 152.3 lb/ac. 764.8 / 3.785411784.
        assertEquals(
                "By the flow meters, 152 pounds of nitrogen an acre went onto 4.70 acres, 715 pounds in all: 202.0 gal of "
                        + "UAN 32-0-0.",
                answer(us(new SyntheticJob())).get(0));
    }

    @Test
    void earlier_nitrogen_and_credits_count_toward_plan_and_cap() {
        NitrogenRecord record = metric(new SyntheticJob().block(NitrogenJobs.full(210, 250)));
        // 170.67 + 20 + 10 = 200.67 kg/ha.
        assertEquals(
                "With what came before, the total is 201 kg N/ha, 9.3 kg N/ha below the plan of 210 kg N/ha (within 10%) "
                        + "and 49.3 kg N/ha below the cap of 250 kg N/ha.",
                answer(record).get(1));
        // Doubled ground: 2 x 169.6 + 30 kg/ha = 369 kg/ha, above the cap: 160 of 19,000 m2.
        assertEquals(
                "The mean keeps to the cap, but 0.8% of the covered ground, where passes overlap or a row ran high, is above "
                        + "it.",
                answer(record).get(2));
        assertEquals(
                List.of("171", "20.0", "10.0", "201"),
                record.budget().lines().stream().map(BudgetLine::perArea).toList());
        assertEquals(
                List.of(false, true, true, false),
                record.budget().lines().stream().map(BudgetLine::entered).toList());
    }

    @Test
    void a_cap_that_is_exceeded_is_said_plainly() {
        NitrogenRecord record = metric(new SyntheticJob().block(NitrogenJobs.full(210, 190)));
        Sentence said =
                record.answer().stream().filter(Sentence::strong).findFirst().orElseThrow();
        assertEquals("The cap is exceeded: 201 kg N/ha against a cap of 190 kg N/ha.", plain(said.text()));
        BudgetLine cap = record.budget().limits().get(1);
        assertTrue(cap.strong());
        assertEquals("10.7 kg N/ha above the cap", plain(cap.remark()));
    }

    @Test
    void a_total_within_the_cap_is_not_called_exceeded() {
        String all = answer(metric(new SyntheticJob().block(NitrogenJobs.full(210, 250))))
                .toString();
        assertFalse(all.contains("exceeded"), all);
    }

    @Test
    void several_products_add_up_and_their_other_nutrients_are_named() {
        NitrogenRecord record = metric(new SyntheticJob().withSecondProduct());
        // 80 L x 1.32 kg/L = 105.6 kg of ATS: 12 % N is 12.672 kg, 26 % S is 27.456 kg, on 1.9 ha 14.5 kg/ha.
        // 324.275 + 12.672 = 336.9 kg, 177.3 kg/ha.
        assertTrue(
                answer(record).get(0).contains("177 kilograms of nitrogen a hectare"),
                answer(record).get(0));
        assertTrue(
                answer(record)
                        .get(0)
                        .endsWith("337 kilograms in all: 764.8 L of UAN 32-0-0 and 80.0 L of ATS 12-0-0-26S."),
                answer(record).get(0));
        assertEquals("12-0-0-26S", record.liquids().get(1).analysis());
        assertEquals("12.7", record.liquids().get(1).nitrogen());
        assertTrue(
                record.liquidNotes().stream()
                        .map(NitrogenRecordTest::plain)
                        .toList()
                        .contains("Besides nitrogen: 27.5 kg S (14.5 kg/ha)."),
                record.liquidNotes().toString());
    }

    @Test
    void ordered_and_delivered_are_held_against_metered_in_words() {
        List<String> notes = metric(new SyntheticJob().block(NitrogenJobs.full(210, 250))).liquidNotes().stream()
                .map(NitrogenRecordTest::plain)
                .toList();
        // 800 - 764.8 = 35.2 L, 4.6 %; 770 - 764.8 = 5.2 L, 0.7 %.
        assertEquals("800.0 L ordered†, 35.2 L (4.6%) more than the meters counted.", notes.get(0));
        assertEquals(
                "770.0 L delivered on 2 load tickets (no. 4711, 4712)†, 5.2 L (0.7%) more than the meters counted.",
                notes.get(1));
    }

    @Test
    void nitrogen_is_not_known_without_a_density_and_the_record_says_why() {
        NitrogenRecord record = metric(new SyntheticJob().withoutDensity().block(NitrogenJobs.full(210, 250)));
        assertEquals(
                "How much nitrogen went on is not known, because the rig file gives no density for UAN 32-0-0. By the flow "
                        + "meters, 764.8 L of UAN 32-0-0 went onto 1.90 hectares.",
                answer(record).get(0));
        assertTrue(answer(record).get(1).contains("not known"), answer(record).get(1));
        // The liquid is still held against its own target: 400 L/ha.
        assertTrue(
                answer(record).get(2).contains("of the target of 400 L/ha"),
                answer(record).get(2));
        assertEquals("not known", record.budget().lines().get(0).perArea());
        assertEquals("\u2013", record.liquids().get(0).nitrogen());
        assertEquals("L/ha", record.map().unit());
    }

    @Test
    void without_plan_or_target_closeness_is_not_claimed() {
        NitrogenRecord record = metric(new SyntheticJob().withoutTarget());
        assertTrue(
                answer(record).get(1).startsWith("Nobody entered a plan or a target rate"),
                answer(record).get(1));
        assertTrue(record.map().classes().stream().anyMatch(c -> c.note().equals("within 10% of the mean")));
    }

    @Test
    void shares_in_words_add_up_to_a_hundred() {
        assertArrayEquals(new int[] {34, 33, 33}, NitrogenAnswer.ofHundred(33.4, 33.3, 33.3));
        assertArrayEquals(new int[] {94, 0, 1, 5}, NitrogenAnswer.ofHundred(94.2, 0, 0.8, 5));
        assertArrayEquals(new int[] {100, 0, 0}, NitrogenAnswer.ofHundred(100, 0, 0));
        assertArrayEquals(new int[] {100, 0, 0, 0}, NitrogenAnswer.ofHundred(99.7, 0.1, 0.2, 0));
    }

    @Test
    void the_map_is_cut_where_the_total_leaves_the_plan() {
        NitrogenRecord record = metric(new SyntheticJob().block(NitrogenJobs.full(200, Double.NaN)));
        // 200 x 0.5, 0.8, 0.9, 1.1, 1.2, 1.5 less the 30 from before.
        List<MapClass> classes = record.map().classes();
        assertEquals(
                List.of(
                        "up to 70",
                        "70 to 130",
                        "130 to 150",
                        "150 to 190",
                        "190 to 210",
                        "210 to 270",
                        "more than 270"),
                classes.stream().map(MapClass::label).toList());
        assertEquals("within 10% of plan", classes.get(3).note());
        // 160 of 19,000 m2 doubled.
        assertEquals("99.2%", classes.get(3).share());
        assertEquals("0.8%", classes.get(6).share());
    }

    @Test
    void classes_no_ground_can_fall_into_are_left_out_with_their_colors() {
        // 30 kg/ha from before against a plan of 35: 17.5, 28 are below, 31.5 leaves 1.5.
        NitrogenRecord record = metric(new SyntheticJob().block(NitrogenJobs.full(35, Double.NaN)));
        assertEquals(2, record.map().firstColor());
        assertEquals("up to 1.5", record.map().classes().get(0).label());
        assertEquals("1.5 to 8.5", record.map().classes().get(1).label());
        assertEquals("within 10% of plan", record.map().classes().get(1).note());
    }

    @Test
    void what_a_cited_rule_asks_for_and_nobody_entered_is_listed_and_never_made_up() {
        NitrogenRecord bare = metric(new SyntheticJob());
        List<String> missing = bare.missing().stream().map(Missing::item).toList();
        assertTrue(missing.contains("Applicator"), missing.toString());
        assertEquals(RecordFields.notRecorded(Job.NONE).size() - 1, missing.size(), "all but the field's name");
        Missing applicator = bare.missing().stream()
                .filter(m -> m.item().equals("Applicator"))
                .findFirst()
                .orElseThrow();
        assertTrue(applicator.rules().contains("Ohio"), applicator.rules());
        assertEquals("not recorded", bare.head().who().value());
        assertEquals("not recorded", item(bare.how(), "Method"));
        NitrogenRecord full = metric(new SyntheticJob().block(NitrogenJobs.full(210, 250)));
        assertEquals(List.of(), full.missing());
    }

    @Test
    void a_missing_analysis_is_among_what_is_not_recorded() {
        List<String> missing = metric(new SyntheticJob().withoutAnalysis()).missing().stream()
                .map(Missing::item)
                .toList();
        assertTrue(missing.contains("Analysis of UAN 32-0-0"), missing.toString());
    }

    @Test
    void what_was_entered_is_marked_and_what_was_measured_is_not() {
        NitrogenRecord record = metric(new SyntheticJob().block(NitrogenJobs.full(210, 250)));
        assertTrue(record.entered().stream().allMatch(Item::entered));
        assertTrue(record.how().stream().allMatch(Item::entered));
        assertFalse(record.ground().get(0).entered());
        assertTrue(record.head().named());
        assertEquals("Given for soil", item(record.entered(), "Soil and its condition"));
    }

    @Test
    void the_pattern_of_the_knives_is_told_from_the_outside_share() {
        NitrogenRecord record = metric(new SyntheticJob());
        assertEquals("10, 80.0 cm apart, together 8.0 m wide", item(record.how(), "Rows"));
        assertEquals(
                "each outside knife feeds a full row's width, like all others", item(record.how(), "Knife pattern"));
    }

    @Test
    void the_command_names_every_file_and_setting() {
        assertEquals(
                "java -jar rowledger.jar report willow.csv --rig willow.yaml --for landlord --units metric --paper a4",
                metric(new SyntheticJob()).basis().command());
        assertEquals(
                "java -jar rowledger.jar report 'north bottom.csv' --rig willow.yaml --for landlord --units us --paper letter",
                us(new SyntheticJob().file("some/folder/north bottom.csv"))
                        .basis()
                        .command());
    }

    @Test
    void the_basis_holds_the_digests_and_no_folder() {
        NitrogenRecord record = metric(new SyntheticJob().file("/home/somebody/willow.csv"));
        assertEquals("willow.csv", record.basis().files().get(0).name());
        assertEquals("ab".repeat(32), record.basis().files().get(0).sha256());
        assertEquals("cd".repeat(32), record.basis().files().get(1).sha256());
        assertEquals(
                "log: 1,000 of 1,010 records used, 10 dropped",
                plain(record.basis().files().get(0).what()));
        assertFalse(record.toString().contains("somebody"));
    }

    @Test
    void a_fault_the_log_shows_is_not_kept_from_the_landlord() {
        String cautions = metric(new SyntheticJob().withFinding()).cautions().toString();
        assertTrue(cautions.contains("Row 7 looks plugged"), cautions);
        assertTrue(cautions.contains("does not certify yields or losses"), cautions);
        assertTrue(cautions.contains("local nutrient and setback rules"), cautions);
        assertTrue(cautions.contains("not legal advice"), cautions);
    }

    @Test
    void long_text_from_the_user_is_cut_on_the_page() {
        NitrogenRecord record = metric(
                new SyntheticJob().job("field", "F".repeat(800)).block(Job.of(Map.of("soil", "wet ".repeat(200)))));
        assertTrue(record.head().field().length() <= 90, record.head().field());
        assertTrue(record.head().field().endsWith("\u2026"));
        assertTrue(item(record.entered(), "Soil and its condition").length() <= 200);
    }

    @Test
    void a_log_without_a_pass_makes_a_record_that_says_so() {
        NitrogenRecord record = metric(new SyntheticJob().withoutPasses());
        assertFalse(record.hasGround());
        assertTrue(
                answer(record).get(0).startsWith("The log shows no liquid put on"),
                answer(record).get(0));
    }

    @Test
    void one_day_is_not_listed_by_days() {
        assertFalse(metric(new SyntheticJob()).severalDays());
    }
}
