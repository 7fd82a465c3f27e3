package io.rowledger.log.time;

import io.rowledger.log.header.LogQuantity;
import java.util.List;

/** Reads the time of a record where it is not one plain ISO 8601 or epoch field. Keeps what it needs of the one before. */
public interface TimestampReader {
    /** Seconds since the Unix epoch, or NaN where the fields hold no time. */
    double read(String[] fields, int line);

    /** How many of the times read had no zone and were taken as UTC. */
    int withoutZone();

    /** The quantities it reads beside the time. */
    List<LogQuantity> helpers();

    /** How it reads, for the table of columns. */
    String remark();

    /** What it assumed or set right, a sentence each. */
    List<String> notes();
}
