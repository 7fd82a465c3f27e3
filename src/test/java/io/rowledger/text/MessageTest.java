package io.rowledger.text;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import io.rowledger.units.QuantityKind;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class MessageTest {
    @Test
    void plain_values_become_arguments_of_their_kind() {
        Message inner = Message.of("words.inner");
        Message message = Message.of(
                "words.outer",
                "UAN",
                3,
                4L,
                Instant.ofEpochMilli(1500),
                inner,
                List.of(1, "b"),
                Message.value(QuantityKind.AREA, 2));
        assertEquals(
                List.of(
                        new Argument.Text("UAN"),
                        new Argument.Count(3),
                        new Argument.Count(4),
                        new Argument.Time(1.5),
                        inner,
                        new Argument.Sequence(List.of(new Argument.Count(1), new Argument.Text("b"))),
                        new Argument.Physical(QuantityKind.AREA, 2)),
                message.arguments());
    }

    @Test
    void a_number_must_say_how_it_is_printed() {
        assertThrows(IllegalArgumentException.class, () -> Message.of("words.outer", 4.2));
        assertThrows(IllegalArgumentException.class, () -> Message.of("words.outer", List.of(4.2)));
    }

    @Test
    void a_message_does_not_change_with_the_list_it_was_made_from() {
        List<Argument> arguments = new ArrayList<>(List.of(new Argument.Count(1)));
        Message message = new Message("words.outer", arguments);
        arguments.clear();
        assertEquals(1, message.arguments().size());
    }
}
