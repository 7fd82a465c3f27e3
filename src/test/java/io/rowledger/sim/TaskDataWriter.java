package io.rowledger.sim;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/**
 * Writes a run as ISO 11783-10 task data: a TASKDATA.XML and one binary time log with its header, as a terminal five hours
 * behind UTC would. Layout of records and elements: ISO 11783-10; numbers and resolutions: ISO 11783-11 (isobus.net). It
 * shares no code with the reader. Values are written when they change, as the standard allows.
 *
 * <p>It also writes the twin: the same whole numbers as a plain CSV log.
 */
public final class TaskDataWriter {
    /** The terminal's clock is so far behind UTC. */
    private static final long BEHIND_MS = 5 * 3600_000L;

    private static final long MS_PER_DAY = 86_400_000L;
    private static final long DAYS_1970_TO_1980 = 3652;
    private static final int NONE = Integer.MIN_VALUE;

    private final SimResult run;
    private final Scenario scenario;
    private final Form form;
    private final List<Value> values = new ArrayList<>();
    private final List<SimRecord> records;

    /** A value of the time log: entry of the data dictionary, device element, and what it is in a record. */
    private record Value(int ddi, String element, Raw raw) {}

    private interface Raw {
        int of(SimRecord record);
    }

    private enum Form {
        FLOWS,
        LOCAL_TIME,
        RATES,
        WHOLE_BAR
    }

    private TaskDataWriter(SimResult run, Form form) {
        this.run = run;
        this.scenario = run.scenario();
        this.form = form;
        this.records = run.log();
        values();
    }

    /** With the receiver's UTC in each record and flows per time. */
    public static TaskDataWriter of(SimResult run) {
        return new TaskDataWriter(run, Form.FLOWS);
    }

    /** Without UTC: the rig file has to say the zone. */
    public static TaskDataWriter inLocalTime(SimResult run) {
        return new TaskDataWriter(run, Form.LOCAL_TIME);
    }

    /** With actual rates per area instead of flows, as a controller makes them from flow, speed and width. */
    public static TaskDataWriter withRates(SimResult run) {
        return new TaskDataWriter(run, Form.RATES);
    }

    /** With one flow for all rows together and nothing of a single one. */
    public static TaskDataWriter forTheWholeBar(SimResult run) {
        return new TaskDataWriter(run, Form.WHOLE_BAR);
    }

    /** Writes {@code TASKDATA.XML}, {@code TLG00001.XML}, {@code TLG00001.BIN} and {@code rig.yaml}. */
    public Path writeTo(Path folder) {
        try {
            Files.createDirectories(folder);
            Files.writeString(folder.resolve("TASKDATA.XML"), taskData());
            Files.writeString(folder.resolve("TLG00001.XML"), header());
            Files.write(folder.resolve("TLG00001.BIN"), binary());
            Files.writeString(folder.resolve("rig.yaml"), run.rigText());
            return folder;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private void values() {
        LogFormat format = scenario.format();
        int rows = scenario.rig().rows();
        if (format.has(LogFormat.Column.DOWN)) {
            values.add(new Value(141, "DET-11", r -> r.down ? 1 : 0));
        }
        if (format.has(LogFormat.Column.SPEED)) {
            values.add(new Value(397, "DET-1", r -> raw(r.speedMps * 1e3)));
        }
        for (int p = 0; p < scenario.products().size(); p++) {
            int product = p;
            String function = function(p);
            if (format.has(LogFormat.Column.TARGET)) {
                values.add(new Value(1, function, r -> raw(r.targetLPerM2[product] * 1e8)));
            }
            if (form == Form.WHOLE_BAR) {
                values.add(new Value(
                        37,
                        function,
                        r -> raw(Arrays.stream(r.flowLPerS[product]).sum() * 1e6)));
                continue;
            }
            if (format.has(LogFormat.Column.TOTAL)) {
                values.add(new Value(37, function, r -> raw(r.totalLPerS[product] * 1e6)));
            }
            for (int first = 0; format.has(LogFormat.Column.ON) && p == 0 && first < rows; first += 16) {
                int from = first;
                values.add(new Value(290 + first / 16, function, r -> states(r.on, from)));
            }
            for (int row = 0; row < rows; row++) {
                int outlet = row;
                double bandM = scenario.rig().bandM(row);
                values.add(
                        form == Form.RATES
                                ? new Value(
                                        2,
                                        section(p, row),
                                        r -> r.speedMps > 0.1
                                                ? raw(r.flowLPerS[product][outlet]
                                                        / bandM
                                                        / (raw(r.speedMps * 1e3) / 1e3)
                                                        * 1e8)
                                                : 0)
                                : new Value(37, section(p, row), r -> raw(r.flowLPerS[product][outlet] * 1e6)));
            }
        }
    }

    private static String function(int p) {
        return "DET-" + (20 + 100 * p);
    }

    private static String section(int p, int row) {
        return "DET-" + (21 + 100 * p + row);
    }

    private static int raw(double value) {
        return Double.isNaN(value) ? NONE : Math.toIntExact(Math.round(value));
    }

    /** Two bits a section, 01 on and 00 off, the left one lowest. */
    private static int states(boolean[] on, int from) {
        int bits = 0;
        for (int row = from; row < Math.min(on.length, from + 16); row++) {
            bits |= on[row] ? 1 << (2 * (row - from)) : 0;
        }
        return bits;
    }

    private String taskData() {
        StringBuilder xml =
                new StringBuilder("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<ISO11783_TaskData VersionMajor=\"4\""
                        + " VersionMinor=\"3\" ManagementSoftwareManufacturer=\"\" ManagementSoftwareVersion=\"\""
                        + " DataTransferOrigin=\"2\">\n");
        SimRig rig = scenario.rig();
        xml.append("<DVC A=\"DVC-1\" B=\"Tractor\" D=\"A000000000000000\" F=\"00\" G=\"00\">\n");
        xml.append(det(1, 1, 1, 0, 0));
        xml.append(det(2, 2, 7, 1, 1, 1, 2));
        xml.append(det(3, 3, 6, 2, 1, 3));
        xml.append(dpt(1, 134, rig.antennaAheadM())).append(dpt(2, 135, rig.antennaRightM()));
        xml.append(dpt(3, 134, -rig.axleToHitchM())).append("</DVC>\n");
        bar(xml, rig);
        xml.append(
                "<PFD A=\"PFD-1\" C=\"North bottom\" D=\"0\"><PLN A=\"1\"><LSG A=\"1\"><PNT A=\"2\" C=\"1\" D=\"2\"/></LSG></PLN></PFD>\n");
        xml.append("<TSK A=\"TSK-1\" B=\"Side-dress\" E=\"PFD-1\" G=\"4\"><TIM A=\"")
                .append(local(0))
                .append("\" D=\"4\"/><CNN A=\"DVC-1\" B=\"DET-3\" C=\"DVC-2\" D=\"DET-12\"/>")
                .append("<TLG A=\"TLG00001\" C=\"1\"/></TSK>\n");
        return xml.append("</ISO11783_TaskData>\n").toString();
    }

    /** The bar: its reference point is where its wheels stand, or its hitch where it has none. */
    private void bar(StringBuilder xml, SimRig rig) {
        double wheelsM = rig.drawn() ? rig.hitchToWheelsM() : 0;
        xml.append("<DVC A=\"DVC-2\" B=\"Bar\" D=\"A000000000000001\" F=\"00\" G=\"00\">\n");
        xml.append("<DET A=\"DET-11\" B=\"11\" C=\"1\" D=\"Bar\" E=\"0\" F=\"0\"><DOR A=\"1004\"/></DET>\n");
        xml.append(det(12, 12, 6, 1, 11, 1001, 1003));
        xml.append(dpt(1001, 134, wheelsM)).append(dpt(1002, 134, wheelsM - rig.hitchToDropM()));
        xml.append("<DPT A=\"1003\" B=\"009D\" C=\"")
                .append(rig.drawn() ? 1 : 3)
                .append("\"/>\n");
        xml.append(dpt(1004, 306, 0));
        for (int p = 0; p < scenario.products().size(); p++) {
            int function = 20 + 100 * p;
            xml.append(String.format(
                    Locale.ROOT,
                    "<DET A=\"DET-%d\" B=\"%d\" C=\"2\" D=\"%s\" E=\"%d\" F=\"11\"/>%n",
                    function,
                    function,
                    scenario.products().get(p).key().toUpperCase(Locale.ROOT),
                    p + 1));
            for (int row = 0; row < rig.rows(); row++) {
                int id = function + 1 + row;
                xml.append(det(id, id, 4, row + 1, function, 1002, 2000 + id, 4000 + id));
                xml.append(dpt(2000 + id, 135, rig.barRightM() + (rig.leftM()[row] + rig.rightM()[row]) / 2));
                xml.append(dpt(4000 + id, 67, rig.bandM(row)));
            }
        }
        xml.append("</DVC>\n");
    }

    private static String det(int id, int object, int type, int number, int parent, int... properties) {
        StringBuilder xml = new StringBuilder(String.format(
                Locale.ROOT,
                "<DET A=\"DET-%d\" B=\"%d\" C=\"%d\" D=\"\" E=\"%d\" F=\"%d\">",
                id,
                object,
                type,
                number,
                parent));
        for (int property : properties) {
            xml.append("<DOR A=\"").append(property).append("\"/>");
        }
        return xml.append("</DET>\n").toString();
    }

    private static String dpt(int object, int ddi, double metres) {
        return String.format(
                Locale.ROOT, "<DPT A=\"%d\" B=\"%04X\" C=\"%d\"/>%n", object, ddi, Math.round(metres * 1000));
    }

    private String header() {
        StringBuilder xml = new StringBuilder(
                "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<TIM A=\"\" D=\"4\">\n<PTN A=\"\" B=\"\" D=\"\"");
        xml.append(" F=\"\"")
                .append(form != Form.LOCAL_TIME ? " G=\"\" H=\"\" I=\"\"" : "")
                .append("/>\n");
        for (Value value : values) {
            xml.append(String.format(Locale.ROOT, "<DLV A=\"%04X\" B=\"\" C=\"%s\"/>%n", value.ddi(), value.element()));
        }
        return xml.append("</TIM>\n").toString();
    }

    private long utcMs(SimRecord record) {
        return scenario.site().startEpochS() * 1000 + Math.round(record.timeS * 1000);
    }

    private String local(int i) {
        return Instant.ofEpochMilli(utcMs(records.get(i)) - BEHIND_MS)
                .toString()
                .replace("Z", "");
    }

    private byte[] binary() {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        int[] written = new int[values.size()];
        for (int i = 0; i < records.size(); i++) {
            SimRecord record = records.get(i);
            time(out, utcMs(record) - BEHIND_MS);
            whole(out, degrees(record.latDeg), 4);
            whole(out, degrees(record.lonDeg), 4);
            whole(out, record.fix, 1);
            whole(out, hdop(record), 2);
            if (form != Form.LOCAL_TIME) {
                whole(out, 14, 1);
                time(out, utcMs(record));
            }
            ByteArrayOutputStream changed = new ByteArrayOutputStream();
            int count = 0;
            for (int v = 0; v < written.length; v++) {
                int raw = values.get(v).raw().of(record);
                if (i == 0 || raw != written[v]) {
                    whole(changed, v, 1);
                    whole(changed, raw, 4);
                    written[v] = raw;
                    count++;
                }
            }
            whole(out, count, 1);
            out.writeBytes(changed.toByteArray());
        }
        return out.toByteArray();
    }

    private static void time(ByteArrayOutputStream out, long ms) {
        whole(out, Math.floorMod(ms, MS_PER_DAY), 4);
        whole(out, Math.floorDiv(ms, MS_PER_DAY) - DAYS_1970_TO_1980, 2);
    }

    private static int degrees(double deg) {
        return Double.isNaN(deg) ? Integer.MAX_VALUE : raw(deg * 1e7);
    }

    private static int hdop(SimRecord record) {
        return Double.isNaN(record.hdop) ? 0xFFFF : raw(record.hdop * 10);
    }

    /** Least byte first. */
    private static void whole(ByteArrayOutputStream out, long value, int bytes) {
        for (int k = 0; k < bytes; k++) {
            out.write((int) (value >> (8 * k)) & 0xFF);
        }
    }

    /** The same whole numbers as CSV, with their decimal points put in. */
    public String twinCsv() {
        StringBuilder csv = new StringBuilder("time,lat,lon,fix,hdop");
        int rows = scenario.rig().rows();
        List<SimProduct> products = scenario.products();
        for (Value value : values) {
            int id = Integer.parseInt(value.element().substring(4));
            int product = id < 20 ? 0 : (id - 20) / 100;
            String prefix = products.size() > 1 ? products.get(product).key() + "." : "";
            boolean outlet = id > 20 && (id - 20) % 100 > 0;
            switch (value.ddi()) {
                case 141 -> csv.append(",down");
                case 397 -> csv.append(",speed[m/s]");
                case 1 -> csv.append(',').append(prefix).append("target[L/ha]");
                case 37 ->
                    csv.append(',')
                            .append(prefix)
                            .append(outlet ? "flow_" + LogWriter.number((id - 21) % 100) : "flow_total")
                            .append("[ml/s]");
                default -> {
                    int first = 16 * (value.ddi() - 290);
                    for (int row = first; row < Math.min(rows, first + 16); row++) {
                        csv.append(",on_").append(LogWriter.number(row));
                    }
                }
            }
        }
        csv.append('\n');
        for (SimRecord record : records) {
            twin(csv, record, rows);
        }
        return csv.toString();
    }

    private void twin(StringBuilder csv, SimRecord record, int rows) {
        csv.append(Instant.ofEpochMilli(utcMs(record)));
        int north = degrees(record.latDeg);
        int east = degrees(record.lonDeg);
        boolean place = north != Integer.MAX_VALUE && east != Integer.MAX_VALUE;
        csv.append(',').append(place ? decimal(north, 7) : "").append(',').append(place ? decimal(east, 7) : "");
        csv.append(',').append(record.fix).append(',');
        csv.append(Double.isNaN(record.hdop) ? "" : decimal(hdop(record), 1));
        for (Value value : values) {
            int raw = value.raw().of(record);
            csv.append(',');
            switch (value.ddi()) {
                case 141 -> csv.append(raw);
                case 397, 37 -> csv.append(raw == NONE ? "" : decimal(raw, 3));
                case 1 -> csv.append(raw == NONE ? "" : decimal(raw, 4));
                default -> {
                    int first = 16 * (value.ddi() - 290);
                    for (int row = first; row < Math.min(rows, first + 16); row++) {
                        csv.append(row == first ? "" : ",").append(record.on[row] ? '1' : '0');
                    }
                }
            }
        }
        csv.append('\n');
    }

    private static String decimal(int raw, int decimals) {
        return BigDecimal.valueOf(raw, decimals).toPlainString();
    }

    /** The task data's files, for a test that packs or damages them. */
    public static List<String> names() {
        return List.of("TASKDATA.XML", "TLG00001.XML", "TLG00001.BIN");
    }
}
