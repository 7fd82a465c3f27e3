package io.rowledger.output;

import io.rowledger.finding.UnusableInputException;
import io.rowledger.report.findings.SavedDiagnosis;
import io.rowledger.report.season.Season;
import io.rowledger.results.JobKeys;
import io.rowledger.results.ResultFile;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Collection;
import java.util.Collections;
import java.util.List;
import java.util.Set;
import java.util.function.Function;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * The folder of one job's results: replaced as a whole, never file by file. The new folder is written beside the old one
 * ({@code .NAME.rowledger/new}), then the old one is renamed away and the new one renamed to its name. A run that is killed
 * leaves the old folder or the new one; between the two renames the old one waits in {@code .NAME.rowledger/old}, and the
 * next run puts it back.
 *
 * <p>A folder is replaced only where it holds nothing but results of the same job: every file has a name of this program's,
 * and the main one among them, such as {@code summary.json}, names a job of this run.
 */
final class ResultsFolder {
    private static final String NEW = "new";
    private static final String OLD = "old";

    /**
     * What a folder may hold that is replaced.
     *
     * @param names files of this kind of results, folders parted by slashes
     * @param main the file that says which jobs the results are of
     * @param keys of those jobs
     * @param ofFolder the same of the jobs whose results a folder holds; one in common is enough
     */
    record Kind(
            Pattern names, ResultFile main, Set<String> keys, Function<Path, ? extends Collection<String>> ofFolder) {}

    private static final Pattern JOB = Pattern.compile("(pass-review|nitrogen-record|row-diagnosis)\\.pdf"
            + "|(summary|diagnosis|nitrogen-record|setup-check)\\.json|review\\.html|(rows|passes)\\.csv|rig-corrected\\.yaml"
            + "|layers/((strips|overlaps|skips|findings|zones|setbacks)\\.geojson|field\\.gpkg|places\\.gpx"
            + "|received(-[^/]+)?\\.tif)");

    private static final Pattern SEASON = Pattern.compile("season\\.(pdf|csv|json)");
    private static final Pattern COMPARISON = Pattern.compile("comparison\\.(pdf|json)");

    private final Path target;
    private final WorkFolder work;

    private ResultsFolder(Path target, WorkFolder work) {
        this.target = target;
        this.work = work;
    }

    /** Results of one job, known by the SHA-256 of its logs. */
    static Kind job(Set<String> logs) {
        return new Kind(JOB, ResultFile.SUMMARY, logs, JobKeys::ofJob);
    }

    /** The ledger of a season. */
    static Kind season(Season season) {
        return new Kind(SEASON, ResultFile.SEASON, JobKeys.of(season), JobKeys::ofSeason);
    }

    /** The comparison of two jobs. */
    static Kind comparison(SavedDiagnosis before, SavedDiagnosis after) {
        return new Kind(COMPARISON, ResultFile.COMPARISON, JobKeys.of(before, after), JobKeys::ofComparison);
    }

    /**
     * Writes outputs into a folder of their own, in place of earlier results of the same job.
     *
     * @param inputs the files handed in; none may lie in the folder
     * @param kind what is written, and what it may replace
     * @param threads how many files are written at a time; the bytes don't depend on it
     * @throws UnusableInputException where the folder holds anything else, or can't be written; it is then as it was
     */
    static void replace(Path folder, Outputs outputs, List<Path> inputs, Kind kind, int threads) {
        try {
            Path target = real(folder);
            Path missing = firstMissing(target);
            Files.createDirectories(Outputs.parent(target));
            try (WorkFolder work = WorkFolder.tryOpen(beside(target), missing)) {
                if (work == null) {
                    throw UnusableInputException.found("another run that writes its results here")
                            .inFile(folder.toString())
                            .expected("one run at a time for a folder of results")
                            .hint("wait until it has ended, or name another folder with --out");
                }
                new ResultsFolder(target, work).replace(outputs, inputs, kind, threads);
            }
        } catch (IOException e) {
            throw Outputs.refused(folder, e);
        }
    }

    /**
     * Refuses at once a folder that can't be for results, before a long analysis: no folder, the current one, or one with files
     * that no run writes.
     */
    static void requireRoom(Path folder, Kind kind) {
        try {
            Path target = real(folder);
            // What a killed run left is put right first, when the results are written.
            if (!Files.exists(beside(target))) {
                holdsFiles(target, kind);
            }
        } catch (IOException e) {
            throw Outputs.refused(folder, e);
        }
    }

    private static Path beside(Path target) {
        return target.resolveSibling("." + target.getFileName() + ".rowledger");
    }

    /** The folder itself where the name is a link to it. */
    private static Path real(Path folder) throws IOException {
        Path whole = folder.toAbsolutePath().normalize();
        Path target = Files.exists(whole) ? whole.toRealPath() : whole;
        Path here = Path.of("").toAbsolutePath().normalize();
        if (target.getFileName() == null || here.startsWith(target)) {
            throw UnusableInputException.found("the folder you are in, or one above it")
                    .inFile(folder.toString().isEmpty() ? "--out" : folder.toString())
                    .expected("a folder for the results alone")
                    .hint("name a new folder with --out");
        }
        return target;
    }

    /** The uppermost folder that has to be made for this one; null where it exists. */
    private static @Nullable Path firstMissing(Path target) {
        Path missing = null;
        for (Path at = target; at != null && !Files.exists(at); at = at.getParent()) {
            missing = at;
        }
        return missing;
    }

    private void replace(Outputs outputs, List<Path> inputs, Kind kind, int threads) throws IOException {
        putBack();
        requireOurs(target, kind);
        requireNoInput(inputs);
        Path fresh = Files.createDirectory(work.resolve(NEW));
        try {
            outputs.writeAll(fresh, threads);
        } catch (IOException | RuntimeException e) {
            work.awaitExit();
            throw e;
        }
        work.settle(() -> swap(fresh));
    }

    /** Puts right what a run left that was killed. */
    private void putBack() throws IOException {
        if (Files.exists(work.resolve(OLD)) && !Files.exists(target)) {
            work.settle(() -> back(null));
        }
        WorkFolder.clear(work.resolve(OLD));
        WorkFolder.clear(work.resolve(NEW));
    }

    private void swap(Path fresh) throws IOException {
        Path old = work.resolve(OLD);
        boolean replaces = Files.exists(target);
        if (replaces) {
            Files.move(target, old, StandardCopyOption.ATOMIC_MOVE);
        }
        try {
            Files.move(fresh, target, StandardCopyOption.ATOMIC_MOVE);
        } catch (IOException e) {
            if (replaces) {
                back(e);
            }
            throw e;
        }
    }

    /** Moves the old results to their place. */
    private void back(@Nullable IOException why) throws WorkFolder.UnsettledException {
        try {
            Files.move(work.resolve(OLD), target, StandardCopyOption.ATOMIC_MOVE);
        } catch (IOException e) {
            if (why != null) {
                e.addSuppressed(why);
            }
            throw new WorkFolder.UnsettledException(e);
        }
    }

    private static void requireOurs(Path target, Kind kind) throws IOException {
        if (holdsFiles(target, kind) && Collections.disjoint(kind.ofFolder.apply(target), kind.keys)) {
            String found = kind.main == ResultFile.SUMMARY ? "the results of another log" : "the results of other jobs";
            throw UnusableInputException.found(found)
                    .inFile(target.toString())
                    .expected("an empty folder, or one with nothing but results of this job")
                    .hint("name another folder with --out, or move that one away");
        }
    }

    /**
     * Whether a folder holds results.
     *
     * @throws UnusableInputException where it holds anything else
     */
    private static boolean holdsFiles(Path target, Kind kind) throws IOException {
        if (!Files.exists(target)) {
            return false;
        }
        if (!Files.isDirectory(target)) {
            throw UnusableInputException.found("a file where the folder of results should be")
                    .inFile(target.toString())
                    .expected("a folder, or a name not yet taken")
                    .hint("name another folder with --out");
        }
        List<String> files = files(target);
        boolean results = files.contains(kind.main.fileName());
        for (String file : files) {
            if (!results || !kind.names.matcher(file).matches()) {
                throw UnusableInputException.found("a file that isn't a result: " + file)
                        .inFile(target.toString())
                        .expected("an empty folder, or one with nothing but results of this job")
                        .hint("name another folder with --out, or move that file away");
            }
        }
        return !files.isEmpty();
    }

    private static List<String> files(Path target) throws IOException {
        try (Stream<Path> files = Files.walk(target)) {
            return files.filter(file -> !Files.isDirectory(file))
                    .map(file -> target.relativize(file).toString().replace('\\', '/'))
                    .sorted()
                    .toList();
        }
    }

    private void requireNoInput(List<Path> inputs) throws IOException {
        for (Path input : inputs) {
            if (Files.exists(input) && input.toRealPath().startsWith(target)) {
                throw UnusableInputException.found("a file that was handed in where its results go")
                        .inFile(input.toString())
                        .expected("a folder of results apart from logs, rig file and maps")
                        .hint("name another folder with --out; the file is as it was");
            }
        }
    }
}
