package io.rowledger.report.record;

import io.rowledger.document.text.Messages;
import io.rowledger.document.text.TextTruncation;
import io.rowledger.report.record.NitrogenRecord.Missing;
import io.rowledger.rig.Product;
import io.rowledger.text.Message;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.Predicate;

/**
 * Facts that a record should hold and that neither the job block nor the rig file holds: those that the published rules of
 * the job's state ask for; without such rules those that at least two published rules ask for, without naming rules of
 * other states.
 *
 * @param items what is missing
 * @param intro which rules ask for it
 */
record MissingFacts(List<Missing> items, String intro) {
    MissingFacts {
        items = List.copyOf(items);
    }

    /** Rules that must ask for an item before it stands in the list of a job without a state. */
    private static final int MIN_RULES = 2;

    /** Which rules count, and how many of them must ask for an item. */
    private record Asked(Predicate<RecordRule> by, int least) {}

    static MissingFacts of(RecordInput in, Messages messages) {
        String state = in.job().fact("state").orElse("");
        List<RecordRule> ofState = Arrays.stream(RecordRule.values())
                .filter(rule -> rule.isOf(state))
                .toList();
        Predicate<RecordRule> asks = ofState.isEmpty() ? rule -> true : ofState::contains;
        int least = ofState.isEmpty() ? MIN_RULES : 1;
        List<Missing> items = new ArrayList<>();
        for (RecordField field : RecordFields.notRecorded(in.job())) {
            addIfAsked(items, messages.text(field.label()), field, new Asked(asks, least), messages);
        }
        for (Product product : in.rig().products()) {
            if (Double.isNaN(product.nitrogenFraction())) {
                String item = messages.text("record.missing.analysisOf", TextTruncation.name(product.name()));
                addIfAsked(items, item, RecordFields.of("rig_analysis"), new Asked(asks, least), messages);
            }
        }
        return new MissingFacts(items, messages.text(intro(state, ofState, messages)));
    }

    private static void addIfAsked(
            List<Missing> items, String item, RecordField field, Asked asked, Messages messages) {
        List<String> rules = messages.texts(
                field.rules().stream().filter(asked.by).map(RecordRule::place).toList());
        if (rules.size() >= asked.least) {
            items.add(new Missing(item, String.join("; ", rules)));
        }
    }

    private static Message intro(String state, List<RecordRule> ofState, Messages messages) {
        if (ofState.isEmpty()) {
            return state.isBlank()
                    ? Message.of("record.missing.ofNoState")
                    : Message.of("record.missing.ofOtherState", TextTruncation.name(state));
        }
        List<String> citations = messages.texts(ofState.stream()
                .map(rule -> Message.of("record.missing.source", rule.citation(), rule.read()))
                .toList());
        return Message.of("record.missing.ofState", TextTruncation.name(state), String.join("; ", citations));
    }
}
