package io.rowledger.log.taskdata;

import java.time.DateTimeException;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * A task of the task data (element TSK).
 *
 * @param id such as TSK-1
 * @param name its designator, empty where there is none
 * @param field the name of its field, empty where there is none
 * @param logs its binary time logs, without their ending, in the order of the file
 * @param offsetMs how far the terminal's clock is ahead of UTC by the task's own times; null where they don't say
 * @param connections device elements that are hitched to each other
 * @param totals the controller's totals at the end of its times
 */
record Task(
        String id,
        String name,
        String field,
        List<String> logs,
        @Nullable Long offsetMs,
        List<Connection> connections,
        TaskTotals totals) {
    private static final Pattern LOG = Pattern.compile("(?i)TLG\\d{5}");

    /** Two device elements hitched to each other. */
    record Connection(String first, String second) {}

    Task {
        logs = List.copyOf(logs);
        connections = List.copyOf(connections);
    }

    static Task of(XmlElement tsk, List<XmlElement> fields) {
        List<String> logs = new ArrayList<>();
        for (XmlElement tlg : tsk.children("TLG")) {
            String name = tlg.need("A", "file name");
            if (!LOG.matcher(name).matches()) {
                throw tlg.found("a time log named \"" + name + "\"")
                        .expected("TLG and five digits: a file beside the TASKDATA.XML (ISO 11783-10)")
                        .hint("don't trust this file if the name leads elsewhere; else export the task data again");
            }
            logs.add(TaskFiles.lower(name));
        }
        List<Connection> connections = new ArrayList<>();
        for (XmlElement cnn : tsk.children("CNN")) {
            connections.add(new Connection(cnn.text("B"), cnn.text("D")));
        }
        String field = "";
        for (XmlElement pfd : fields) {
            if (!tsk.text("E").isEmpty() && pfd.text("A").equals(tsk.text("E"))) {
                field = pfd.text("C");
            }
        }
        return new Task(
                tsk.need("A", "task id"),
                tsk.text("B"),
                field,
                logs,
                offsetMs(tsk.children("TIM")),
                connections,
                TaskTotals.of(tsk.children("TIM")));
    }

    /** The offset the task's times are written with, where they all have the same one. */
    private static @Nullable Long offsetMs(List<XmlElement> times) {
        Long offset = null;
        for (XmlElement tim : times) {
            String text = tim.text("A");
            try {
                long ms = OffsetDateTime.parse(text).getOffset().getTotalSeconds() * 1000L;
                if (offset != null && offset != ms) {
                    return null;
                }
                offset = ms;
            } catch (DateTimeException e) {
                // A time without a zone is local time: nothing known.
                return null;
            }
        }
        return offset;
    }

    /** For a message: "TSK-1 (Side-dress, North bottom): TLG00001, TLG00002". */
    String words() {
        List<String> names = new ArrayList<>();
        for (String part : List.of(name, field)) {
            if (!part.isEmpty()) {
                names.add(part);
            }
        }
        return id
                + (names.isEmpty() ? "" : " (" + String.join(", ", names) + ")")
                + ": "
                + String.join(", ", logs).toUpperCase(java.util.Locale.ROOT);
    }
}
