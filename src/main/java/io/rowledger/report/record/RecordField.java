package io.rowledger.report.record;

import java.util.List;

/**
 * One fact a nitrogen record should hold.
 *
 * @param key the key under {@code job:} that fills it or adds to it; for facts of log and rig file a name of our own
 * @param label what the record prints
 * @param from what fills it
 * @param source the same in words, such as "products: density"
 * @param kept whether it belongs into each job's record or is kept beside it for the farm
 * @param rules the published rules that ask for it
 * @param example how a person might write it; empty for facts of the log
 */
public record RecordField(
        String key, String label, From from, String source, Kept kept, List<RecordRule> rules, String example) {
    /** What fills a fact. */
    public enum From {
        /** The log. */
        LOG,
        /** The rig file outside its job block. */
        RIG,
        /** The job block: only a person can know it. */
        JOB
    }

    /** Where a fact belongs. */
    public enum Kept {
        /** Into the record of each job. */
        IN_THE_RECORD,
        /** Into the record, where the work was of that kind. */
        WHERE_IT_APPLIES,
        /** Kept for the farm: plans, receipts, tests. The record may point to it. */
        BESIDE_IT
    }

    /** Copies the rules. */
    public RecordField {
        rules = List.copyOf(rules);
    }

    /** True where a rule whose source was read asks for it. */
    public boolean asked() {
        return rules.stream().anyMatch(RecordRule::cited);
    }

    /** Who asks, short: {@code Ohio; Maryland, for hire; USDA NRCS (from memory)}. */
    public String askedBy() {
        return String.join(
                "; ",
                rules.stream()
                        .map(rule -> rule.place() + (rule.cited() ? "" : " (from memory)"))
                        .toList());
    }
}
