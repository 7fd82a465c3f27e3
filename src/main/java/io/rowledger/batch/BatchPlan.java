package io.rowledger.batch;

import io.rowledger.analysis.JobFiles;
import io.rowledger.finding.UnusableInputException;
import io.rowledger.maps.MapReader;
import io.rowledger.results.BatchLedger.Basis;
import io.rowledger.results.BatchLedger.Entry;
import io.rowledger.results.BatchLedger.Input;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * What is to be done of a folder's jobs. A log counts once: twice in a job it is left out once, a job whose logs are all in
 * another one is skipped, two jobs that share a part of their logs are asked about.
 */
final class BatchPlan {
    private final List<PlannedJob> jobs = new ArrayList<>();
    private final Map<Path, String> digests = new HashMap<>();
    private final Map<String, String> sameAs = new HashMap<>();

    private BatchPlan() {}

    /**
     * A job and what speaks against doing it; at most one of the three is there.
     *
     * @param basis what its results depend on, or null where it can't be done
     * @param sameAs the job that has all its logs, or null
     * @param before the results that are there, or null
     */
    record PlannedJob(
            FieldJob job,
            @Nullable Basis basis,
            @Nullable String sameAs,
            @Nullable Entry before) {}

    /**
     * Looks for what needn't be done.
     *
     * @param version of the program
     * @param options that the results depend on
     * @param store the results that are there
     * @param again true where what was done is done again
     */
    static List<PlannedJob> of(
            List<FieldJob> jobs, String version, Map<String, String> options, BatchStore store, boolean again) {
        BatchPlan plan = new BatchPlan();
        List<FieldJob> once = plan.once(jobs.stream().map(plan::digested).toList());
        Map<Basis, Entry> known = new LinkedHashMap<>();
        Set<String> names = new HashSet<>(jobs.stream().map(FieldJob::name).toList());
        for (Entry entry : store.ledger().entries()) {
            // Results under the name of a job of today are that job's place and may be replaced.
            if (!names.contains(entry.name())) {
                known.put(entry.basis(), entry);
            }
        }
        for (FieldJob job : once) {
            if (job.files() == null) {
                plan.jobs.add(new PlannedJob(job, null, plan.sameAs.get(job.name()), null));
                continue;
            }
            Basis basis = new Basis(version, options, plan.inputs(job.files()));
            Entry own = store.ledger().entry(job.name());
            Entry before = own != null && own.basis().equals(basis) ? own : known.get(basis);
            boolean holds = before != null && !again && store.holds(before);
            plan.jobs.add(new PlannedJob(job, basis, null, holds ? before : null));
        }
        return List.copyOf(plan.jobs);
    }

    private String digest(Path file) {
        return digests.computeIfAbsent(file, Digests::of);
    }

    /** The job without logs it has twice; its problem where one can't be read. */
    private FieldJob digested(FieldJob job) {
        try {
            Map<String, Path> logs = new LinkedHashMap<>();
            StringBuilder why = new StringBuilder();
            for (Path log : job.logs()) {
                Path first = logs.putIfAbsent(digest(log), log);
                if (first != null) {
                    why.append(log.getFileName())
                            .append(" is the same file as ")
                            .append(first.getFileName())
                            .append(" and was left out.");
                }
            }
            if (job.files() != null) {
                inputs(job.files());
            }
            return why.isEmpty() ? job : job.withLogs(List.copyOf(logs.values()), why.toString());
        } catch (UnusableInputException e) {
            return job.unusable(e);
        }
    }

    private List<FieldJob> once(List<FieldJob> all) {
        FieldJob[] kept = all.toArray(FieldJob[]::new);
        // Those with more logs first: a job of all logs of a field holds those of a part of them.
        List<Integer> largestFirst = new ArrayList<>();
        for (int i = 0; i < kept.length; i++) {
            largestFirst.add(i);
        }
        largestFirst.sort((a, b) ->
                Integer.compare(all.get(b).logs().size(), all.get(a).logs().size()));
        Map<String, FieldJob> owner = new HashMap<>();
        for (int i : largestFirst) {
            kept[i] = kept[i].files() == null ? kept[i] : against(owner, kept[i]);
        }
        return List.of(kept);
    }

    private FieldJob against(Map<String, FieldJob> owner, FieldJob job) {
        Set<FieldJob> others = new java.util.LinkedHashSet<>();
        int shared = 0;
        for (Path log : job.logs()) {
            FieldJob other = owner.get(digest(log));
            if (other != null) {
                shared++;
                others.add(other);
            }
        }
        if (shared == 0) {
            job.logs().forEach(log -> owner.put(digest(log), job));
            return job;
        }
        FieldJob first = others.iterator().next();
        if (shared == job.logs().size() && others.size() == 1) {
            sameAs.put(job.name(), first.name());
            return new FieldJob(job.name(), job.logs(), null, job.how(), null);
        }
        return job.unusable(
                UnusableInputException.found("a log that " + first.name() + " has too, beside logs that it has not")
                        .inFile(String.valueOf(job.logs().get(0).getParent()))
                        .expected("each log in one job only")
                        .hint("put all logs of the field's job into one folder, and take copies out of the others"));
    }

    /** All files of a job with their digests, in the order they are handed on. */
    private List<Input> inputs(JobFiles files) {
        List<Input> inputs = new ArrayList<>();
        for (Path log : files.logs()) {
            inputs.add(input("log", log));
        }
        inputs.add(input("rig", files.rig()));
        addMap("boundary", files.boundary(), inputs);
        addMap("prescription", files.prescription(), inputs);
        addMap("keep-out", files.keepOut(), inputs);
        return inputs;
    }

    /** A map is all of its parts: a shapefile has several. */
    private void addMap(String role, @Nullable Path map, List<Input> inputs) {
        if (map != null) {
            MapReader.files(map).forEach(part -> inputs.add(input(role, part)));
        }
    }

    private Input input(String role, Path file) {
        return new Input(role, String.valueOf(file.getFileName()), digest(file));
    }
}
