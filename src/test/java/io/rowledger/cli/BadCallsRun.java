package io.rowledger.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.sim.SmallJob;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Hundreds of calls and inputs that can't be used, one after the other in one process of 512 MB: each ends with status 2 and one
 * message of the form {@code PLACE: found ...; expected .... Hint: ...} in less than 10 s, and leaves no file behind.
 */
class BadCallsRun {
    private static final Pattern FORM =
            Pattern.compile("rowledger: (?s:.{0,600}?)found .+; expected .+\\. Hint: .+\\.", Pattern.DOTALL);

    private static final double MAX_S = 10;

    @TempDir
    Path folder;

    @Test
    void every_bad_call_ends_with_its_message() throws IOException {
        SmallJob.writeTo(folder, 5, 80);
        Map<String, List<Object>> calls = new BadCalls(folder).all();
        Set<String> before = files();
        List<String> faults = new ArrayList<>();
        double slowestS = 0;
        String slowest = "";
        for (Map.Entry<String, List<Object>> call : calls.entrySet()) {
            long start = System.nanoTime();
            Calls done = Calls.of(call.getValue().toArray());
            double seconds = (System.nanoTime() - start) / 1e9;
            if (seconds > slowestS) {
                slowestS = seconds;
                slowest = call.getKey();
            }
            String err = done.err().strip();
            boolean form = FORM.matcher(err).matches() && err.lines().count() == 1 && !err.contains("\tat ");
            boolean inspects = call.getValue().get(0).equals("inspect");
            if (done.status() != 2 || !(form || (inspects && err.contains("Hint: "))) || seconds > MAX_S) {
                String message = err.length() > 300 ? err.substring(0, 300) + "..." : err;
                faults.add(call.getKey() + ": status " + done.status() + ", " + Math.round(seconds * 10) / 10.0 + " s, "
                        + message);
            }
            Set<String> after = files();
            if (!after.equals(before)) {
                after.removeAll(before);
                faults.add(call.getKey() + ": left " + after);
                before = files();
            }
        }
        System.out.printf(
                "%d bad calls, %d faults, slowest %.1f s (%s), %d MB%n",
                calls.size(),
                faults.size(),
                slowestS,
                slowest,
                Runtime.getRuntime().maxMemory() >> 20);
        faults.forEach(System.out::println);
        assertTrue(calls.size() >= 300, calls.size() + " calls");
        assertEquals(List.of(), faults);
    }

    private Set<String> files() throws IOException {
        Set<String> files = new TreeSet<>();
        try (Stream<Path> walk = Files.walk(folder)) {
            walk.forEach(path -> files.add(folder.relativize(path).toString()));
        }
        return files;
    }
}
