package io.rowledger.log.taskdata;

import io.rowledger.finding.RefusalKind;
import io.rowledger.finding.UnusableInputException;
import io.rowledger.text.Message;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** ISO 11783-10 task data as logs with a column for each quantity. */
public final class TaskData {
    private static final Pattern EXTERNAL = Pattern.compile("(?i)[A-Z]{3}\\d{5}");
    /** Share of working records with some sections off up to which a bar with one outlet counts as on (1). */
    private static final double MAX_PARTLY_ON = 0.01;

    private final TaskFiles files;
    private final int rowsExpected;
    private boolean wholeNoted;
    private final List<Message> notes = new ArrayList<>();
    private final List<XmlElement> top = new ArrayList<>();

    private TaskData(TaskFiles files, int rowsExpected) {
        this.files = files;
        this.rowsExpected = rowsExpected;
    }

    /**
     * What task data holds.
     *
     * @param logs the time logs with flows, in the order of the task
     * @param others the files that say how to read them: the TASKDATA.XML and the headers
     * @param geometry what the device descriptions say of the machine's measures
     * @param totals the controller's totals beside the flows, for each time log
     * @param notes what was passed over and what disagrees, a sentence each
     */
    public record Reading(
            List<TaskLog> logs,
            List<ReadFile> others,
            BarGeometry geometry,
            List<ControllerTotals> totals,
            List<Message> notes) {
        /** Copies the lists. */
        public Reading {
            totals = List.copyOf(totals);
            logs = List.copyOf(logs);
            others = List.copyOf(others);
            notes = List.copyOf(notes);
        }
    }

    /** True for a folder or a zip file with task data in it, a TASKDATA.XML, or one of its time logs. */
    public static boolean is(Path path) {
        return TaskFiles.isTaskData(path);
    }

    /**
     * Reads the task data of one task.
     *
     * @param path a folder or a zip file with a TASKDATA.XML in it, that file itself, or one of its time logs
     * @param rowsExpected outlets of the rig; 0 where there is no rig file yet
     * @throws UnusableInputException where it can't be used
     */
    public static Reading read(Path path, int rowsExpected) {
        try (TaskFiles files = TaskFiles.open(path)) {
            return new TaskData(files, rowsExpected).reading();
        }
    }

    private Reading reading() {
        XmlElement main = xml(TaskFiles.MAIN, "ISO11783_TaskData");
        gather(main);
        Devices devices = Devices.of(named("DVC"));
        List<Task> tasks = new ArrayList<>();
        for (XmlElement tsk : named("TSK")) {
            tasks.add(Task.of(tsk, named("PFD")));
        }
        Task task = task(tasks);
        List<String> names = files.wanted().isEmpty() ? task.logs() : List.of(files.wanted());
        if (names.isEmpty()) {
            throw UnusableInputException.found("no time log")
                    .inFile(main.file())
                    .expected("a task that was worked on, with a TLG element for each of its time logs")
                    .hint("copy the task data from the terminal after the job, not before it");
        }
        List<String> without = new ArrayList<>();
        List<RawTimeLog> raw = new ArrayList<>();
        for (String name : names) {
            raw.add(raw(name, task));
        }
        List<TaskLog> logs = new ArrayList<>();
        List<ControllerTotals> totals = new ArrayList<>();
        BarGeometry geometry = null;
        for (RawTimeLog one : RawTimeLog.joined(raw)) {
            ElementValues values = new ElementValues(one.header(), one.log(), devices);
            Layout layout = LayoutFinder.find(values);
            TaskLog log = layout == null ? null : log(one, values, layout, task);
            if (layout == null || log == null || log.places() < 2) {
                without.add(why(one, layout));
                continue;
            }
            logs.add(log);
            totals.add(ControllerTotals.of(log.name(), values, layout, log.sum()));
            geometry = geometry == null ? BarGeometry.of(values, task, layout) : geometry;
        }
        if (geometry == null) {
            throw noFlow(main, without);
        }
        without.stream().distinct().forEach(reason -> notes.add(Message.of("notes.taskdata.passed_over", reason)));
        if (files.wanted().isEmpty()) {
            totals.addAll(ofTask(task, totals, main.file()));
        }
        totals.forEach(one -> notes.addAll(one.notes()));
        return new Reading(logs, others(logs), geometry, totals, notes);
    }

    /** The totals that only the task has, where its logs have no volume of their own. */
    private static List<ControllerTotals> ofTask(Task task, List<ControllerTotals> ofLogs, String file) {
        if (ofLogs.stream().anyMatch(one -> !Double.isNaN(one.controller().volumeL()))) {
            return List.of();
        }
        ControllerTotals.Sum added = new ControllerTotals.Sum(
                ofLogs.stream().mapToDouble(one -> one.added().volumeL()).sum(),
                ofLogs.stream().mapToDouble(one -> one.added().areaM2()).sum());
        return task.totals().against(file, added).stream().toList();
    }

    private String why(RawTimeLog one, @Nullable Layout layout) {
        if (layout == null) {
            return one.header().file() + " has no flow or rate of a liquid but " + LayoutFinder.has(one.header());
        }
        boolean positions = one.header().has(LogHeader.NORTH) && one.header().has(LogHeader.EAST);
        return positions
                ? one.file().name() + " has "
                        + (one.log().records == 0 ? "no record" : "no two records with a position")
                : one.header().file() + " has no positions";
    }

    private XmlElement xml(String name, String root) {
        return files.read(name, (called, in) -> TaskXml.read(called, in, root));
    }

    /** The elements below the outermost one, those of other files it refers to among them. */
    private void gather(XmlElement main) {
        Set<String> seen = new HashSet<>();
        for (XmlElement element : main.children()) {
            if (!element.name().equals("XFR")) {
                top.add(element);
                continue;
            }
            String name = element.need("A", "file name");
            if (!EXTERNAL.matcher(name).matches()) {
                throw element.found("a file named \"" + name + "\"")
                        .expected("three letters and five digits: a file beside the TASKDATA.XML (ISO 11783-10)")
                        .hint("don't trust this file if the name leads elsewhere; else export the task data again");
            }
            if (!seen.add(TaskFiles.lower(name))) {
                continue;
            }
            if (!files.has(name + ".xml")) {
                throw missing(element, name + ".XML");
            }
            xml(name + ".xml", "XFC").children().stream()
                    .filter(child -> !child.name().equals("XFR"))
                    .forEach(top::add);
        }
    }

    private UnusableInputException missing(XmlElement element, String name) {
        return element.found("no file " + name + " beside it")
                .expected("every file the task data refers to")
                .hint("copy the whole folder from the terminal again");
    }

    private List<XmlElement> named(String name) {
        return top.stream().filter(element -> element.name().equals(name)).toList();
    }

    private Task task(List<Task> tasks) {
        if (!files.wanted().isEmpty()) {
            return tasks.stream()
                    .filter(task -> task.logs().contains(files.wanted()))
                    .findFirst()
                    .orElseThrow(() -> UnusableInputException.found("a time log that no task refers to")
                            .inFile(files.shown(files.wanted() + ".xml"))
                            .expected("one of the time logs the TASKDATA.XML beside it names")
                            .hint("copy the whole folder from the terminal again"));
        }
        List<Task> worked =
                tasks.stream().filter(task -> !task.logs().isEmpty()).toList();
        if (worked.size() > 1) {
            List<String> words = worked.stream().map(Task::words).toList();
            List<String> call = new ArrayList<>();
            for (String log : worked.get(0).logs()) {
                call.add(files.shown(log.toUpperCase(Locale.ROOT) + ".BIN"));
            }
            throw UnusableInputException.found(worked.size() + " tasks: " + String.join("; ", words))
                    .kind(RefusalKind.TASKS)
                    .inFile(files.shown(TaskFiles.MAIN))
                    .expected("one task: one job on one field")
                    .hint((files.isPacked() ? "unpack it and name" : "name")
                            + " the time logs of the task that is meant instead, such as "
                            + (files.isPacked()
                                    ? worked.get(0).logs().get(0).toUpperCase(Locale.ROOT) + ".BIN"
                                    : String.join(" ", call)));
        }
        return worked.isEmpty() ? new Task("", "", "", List.of(), null, List.of(), TaskTotals.NONE) : worked.get(0);
    }

    /** A time log's header and records. */
    private RawTimeLog raw(String name, Task task) {
        for (String end : List.of(".xml", ".bin")) {
            if (!files.has(name + end)) {
                String upper = (name + end).toUpperCase(Locale.ROOT);
                throw UnusableInputException.found("no file " + upper + ", which " + task.id() + " refers to")
                        .inFile(files.shown(TaskFiles.MAIN))
                        .expected("a header (.XML) and a binary file (.BIN) for each time log")
                        .hint("copy the whole folder from the terminal again");
            }
        }
        LogHeader header = LogHeader.of(xml(name + ".xml", "TIM"));
        boolean[] wanted = new boolean[header.values().size()];
        for (int v = 0; v < wanted.length; v++) {
            wanted[v] = Ddi.isRead(header.values().get(v).ddi());
        }
        TimeLog log = files.read(name + ".bin", (called, in) -> TimeLog.read(header, wanted, called, in));
        return new RawTimeLog(header, log, files.read().get(files.read().size() - 1));
    }

    private TaskLog log(RawTimeLog one, ElementValues values, Layout layout, Task task) {
        requireRows(one.header(), layout);
        boolean bySection = layout.whole() && layout.sections().size() > 1 && rowsExpected != 1;
        String form = "ISO 11783-10 time log" + (files.isPacked() ? " in a zip file" : "");
        LogClock clock = new LogClock(one.log(), one.file().name(), task.offsetMs());
        TaskLog made = new TaskLog(one.file(), form, values, layout, clock, bySection);
        if (layout.whole() && !bySection && made.partlyOn() > MAX_PARTLY_ON) {
            throw UnusableInputException.found(String.format(
                            Locale.ROOT,
                            "one flow for the bar, one row in the rig file, and only some of the %d sections on in %.0f%% of"
                                    + " the records with any on",
                            layout.sections().size(),
                            Math.max(1, 100 * made.partlyOn())))
                    .inFile(one.file().name())
                    .expected("a row in the rig file for each section: ground under a section that is off got nothing")
                    .hint(
                            "write the sections as outlets into the rig file; inspect --draft-rig writes them from the device"
                                    + " description");
        }
        return made;
    }

    /** Requires as many outlets in the rig file as the log has parts. */
    private void requireRows(LogHeader header, Layout layout) {
        int flows = layout.groups().get(0).outlets().size();
        int switched = layout.switchedSections();
        if (layout.whole() && !wholeNoted) {
            wholeNoted = true;
            notes.add(Message.of("notes.taskdata.whole_bar"));
        }
        boolean fits = layout.whole() ? rowsExpected <= 1 || rowsExpected >= switched : rowsExpected == flows;
        if (fits || rowsExpected == 0) {
            return;
        }
        String draft = "; inspect --draft-rig writes them from the device description";
        if (layout.whole()) {
            throw UnusableInputException.found(
                            "one flow for " + switched + " sections where the rig file has " + rowsExpected + " rows")
                    .inFile(header.file())
                    .expected("a row in the rig file for each section, or one for the bar")
                    .hint("write the sections as outlets into the rig file" + draft);
        }
        throw UnusableInputException.found(
                        "flows of " + flows + " sections where the rig file has " + rowsExpected + " rows")
                .inFile(header.file())
                .expected("an outlet in the rig file for each section with a flow, from the left")
                .hint("write the sections as outlets into the rig file, each with its band" + draft);
    }

    /** Every file but the time logs themselves. */
    private List<ReadFile> others(List<TaskLog> logs) {
        Set<String> names = new HashSet<>();
        logs.forEach(log -> names.add(log.name()));
        return files.read().stream()
                .filter(file -> !names.contains(file.name()))
                .toList();
    }

    private UnusableInputException noFlow(XmlElement main, List<String> without) {
        return UnusableInputException.found("no time log that can be used: "
                        + String.join("; ", without.stream().distinct().toList()))
                .inFile(main.file())
                .expected(
                        "positions, and actual volume per time (DDI 37) or per area (DDI 2) of the bar or its sections")
                .hint("have the controller log them, or export the job as CSV");
    }
}
