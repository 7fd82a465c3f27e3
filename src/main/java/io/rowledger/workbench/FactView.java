package io.rowledger.workbench;

import io.rowledger.batch.FieldFiles;
import io.rowledger.document.text.Messages;
import io.rowledger.report.record.RecordField;
import io.rowledger.report.record.RecordFields;
import io.rowledger.report.record.RecordRule;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;

/** The screen of the record's facts: what a state's published rule asks for, and what is missing. */
final class FactView {
    private final FieldStore store;

    FactView(FieldStore store) {
        this.store = store;
    }

    /**
     * The facts of a field's job.
     *
     * @param job the block as typed
     * @param states with a published rule that the program knows
     * @param fields facts that only a person knows
     * @param products keys of the products
     */
    record Facts(Map<String, Object> job, List<String> states, List<Fact> fields, List<String> products) {}

    /**
     * A fact.
     *
     * @param key under {@code job:}
     * @param label in words
     * @param example how a person writes it
     * @param states whose rules ask for it; empty if the practice standard alone does
     * @param beside true if it is kept for the farm, beside the records
     */
    record Fact(String key, String label, String example, List<String> states, boolean beside) {}

    Facts facts(String name, Messages words) throws IOException {
        FieldFiles field = store.field(name);
        TreeSet<String> states = new TreeSet<>();
        List<Fact> facts = new ArrayList<>();
        for (RecordField each : RecordFields.all()) {
            if (each.from() != RecordField.From.JOB) {
                continue;
            }
            TreeSet<String> asking = new TreeSet<>();
            for (RecordRule rule : each.rules()) {
                if (!rule.states().isEmpty()) {
                    asking.add(capital(rule.states().get(0)));
                }
            }
            states.addAll(asking);
            facts.add(new Fact(
                    each.key(),
                    words.text(each.label()),
                    each.example(),
                    List.copyOf(asking),
                    each.kept() == RecordField.Kept.BESIDE_IT));
        }
        RigTree rig = store.rig(field);
        return new Facts(
                rig.block("job"),
                List.copyOf(states),
                facts,
                List.copyOf(rig.block("products").keySet()));
    }

    private static String capital(String state) {
        return Character.toUpperCase(state.charAt(0)) + state.substring(1);
    }
}
