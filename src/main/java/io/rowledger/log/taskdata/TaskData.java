package io.rowledger.log.taskdata;

import io.rowledger.finding.UnusableInputException;
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
    /** With one flow for the bar, more of the working time with some sections off than this is ground falsely counted. */
    private static final double MAX_PARTLY_ON = 0.01;

    private final TaskFiles files;
    private final int rowsExpected;
    private final List<String> notes = new ArrayList<>();
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
     * @param notes what was passed over, a sentence each
     */
    public record Reading(List<TaskLog> logs, List<ReadFile> others, BarGeometry geometry, List<String> notes) {
        /** Copies the lists. */
        public Reading {
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
        List<TaskLog> logs = new ArrayList<>();
        List<String> without = new ArrayList<>();
        for (String name : names) {
            TaskLog log = log(name, devices, task, without);
            if (log != null) {
                logs.add(log);
            }
        }
        if (logs.isEmpty()) {
            throw noFlow(main, without);
        }
        without.forEach(name -> notes.add("Passed over: " + name + "."));
        return new Reading(
                logs, others(logs), BarGeometry.of(devices, task, logs.get(0).layout()), notes);
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
                    .inFile(files.shown(TaskFiles.MAIN))
                    .expected("one task: one job on one field")
                    .hint((files.isPacked() ? "unpack it and name" : "name")
                            + " the time logs of the task that is meant instead, such as "
                            + (files.isPacked()
                                    ? worked.get(0).logs().get(0).toUpperCase(Locale.ROOT) + ".BIN"
                                    : String.join(" ", call)));
        }
        return worked.isEmpty() ? new Task("", "", "", List.of(), null, List.of()) : worked.get(0);
    }

    /** A time log; null where it has no flow or no ground in it. */
    private @Nullable TaskLog log(String name, Devices devices, Task task, List<String> without) {
        XmlElement main = top.isEmpty() ? null : top.get(0);
        for (String end : List.of(".xml", ".bin")) {
            if (!files.has(name + end)) {
                String upper = (name + end).toUpperCase(Locale.ROOT);
                throw UnusableInputException.found(
                                "no file " + upper + ", which " + (main == null ? "" : task.id()) + " refers to")
                        .inFile(files.shown(TaskFiles.MAIN))
                        .expected("a header (.XML) and a binary file (.BIN) for each time log")
                        .hint("copy the whole folder from the terminal again");
            }
        }
        LogHeader header = LogHeader.of(xml(name + ".xml", "TIM"));
        Layout layout = LayoutFinder.find(header, devices);
        if (layout == null || !header.has(LogHeader.NORTH) || !header.has(LogHeader.EAST)) {
            without.add(files.shown(name + ".xml")
                    + (layout == null
                            ? " has no flow or rate of a liquid but " + LayoutFinder.has(header)
                            : " has no positions"));
            return null;
        }
        rows(header, layout);
        boolean[] wanted = wanted(header);
        TimeLog log = files.read(name + ".bin", (called, in) -> TimeLog.read(header, wanted, called, in));
        ReadFile file = files.read().get(files.read().size() - 1);
        String form = "ISO 11783-10 time log" + (files.isPacked() ? " in a zip file" : "");
        TaskLog made = new TaskLog(file, form, header, log, layout, new LogClock(log, file.name(), task.offsetMs()));
        if (made.places() < 2) {
            without.add(file.name() + " has " + (log.records == 0 ? "no record" : "no two records with a position"));
            return null;
        }
        if (layout.whole() && made.partlyOn() > MAX_PARTLY_ON) {
            throw UnusableInputException.found(String.format(
                            Locale.ROOT,
                            "one flow for the whole bar, and only some of its %d sections on in %.0f%% of the records in "
                                    + "which any is",
                            layout.sections().size(),
                            Math.max(1, 100 * made.partlyOn())))
                    .inFile(file.name())
                    .expected("a flow or rate of every section: nobody can tell what the ground under each received")
                    .hint("have the controller log actual volume per time (DDI 37) of every section");
        }
        return made;
    }

    private static boolean[] wanted(LogHeader header) {
        boolean[] wanted = new boolean[header.values().size()];
        for (int v = 0; v < wanted.length; v++) {
            int ddi = header.values().get(v).ddi();
            wanted[v] = Ddi.isActual(ddi)
                    || Ddi.isSetpointPerArea(ddi)
                    || Ddi.isCondensed(ddi)
                    || Ddi.isSetpointCondensed(ddi)
                    || ddi == Ddi.WORK_STATE
                    || ddi == Ddi.SETPOINT_WORK_STATE
                    || ddi == Ddi.ACTUAL_WIDTH
                    || ddi == Ddi.ACTUAL_SPEED;
        }
        return wanted;
    }

    /** The rig file must have as many outlets as the log; a bar's one flow is never shared out among rows. */
    private void rows(LogHeader header, Layout layout) {
        int outlets = layout.groups().get(0).outlets().size();
        if (layout.whole()) {
            notes.add(
                    "The log has one flow for the whole bar: its rows can't be told apart, and nothing here is about a"
                            + " single row.");
        }
        if (rowsExpected == 0 || rowsExpected == outlets) {
            return;
        }
        String draft = "; inspect --draft-rig writes them from the device description";
        if (layout.whole()) {
            throw UnusableInputException.found(
                            "one flow for the whole bar where the rig file has " + rowsExpected + " rows")
                    .inFile(header.file())
                    .expected("a flow or rate of every row: shared out evenly, one flow would call every row sound")
                    .hint(
                            "have the controller log every section; or, for the bar as a whole, write one outlet as wide as "
                                    + "the bar into the rig file, such as rows: {outlets: [{at: 0 in, band: [-180 in, 180 in]}]}");
        }
        throw UnusableInputException.found(
                        "flows of " + outlets + " sections where the rig file has " + rowsExpected + " rows")
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
        return UnusableInputException.found("no time log that can be used: " + String.join("; ", without))
                .inFile(main.file())
                .expected("positions, and actual volume per time (DDI 37) or per area (DDI 2) of each section")
                .hint("have the controller log them, or export the job as CSV");
    }
}
