package io.rowledger.results;

import com.fasterxml.jackson.databind.JsonNode;
import io.rowledger.finding.UnusableInputException;
import io.rowledger.report.findings.SavedDiagnosis;
import io.rowledger.report.season.Season;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.Set;

/**
 * Names the jobs that a season's ledger or a comparison is about, so that one of other jobs is never replaced: the SHA-256 of
 * logs for a season; field, rig and start for a comparison.
 */
public final class JobKeys {
    private JobKeys() {}

    /** Of a season that is to be written. */
    public static Set<String> of(Season season) {
        Set<String> keys = new HashSet<>();
        season.jobs().forEach(job -> keys.addAll(job.digests()));
        return keys;
    }

    /** Of two jobs whose comparison is to be written. */
    public static Set<String> of(SavedDiagnosis before, SavedDiagnosis after) {
        Set<String> keys = new HashSet<>();
        keys.add(key(before));
        keys.add(key(after));
        return keys;
    }

    private static String key(SavedDiagnosis job) {
        return String.join("\t", job.field(), job.rig(), String.valueOf(JsonNumbers.instant(job.startS())));
    }

    /**
     * Of the job whose results a folder holds: the SHA-256 of its logs. What another version of the program wrote counts too, so
     * that a new version replaces it.
     *
     * @throws UnusableInputException where the folder, or the file in it, isn't what {@code report} writes
     */
    public static Set<String> ofJob(Path folder) {
        Set<String> keys = new HashSet<>();
        for (JsonNode input : JsonFile.ofAnyVersion(folder, ResultFile.SUMMARY).path("inputs")) {
            keys.add(input.path("sha256").asText());
        }
        return keys;
    }

    /**
     * Of the season that a folder holds.
     *
     * @throws UnusableInputException where the folder, or the file in it, isn't what {@code season} writes
     */
    public static Set<String> ofSeason(Path folder) {
        Set<String> keys = new HashSet<>();
        for (JsonNode field : JsonFile.ofAnyVersion(folder, ResultFile.SEASON).path("fields")) {
            for (JsonNode job : field.path("jobs")) {
                job.path("sha256").forEach(digest -> keys.add(digest.asText()));
            }
        }
        return keys;
    }

    /**
     * Of the two jobs whose comparison a folder holds.
     *
     * @throws UnusableInputException where the folder, or the file in it, isn't what {@code compare} writes
     */
    public static Set<String> ofComparison(Path folder) {
        JsonNode tree = JsonFile.ofAnyVersion(folder, ResultFile.COMPARISON);
        Set<String> keys = new HashSet<>();
        for (JsonNode job : new JsonNode[] {tree.path("before"), tree.path("after")}) {
            keys.add(String.join(
                    "\t",
                    job.path("field").asText(),
                    job.path("rig").asText(),
                    job.path("start").asText("null")));
        }
        return keys;
    }
}
