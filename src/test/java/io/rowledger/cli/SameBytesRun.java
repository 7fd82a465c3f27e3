package io.rowledger.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.digest.Sha256;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The same call in processes with other settings: locale, time zone, encoding, number of processors, threads and, where
 * {@code -Dother.jdk=HOME} names one, another Java. Every file has the same bytes.
 */
class SameBytesRun {
    private static final Path SAMPLE = Path.of("sample-logs/plugged-row").toAbsolutePath();

    @TempDir
    Path folder;

    private final Map<String, Map<String, String>> digests = new LinkedHashMap<>();

    @Test
    void every_setting_gives_the_same_bytes() throws Exception {
        String java = System.getProperty("java.home");
        run("usual", java, List.of(), Map.of(), List.of());
        run("LC_ALL=C", java, List.of(), Map.of("LC_ALL", "C", "LANG", "C"), List.of());
        run(
                "tr_TR",
                java,
                List.of("-Duser.language=tr", "-Duser.country=TR"),
                Map.of("LANG", "tr_TR.UTF-8"),
                List.of());
        run("ar", java, List.of("-Duser.language=ar", "-Duser.country=EG"), Map.of(), List.of());
        run("another zone", java, List.of("-Duser.timezone=Pacific/Apia"), Map.of("TZ", "Pacific/Apia"), List.of());
        run("another encoding", java, List.of("-Dfile.encoding=ISO-8859-1"), Map.of(), List.of());
        run("one processor", java, List.of("-XX:ActiveProcessorCount=1"), Map.of(), List.of());
        run("two processors", java, List.of("-XX:ActiveProcessorCount=2"), Map.of(), List.of());
        run("seven threads", java, List.of(), Map.of(), List.of("--threads", "7"));
        String other = System.getProperty("other.jdk", "");
        if (!other.isEmpty()) {
            run("another Java", other, List.of("--enable-native-access=ALL-UNNAMED"), Map.of(), List.of());
            run(
                    "another Java in tr_TR",
                    other,
                    List.of("--enable-native-access=ALL-UNNAMED", "-Duser.language=tr"),
                    Map.of(),
                    List.of());
        }
        Map<String, String> usual = digests.get("usual");
        assertTrue(usual != null && usual.size() > 15, String.valueOf(usual));
        for (Map.Entry<String, Map<String, String>> one : digests.entrySet()) {
            System.out.println(one.getKey() + ": " + one.getValue().size() + " files");
            assertEquals(usual, one.getValue(), one.getKey());
        }
    }

    private void run(String name, String home, List<String> options, Map<String, String> environment, List<String> more)
            throws IOException, InterruptedException {
        Path out = folder.resolve("out");
        List<String> call = new ArrayList<>();
        call.add(Path.of(home, "bin", "java").toString());
        call.addAll(options);
        call.addAll(List.of("-cp", System.getProperty("kills.classpath", System.getProperty("java.class.path"))));
        call.addAll(List.of(
                "io.rowledger.cli.Main",
                "report",
                SAMPLE.resolve("log.csv").toString(),
                "--rig",
                SAMPLE.resolve("rig.yaml").toString(),
                "--boundary",
                SAMPLE.resolve("boundary.geojson").toString(),
                "--out",
                out.toString()));
        call.addAll(more);
        ProcessBuilder builder = new ProcessBuilder(call)
                .redirectErrorStream(true)
                .redirectOutput(folder.resolve("said.txt").toFile());
        builder.environment().putAll(environment);
        assertEquals(0, builder.start().waitFor(), () -> name + ": " + said());
        Map<String, String> files = new TreeMap<>();
        files.put("console", Sha256.of(folder.resolve("said.txt")));
        List<Path> all;
        try (Stream<Path> walk = Files.walk(out)) {
            all = new ArrayList<>(walk.toList());
        }
        java.util.Collections.reverse(all);
        for (Path path : all) {
            if (Files.isRegularFile(path)) {
                files.put(out.relativize(path).toString(), Sha256.of(path));
            }
            Files.delete(path);
        }
        digests.put(name, files);
    }

    private String said() {
        try {
            return Files.readString(folder.resolve("said.txt"));
        } catch (IOException e) {
            return String.valueOf(e);
        }
    }
}
