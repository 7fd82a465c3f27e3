package io.rowledger.log;

import io.rowledger.document.text.Messages;
import io.rowledger.log.header.LogOptions;
import io.rowledger.text.Message;
import io.rowledger.units.UnitFormat;
import io.rowledger.units.UnitSystem;
import java.nio.file.Path;
import java.time.ZoneOffset;
import java.util.List;

/** Notes and inspections of logs in words, for tests: English, metric, without no-break spaces. */
public final class LogNotes {
    private static final Messages MESSAGES = Messages.english(new UnitFormat(UnitSystem.METRIC, ZoneOffset.UTC));

    private LogNotes() {}

    /** Returns the notes of a reading in words. */
    public static List<String> of(LogReading reading) {
        return reading.notes().stream().map(LogNotes::text).toList();
    }

    /** Inspects logs without a rig file. */
    public static Inspection inspection(List<Path> logs) {
        return Inspection.of(logs, LogOptions.unknownRig(), LogNotes::text);
    }

    /** A message in words. */
    public static String text(Message message) {
        return MESSAGES.text(message).replace('\u00a0', ' ');
    }
}
