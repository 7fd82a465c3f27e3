package io.rowledger.report.record;

import io.rowledger.text.Message;
import java.util.List;

/**
 * One fact that a nitrogen record should hold.
 *
 * @param key the key under {@code job:} that fills it or adds to it; for facts of log and rig file a name of its own
 * @param from what fills it
 * @param source where it stands in the rig file, such as {@code products: density}; empty for facts of the log
 * @param kept whether it belongs in each job's record or is kept beside it for the farm
 * @param rules the published rules that ask for it
 * @param example an example of how a person writes it; may be empty
 */
public record RecordField(String key, From from, String source, Kept kept, List<RecordRule> rules, String example) {
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
        /** In the record of each job. */
        IN_THE_RECORD,
        /** In the record if the work was of that kind. */
        WHERE_IT_APPLIES,
        /** Kept for the farm: plans, receipts, tests. The record may point to it. */
        BESIDE_IT
    }

    /** Copies the rules. */
    public RecordField {
        rules = List.copyOf(rules);
    }

    /** What the record prints beside the value. */
    public Message label() {
        return Message.of("record.field." + key);
    }
}
