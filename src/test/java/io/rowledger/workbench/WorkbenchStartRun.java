package io.rowledger.workbench;

import static org.junit.jupiter.api.Assertions.assertEquals;

import io.rowledger.site.SitePage;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.lang.management.ManagementFactory;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Prints the time from the call to the page and the memory of the idle workbench, each as a process of its own. */
class WorkbenchStartRun {
    private static final int STARTS = 5;

    @TempDir
    private Path season;

    @Test
    void start_and_idle_memory() throws Exception {
        long[] pageMs = new long[STARTS];
        long[] rssMb = new long[STARTS];
        for (int i = 0; i < STARTS; i++) {
            long start = System.nanoTime();
            Process process =
                    new ProcessBuilder(call()).redirectErrorStream(true).start();
            try (BufferedReader out =
                    new BufferedReader(new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8))) {
                Visitor visitor = Visitor.at(link(out)).with("Origin", null);
                for (String path :
                        List.of("/", "/web/core.js", "/web/app.js", "/api/words", "/api/about", "/api/season")) {
                    assertEquals(200, visitor.get(path).status(), path);
                }
                pageMs[i] = (System.nanoTime() - start) / 1_000_000;
                Thread.sleep(2000);
                rssMb[i] = rssMb(process.pid());
            } finally {
                process.destroy();
                process.waitFor();
            }
        }
        Arrays.sort(pageMs);
        Arrays.sort(rssMb);
        String table =
                "| measured | " + STARTS + " starts on " + Runtime.getRuntime().availableProcessors()
                        + " processors, system load " + loadText() + " |\n| --- | --- |\n| first page after the call | "
                        + pageMs[STARTS / 2]
                        + " ms (" + pageMs[0] + " to " + pageMs[STARTS - 1] + ") |\n| resident memory, idle | "
                        + rssMb[STARTS / 2] + " MB |\n";
        System.out.println(table);
        SitePage.write("workbench", "start", table);
    }

    /** What else the machine had to do: a start on a busy machine is no measure of the program. */
    private static String loadText() {
        double load = ManagementFactory.getOperatingSystemMXBean().getSystemLoadAverage();
        return load < 0 ? "unknown" : String.format(Locale.ROOT, "%.1f", load);
    }

    private List<String> call() {
        List<String> call = new ArrayList<>();
        call.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
        String jar = System.getProperty("workbench.jar");
        if (jar == null) {
            call.addAll(List.of("-cp", System.getProperty("java.class.path"), "io.rowledger.cli.Main"));
        } else {
            call.addAll(List.of("-jar", jar));
        }
        call.addAll(List.of("open", season.toString(), "--no-browser"));
        return call;
    }

    private static String link(BufferedReader out) throws IOException {
        for (String line = out.readLine(); line != null; line = out.readLine()) {
            if (line.startsWith("http://")) {
                return line;
            }
        }
        throw new IOException("no link was printed");
    }

    /** Resident memory of a process, MB; 0 where the system doesn't say. */
    private static long rssMb(long pid) throws IOException {
        Path status = Path.of("/proc", Long.toString(pid), "status");
        if (!Files.exists(status)) {
            return 0;
        }
        return Files.readAllLines(status).stream()
                .filter(line -> line.startsWith("VmRSS:"))
                .mapToLong(line -> Long.parseLong(line.replaceAll("\\D", "")) / 1024)
                .findFirst()
                .orElse(0);
    }
}
