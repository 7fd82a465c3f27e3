package io.rowledger.log.time;

import io.rowledger.log.header.LogQuantity;
import io.rowledger.text.Message;
import java.util.List;

/** Reads the time of a record that is not one plain ISO 8601 or epoch field. Keeps state between records. */
public interface TimestampReader {
    /** Returns seconds since the Unix epoch, or NaN if the fields hold no time. */
    double read(String[] fields, int line);

    /** Returns the number of times without a zone, read as UTC. */
    int zonelessTimes();

    /** Returns the helper quantities it reads in addition to the time. */
    List<LogQuantity> helpers();

    /** Returns how it reads, for the table of columns. */
    List<Message> remarks();

    /** Returns its assumptions and corrections. */
    List<Message> notes();
}
