package io.rowledger.text;

import java.util.ArrayList;
import java.util.List;

/** The keys of messages and of those inside them, in reading order: what a text says, whatever its words. */
public final class KeysIn {
    private KeysIn() {}

    /** The keys in these messages. */
    public static List<String> all(List<Message> messages) {
        List<String> keys = new ArrayList<>();
        messages.forEach(message -> add(message, keys));
        return keys;
    }

    private static void add(Argument argument, List<String> keys) {
        if (argument instanceof Message message) {
            keys.add(message.key());
            message.arguments().forEach(each -> add(each, keys));
        } else if (argument instanceof Argument.Sequence sequence) {
            sequence.values().forEach(each -> add(each, keys));
        }
    }
}
