package io.rowledger.log.taskdata;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.IntUnaryOperator;

/**
 * Writes task data of a bar that drives north in a straight line, one record a second: a device with a tank (DET-2), a
 * connector and sections (DET-11 on) as some controllers describe themselves, with nothing but names in the description.
 * Layout of records and elements after ISO 11783-10; it shares no code with the reader.
 */
public final class TaskDataBuild {
    /** Middle of the line, degrees. */
    private static final double LAT = 41.5;

    private static final double LON = -93.5;
    /** Meters in a degree of latitude at 41.5 degrees (GRS 80 meridian, 111,076 m). */
    private static final double M_PER_DEGREE = 111_076;
    /** 2026-06-11 less 1980-01-01, days. */
    private static final int DAY = 16_963;

    private static final int START_MS = 13 * 3_600_000;

    private final int sections;
    private final int records;
    private final double speedMps;
    private final List<Value> values = new ArrayList<>();
    private final List<String> times = new ArrayList<>();
    private int[] logOf = {};

    private record Value(int ddi, String element, IntUnaryOperator raw) {}

    /** A bar of so many sections that drives for so many seconds at this speed. */
    public TaskDataBuild(int sections, int records, double speedMps) {
        this.sections = sections;
        this.records = records;
        this.speedMps = speedMps;
    }

    /** Logs a value of an element by record. */
    public TaskDataBuild log(int ddi, String element, IntUnaryOperator raw) {
        values.add(new Value(ddi, element, raw));
        return this;
    }

    /** Adds a time of the task with totals at its end: DDI and value in turn, of element DET-1. */
    public TaskDataBuild time(int... totals) {
        StringBuilder inside = new StringBuilder();
        for (int i = 0; i < totals.length; i += 2) {
            inside.append(
                    String.format(Locale.ROOT, "<DLV A=\"%04X\" B=\"%d\" C=\"DET-1\"/>", totals[i], totals[i + 1]));
        }
        times.add(inside.toString());
        return this;
    }

    /** Spreads the values over several time logs: value k goes to log number {@code logs[k]}, from 0. */
    public TaskDataBuild spread(int... logs) {
        logOf = logs;
        return this;
    }

    /** Widths and offsets of equal sections as logged values, m. */
    public TaskDataBuild logSections(double widthM) {
        for (int s = 0; s < sections; s++) {
            int offsetMm = (int) Math.round(1000 * widthM * (s - (sections - 1) / 2.0));
            log(135, section(s), i -> offsetMm).log(134, section(s), i -> -4500);
            log(67, section(s), i -> (int) Math.round(1000 * widthM));
        }
        return this;
    }

    /** The element of a section, from 0 at the left. */
    public static String section(int s) {
        return "DET-" + (11 + s);
    }

    /** Writes TASKDATA.XML and the time logs; returns the folder. */
    public Path writeTo(Path folder) {
        int logs = 1;
        for (int log : logOf) {
            logs = Math.max(logs, log + 1);
        }
        try {
            Files.createDirectories(folder);
            Files.writeString(folder.resolve("TASKDATA.XML"), taskData(logs));
            for (int log = 0; log < logs; log++) {
                List<Value> some = new ArrayList<>();
                for (int v = 0; v < values.size(); v++) {
                    if ((v < logOf.length ? logOf[v] : 0) == log) {
                        some.add(values.get(v));
                    }
                }
                String name = String.format(Locale.ROOT, "TLG%05d", log + 1);
                Files.writeString(folder.resolve(name + ".XML"), header(some, log == 0));
                Files.write(folder.resolve(name + ".BIN"), binary(some, log == 0));
            }
            return folder;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private String taskData(int logs) {
        StringBuilder xml = new StringBuilder("""
                <ISO11783_TaskData VersionMajor="4" VersionMinor="2">
                <DVC A="DVC-1" B="Sprayer">
                <DET A="DET-1" B="1" C="1" D="Bar" E="0" F="0"/>
                <DET A="DET-2" B="2" C="3" D="Tank" E="1" F="1"/>
                <DET A="DET-3" B="3" C="6" D="Connector" E="2" F="1"/>
                """);
        for (int s = 0; s < sections; s++) {
            xml.append(String.format(
                    Locale.ROOT,
                    "<DET A=\"%s\" B=\"%d\" C=\"4\" D=\"\" E=\"%d\" F=\"1\"/>%n",
                    section(s),
                    11 + s,
                    11 + s));
        }
        xml.append("</DVC>\n<TSK A=\"TSK-1\" B=\"Side-dress\" G=\"4\">");
        for (String time : times.isEmpty() ? List.of("") : times) {
            xml.append("<TIM A=\"2026-06-11T13:00:00-05:00\" D=\"4\">")
                    .append(time)
                    .append("</TIM>");
        }
        for (int log = 1; log <= logs; log++) {
            xml.append(String.format(Locale.ROOT, "<TLG A=\"TLG%05d\" C=\"1\"/>", log));
        }
        return xml.append("</TSK>\n</ISO11783_TaskData>\n").toString();
    }

    private static String header(List<Value> values, boolean position) {
        StringBuilder xml = new StringBuilder("<TIM A=\"\" D=\"4\">");
        xml.append(position ? "<PTN A=\"\" B=\"\" D=\"\"/>\n" : "\n");
        for (Value value : values) {
            xml.append(String.format(Locale.ROOT, "<DLV A=\"%04X\" B=\"\" C=\"%s\"/>%n", value.ddi(), value.element()));
        }
        return xml.append("</TIM>\n").toString();
    }

    private byte[] binary(List<Value> values, boolean position) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        int[] last = new int[values.size()];
        for (int i = 0; i < records; i++) {
            ByteBuffer record = ByteBuffer.allocate(16 + 5 * values.size()).order(ByteOrder.LITTLE_ENDIAN);
            record.putInt(START_MS + 1000 * i).putShort((short) DAY);
            if (position) {
                double north = LAT + i * speedMps / M_PER_DEGREE;
                record.putInt((int) Math.round(north * 1e7))
                        .putInt((int) Math.round(LON * 1e7))
                        .put((byte) 4);
            }
            int countAt = record.position();
            record.put((byte) 0);
            int count = 0;
            for (int v = 0; v < last.length; v++) {
                int raw = values.get(v).raw().applyAsInt(i);
                if (i == 0 || raw != last[v]) {
                    record.put((byte) v).putInt(raw);
                    last[v] = raw;
                    count++;
                }
            }
            record.put(countAt, (byte) count);
            out.write(record.array(), 0, record.position());
        }
        return out.toByteArray();
    }
}
