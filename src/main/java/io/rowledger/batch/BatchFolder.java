package io.rowledger.batch;

import io.rowledger.analysis.JobFiles;
import io.rowledger.batch.Folder.Role;
import io.rowledger.finding.UnusableInputException;
import io.rowledger.rig.RigReader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * The jobs of a folder.
 *
 * <p>A folder of logs is one field's job. The rig file and the keep-outs are the nearest of those beside the logs and in
 * the folders above, up to the folder handed in. A boundary and a prescription belong to one job: one that lies above
 * several is nobody's. What could be meant in two ways is a job that can't be done, with a message that asks.
 */
final class BatchFolder {
    /** What Java shows for letters of a name that the session's setting does not have. */
    private static final char NOT_READ = '\ufffd';

    /** So many names are listed. */
    private static final int LISTED = 3;

    private final Folder top;
    private final @Nullable Path defaultRig;
    private final JobGrouping each;
    private final List<FieldJob> jobs = new ArrayList<>();
    private final Map<Path, Integer> users = new HashMap<>();
    private final Map<Path, RigSays> rigs = new HashMap<>();

    private BatchFolder(Folder top, @Nullable Path defaultRig, JobGrouping each) {
        this.top = top;
        this.defaultRig = defaultRig;
        this.each = each;
    }

    /** What is wrong with a rig file, or the field it names; each null where there is none. */
    private record RigSays(
            @Nullable UnusableInputException problem,
            @Nullable String field) {}

    /** A job to be: the folder of its logs, the folders above it from the top on, its name, its logs. */
    private record Draft(Folder folder, List<Folder> above, String name, List<Path> logs) {}

    /**
     * The jobs of a folder, by name.
     *
     * @param defaultRig for logs without a rig file beside or above them, or null
     * @param leftOut the folder of the results, not looked into
     * @throws UnusableInputException where there is no such folder or no log in it
     */
    static List<FieldJob> jobs(Path folder, @Nullable Path defaultRig, JobGrouping each, Path leftOut) {
        if (!Files.isDirectory(folder)) {
            throw UnusableInputException.found(Files.exists(folder) ? "a file" : "no such folder")
                    .inFile(folder.toString())
                    .expected("a folder with a folder of logs for each field")
                    .hint("name that folder; a single log goes to report");
        }
        BatchFolder batch = new BatchFolder(Folder.of(folder, leftOut), defaultRig, each);
        if (batch.top.logFolders().isEmpty()) {
            throw UnusableInputException.found("no log in this folder or below it")
                    .inFile(folder.toString())
                    .expected("logs whose names end in .csv or .tsv, plain, .gz or .zip")
                    .hint("name the folder above your fields' folders");
        }
        List<Draft> drafts = new ArrayList<>();
        batch.draft(batch.top, List.of(), drafts);
        drafts.forEach(batch::count);
        drafts.forEach(draft -> batch.jobs.add(batch.job(draft)));
        batch.jobs.sort((a, b) -> a.name().compareTo(b.name()));
        batch.sameNameTwice();
        return List.copyOf(batch.jobs);
    }

    private void draft(Folder folder, List<Folder> above, List<Draft> drafts) {
        if (folder.problem() != null) {
            jobs.add(new FieldJob(folder.name(), List.of(), null, "", folder.problem()));
            return;
        }
        boolean plain =
                folder.below().isEmpty() && (!isTop(folder) || folder.logs().size() < 2);
        if (!folder.logs().isEmpty() && each == JobGrouping.LOG) {
            for (Path log : folder.logs()) {
                String stem = JobFiles.stem(log);
                drafts.add(new Draft(folder, above, isTop(folder) ? stem : folder.name() + "/" + stem, List.of(log)));
            }
        } else if (!folder.logs().isEmpty() && (plain || each == JobGrouping.FOLDER)) {
            drafts.add(new Draft(folder, above, ownName(folder), folder.logs()));
        } else if (!folder.logs().isEmpty()) {
            jobs.add(new FieldJob(folder.name(), folder.logs(), null, "", asked(folder)));
            if (!isTop(folder)) {
                return;
            }
        }
        List<Folder> aboveThose = new ArrayList<>(above);
        aboveThose.add(folder);
        folder.below().forEach(inner -> draft(inner, aboveThose, drafts));
    }

    /** Results of a folder of logs inside another one's would be mixed up with that one's: it goes a folder deeper. */
    private String ownName(Folder folder) {
        return isTop(folder) || folder.below().isEmpty()
                ? folder.name()
                : folder.name() + "/" + folder.path().getFileName();
    }

    private UnusableInputException asked(Folder folder) {
        boolean mixed = !folder.below().isEmpty();
        String logs = folder.logs().size() == 1
                ? "a log (" + folder.logs().get(0).getFileName() + ")"
                : folder.logs().size() + " logs";
        String found = mixed
                ? logs + " beside a folder with logs (" + folder.below().get(0).name() + ")"
                : logs + " beside one another in the folder handed in: one field, or a field each";
        return UnusableInputException.found(found)
                .inFile(folder.path().toString())
                .expected(
                        "a folder for each field, with all logs of that field's job in it and no other folder of logs")
                .hint(
                        "move them so, or say how it is meant: --each folder makes every folder of logs one job, --each log"
                                + " every log");
    }

    private boolean isTop(Folder folder) {
        return folder.path().equals(top.path());
    }

    /** How many jobs a file is the nearest of its kind for. */
    private void count(Draft draft) {
        for (Role role : Role.values()) {
            for (Path file : nearest(draft, role)) {
                users.merge(file, 1, Integer::sum);
            }
        }
    }

    private List<Path> nearest(Draft draft, Role role) {
        List<Folder> up = new ArrayList<>(draft.above);
        up.add(draft.folder);
        for (int i = up.size() - 1; i >= 0; i--) {
            List<Path> files = up.get(i).setup().get(role);
            if (files != null) {
                return files;
            }
        }
        return role == Role.RIG && defaultRig != null ? List.of(defaultRig) : List.of();
    }

    private FieldJob job(Draft draft) {
        FieldJob job = new FieldJob(draft.name, draft.logs, null, "", null);
        try {
            requireName(draft);
            Path rig = one(draft, Role.RIG);
            if (rig == null) {
                throw UnusableInputException.found("no rig.yaml beside the logs or above them")
                        .inFile(draft.folder.path().toString())
                        .expected("the rig file of the bar that drove here")
                        .hint("put it there, or name one for all with --rig");
            }
            requireRig(rig);
            JobFiles files = new JobFiles(
                    draft.logs,
                    rig,
                    one(draft, Role.BOUNDARY),
                    one(draft, Role.PRESCRIPTION),
                    one(draft, Role.KEEP_OUT),
                    Double.NaN);
            return new FieldJob(draft.name, draft.logs, files, how(draft, files), null);
        } catch (UnusableInputException e) {
            return job.unusable(e);
        }
    }

    /** Under a language setting without a character set (C, as in a timer's job) such names can be read but not written. */
    private static void requireName(Draft draft) {
        if (draft.name.indexOf(NOT_READ) >= 0) {
            throw UnusableInputException.found("a name with letters that this session's language setting can't write")
                    .inFile(draft.folder.path().toString())
                    .expected("a setting for all letters, such as LC_ALL=C.UTF-8, or a name in plain letters")
                    .hint("set LC_ALL=C.UTF-8 before the call, or rename the folder");
        }
    }

    /** The file of this role, null for none; one that could be meant in two ways is asked about. */
    private @Nullable Path one(Draft draft, Role role) {
        List<Path> files = nearest(draft, role);
        if (files.isEmpty()) {
            return null;
        }
        Path file = files.get(0);
        if (files.size() > 1) {
            throw UnusableInputException.found("both " + file.getFileName() + " and "
                            + files.get(1).getFileName())
                    .inFile(String.valueOf(file.getParent()))
                    .expected("one " + role.word() + " file")
                    .hint("move away or rename the one that is not to be used");
        }
        boolean ofOneField = role == Role.BOUNDARY || role == Role.PRESCRIPTION;
        int jobsOfIt = users.getOrDefault(file, 0);
        if (ofOneField && jobsOfIt > 1) {
            throw UnusableInputException.found("one " + role.word() + " file for " + jobsOfIt + " jobs")
                    .inFile(file.toString())
                    .expected("a " + role.word() + " file beside the logs of the field that it is of")
                    .hint("put each field's logs into a folder of their own, with that field's " + role.word()
                            + " file beside them");
        }
        return file;
    }

    private void requireRig(Path rig) {
        RigSays says = rigs.computeIfAbsent(rig, BatchFolder::read);
        if (says.problem != null) {
            throw says.problem;
        }
        int jobsOfIt = users.getOrDefault(rig, 0);
        if (says.field != null && jobsOfIt > 1) {
            throw UnusableInputException.found("the field \"" + says.field + "\" for " + jobsOfIt + " jobs")
                    .inFile(rig.toString())
                    .atColumn("job.field")
                    .expected(
                            "no field's name in a rig file that several jobs share, since every record would print it")
                    .hint("take field: out of it, or put a rig file with its own field: beside each field's logs");
        }
    }

    private static RigSays read(Path rig) {
        try {
            return new RigSays(null, RigReader.read(rig).rig().job().facts().get("field"));
        } catch (UnusableInputException e) {
            return new RigSays(e, null);
        }
    }

    private String how(Draft draft, JobFiles files) {
        List<String> parts = new ArrayList<>();
        parts.add(draft.logs.size() == 1 ? "1 log" : draft.logs.size() + " logs as one job");
        parts.add(from(draft, files.rig()));
        for (Path file : new Path[] {files.boundary(), files.prescription(), files.keepOut()}) {
            if (file != null) {
                parts.add(from(draft, file));
            }
        }
        String text = String.join(", ", parts) + (files.boundary() == null ? ", no boundary." : ".");
        List<String> others = draft.folder.others();
        return others.isEmpty() ? text : text + " Not used: " + listed(others) + ".";
    }

    private String from(Draft draft, Path file) {
        Path folder = file.getParent();
        String name = String.valueOf(file.getFileName());
        if (draft.folder.path().equals(folder)) {
            return name;
        }
        for (Folder above : draft.above) {
            if (above.path().equals(folder)) {
                return name + " of the folder above (" + above.path().getFileName() + ")";
            }
        }
        return name + " given with --rig";
    }

    private static String listed(List<String> names) {
        String text = String.join(", ", names.subList(0, Math.min(LISTED, names.size())));
        return names.size() > LISTED ? text + " and " + (names.size() - LISTED) + " more" : text;
    }

    /** Two jobs whose results would go to one folder, or one's into the other's. */
    private void sameNameTwice() {
        for (int i = 0; i < jobs.size(); i++) {
            for (int j = i + 1; j < jobs.size(); j++) {
                String a = jobs.get(i).name();
                String b = jobs.get(j).name();
                boolean both = jobs.get(i).files() != null && jobs.get(j).files() != null;
                if (both && (a.equalsIgnoreCase(b) || b.startsWith(a + "/"))) {
                    jobs.set(
                            j,
                            jobs.get(j)
                                    .unusable(UnusableInputException.found("two jobs named " + a)
                                            .inFile(jobs.get(j).logs().get(0).toString())
                                            .expected("names that differ, since the results go by them")
                                            .hint("rename one of the logs or folders")));
                }
            }
        }
    }
}
