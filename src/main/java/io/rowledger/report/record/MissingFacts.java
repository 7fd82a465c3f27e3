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
 * the job's state ask for; without such rules those that any published rule asks for, without naming rules of other states.
 * Rules that are known from memory only are left out.
 *
 * @param items what is missing
 * @param intro which rules ask for it
 */
record MissingFacts(List<Missing> items, String intro) {
    MissingFacts {
        items = List.copyOf(items);
    }

    static MissingFacts of(RecordInput in, Messages messages) {
        String state = in.job().fact("state").orElse("");
        List<RecordRule> ofState = Arrays.stream(RecordRule.values())
                .filter(rule -> rule.isOf(state))
                .toList();
        Predicate<RecordRule> asks = ofState.isEmpty() ? RecordRule::cited : ofState::contains;
        List<Missing> items = new ArrayList<>();
        for (RecordField field : RecordFields.notRecorded(in.job())) {
            addIfAsked(items, messages.text(field.label()), field, asks, messages);
        }
        for (Product product : in.rig().products()) {
            if (Double.isNaN(product.nitrogenFraction())) {
                String item = messages.text("record.missing.analysisOf", TextTruncation.name(product.name()));
                addIfAsked(items, item, RecordFields.of("rig_analysis"), asks, messages);
            }
        }
        return new MissingFacts(items, messages.text(intro(state, ofState, messages)));
    }

    private static void addIfAsked(
            List<Missing> items, String item, RecordField field, Predicate<RecordRule> asks, Messages messages) {
        List<String> rules = messages.texts(
                field.rules().stream().filter(asks).map(RecordRule::place).toList());
        if (!rules.isEmpty()) {
            items.add(new Missing(item, String.join("; ", rules)));
        }
    }

    private static Message intro(String state, List<RecordRule> ofState, Messages messages) {
        if (ofState.isEmpty()) {
            return Message.of("record.missing.ofNoState");
        }
        List<String> citations =
                messages.texts(ofState.stream().map(RecordRule::citation).toList());
        return Message.of("record.missing.ofState", TextTruncation.name(state), String.join("; ", citations));
    }
}
