package io.rowledger.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.report.RecordField.From;
import io.rowledger.report.RecordField.Kept;
import io.rowledger.rig.Job;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class RecordFieldsTest {
    private static List<String> keys(From from) {
        return RecordFields.all().stream()
                .filter(field -> field.from() == from)
                .map(RecordField::key)
                .toList();
    }

    private static List<String> notRecorded(Job job) {
        return RecordFields.notRecorded(job).stream().map(RecordField::key).toList();
    }

    @Test
    void every_key_the_program_looks_for_stands_in_the_list_once_and_no_other() {
        List<String> listed = keys(From.JOB);
        assertEquals(new TreeSet<>(Job.keys()), new TreeSet<>(listed));
        assertEquals(listed.size(), new HashSet<>(listed).size());
        assertEquals(Job.keys().size(), listed.size());
    }

    /** The items each source asks for, by the keys that fill them. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            # rule          | keys                                                                     | source and status
            OHIO            | log_times log_place field log_area log_rate log_volume rig_analysis applicator certificate_holder soil method weather temperature precipitation forecast frozen_or_snow | Ohio Administrative Code 901:5-4-04 (codes.ohio.gov): seen
            MARYLAND_HIRE   | rig_product log_volume log_area crop log_place field log_times rig_analysis certificate | COMAR 15.20.06.05: seen
            MARYLAND_FARM   | plan receipts soil_test manure_test field log_volume log_rate log_times rig_product rig_analysis reason yield | Maryland Department of Agriculture 2003: seen
            MARYLAND_TURF   | applicator log_times log_area address rig_analysis log_rate log_volume receipts | COMAR 15.20.10.13, its label kept with the receipts: seen
            MINNESOTA_HIRE  | log_volume rig_analysis customer address log_area derived_from           | Minnesota Department of Agriculture, licence answers: seen
            INDIANA         | customer certificate log_volume rig_analysis log_times                   | 355 IAC 8 as proposed, Purdue notes, training slides: seen in part
            NEBRASKA        | log_area crop yield water_test soil_test plan log_rate                   | Central Platte and Lower Elkhorn districts: seen in part
            WISCONSIN       | plan plan_review                                                         | ATCP 50.04(3): seen
            UTAH            | source field log_place log_rate log_times weather soil_moisture method rig_machine crop planted harvested | Utah State University Extension: seen
            NRCS_590        | soil_test manure_test water_test log_volume rig_analysis rig_product source log_times method log_rate weather soil_moisture incorporation crop planted harvested yield plan_review | NRCS Code 590, operation and maintenance: from memory
            """)
    void a_rule_asks_for_the_items_its_source_names(RecordRule rule, String keys, String source) {
        Set<String> asked = new TreeSet<>();
        for (RecordField field : RecordFields.all()) {
            if (field.rules().contains(rule)) {
                asked.add(field.key());
            }
        }
        assertEquals(new TreeSet<>(Arrays.asList(keys.strip().split(" "))), asked, source);
    }

    @Test
    void only_rules_that_were_read_are_called_cited() {
        String text = String.join("\n", RecordFieldList.text());
        assertTrue(text.contains("USDA NRCS (from memory)\n"), text);
        assertTrue(text.contains("Ohio (cited)\n      Ohio Administrative Code 901:5-4-04; keep: 3 years;"), text);
        assertTrue(text.contains("Indiana (cited in part)\n"), text);
        assertFalse(text.contains("USDA NRCS (cited"), text);
        for (RecordField field : RecordFields.all()) {
            if (field.rules().equals(List.of(RecordRule.NRCS_590))) {
                assertFalse(field.asked(), field.key());
            }
        }
    }

    @Test
    void both_lists_begin_and_end_with_the_deference_to_local_rules() {
        List<String> text = RecordFieldList.text();
        assertEquals("Examples of published rules; defer to your local rules.", text.get(1));
        assertEquals(text.get(1), text.get(text.size() - 1));
        List<String> yaml = RecordFieldList.yaml();
        assertEquals("# " + text.get(1), yaml.get(1));
        assertEquals("# " + text.get(1), yaml.get(yaml.size() - 1));
    }

    @Test
    void what_nobody_entered_and_a_cited_rule_asks_for_is_not_recorded() {
        List<String> missing = notRecorded(Job.NONE);
        assertTrue(missing.containsAll(List.of("applicator", "certificate", "soil", "forecast", "plan", "crop")));
        // Asked for by nobody, by a rule from memory alone, or kept beside the record.
        for (String key : List.of("wind", "tract", "incorporation", "receipts", "soil_test", "earlier", "price")) {
            assertFalse(missing.contains(key), key);
        }
        Job job = Job.of(Map.of("applicator", "A. Person", "weather.forecast", "Rain"));
        List<String> left = new ArrayList<>(missing);
        left.removeAll(List.of("applicator", "forecast"));
        assertEquals(left, notRecorded(job));
    }

    @Test
    void a_whole_job_block_leaves_nothing_out() {
        Map<String, String> facts = new java.util.TreeMap<>();
        for (RecordField field : RecordFields.all()) {
            if (field.kept() != Kept.BESIDE_IT) {
                facts.put(field.key(), "as entered");
            }
        }
        Job job = new Job(facts, List.of(), List.of(), 0.02, Double.NaN, Map.of(), List.of(), Map.of(), List.of());
        assertEquals(List.of(), notRecorded(job));
    }
}
