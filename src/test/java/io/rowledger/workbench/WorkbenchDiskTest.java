package io.rowledger.workbench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.rowledger.finding.UnusableInputException;
import java.io.IOException;
import java.io.OutputStream;
import java.net.NetworkInterface;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A disk that is full or read-only, and a machine without a network: real ones, where the machine lets a test make them. */
@Tag("slow")
class WorkbenchDiskTest {
    private static final ObjectMapper JSON = new ObjectMapper();
    private static final Path SAMPLE = Path.of("sample-logs/plugged-row");
    /** Room for one field's results and little more. */
    private static final String SMALL_DISK = "9m";

    @TempDir
    private Path around;

    private boolean mounted;

    /** Makes a small disk with a field of a quarter hour on it. */
    private Path disk() throws Exception {
        Path disk = Files.createDirectory(around.resolve("disk"));
        mounted = call("mount", "-t", "tmpfs", "-o", "size=" + SMALL_DISK, "tmpfs", disk.toString());
        Assumptions.assumeTrue(mounted, "only root on Linux can make a small disk: not tried here");
        Path field = Files.createDirectory(disk.resolve("north"));
        Files.copy(SAMPLE.resolve("rig.yaml"), field.resolve("rig.yaml"));
        List<String> lines = Files.readAllLines(SAMPLE.resolve("log.csv"));
        Files.write(field.resolve("log.csv"), lines.subList(0, 1500));
        return disk;
    }

    @AfterEach
    void unmount() throws Exception {
        if (mounted) {
            assertTrue(call("umount", around.resolve("disk").toString()));
        }
    }

    private static boolean call(String... words) throws InterruptedException {
        try {
            return new ProcessBuilder(words)
                            .redirectErrorStream(true)
                            .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                            .start()
                            .waitFor()
                    == 0;
        } catch (IOException e) {
            return false;
        }
    }

    private static Workbench start(Path season) {
        return Workbench.start(new Workbench.Settings(season, "test", failure -> {
            throw new AssertionError(failure);
        }));
    }

    private static JsonNode run(Visitor visitor) throws Exception {
        assertEquals(
                200,
                visitor.json("POST", "/api/work", "{\"fields\": [\"north\"]}").status());
        for (int i = 0; i < 1200; i++) {
            JsonNode work = JSON.readTree(visitor.get("/api/work").bytes());
            if (!work.path("busy").asBoolean()) {
                return work.path("lines").get(0);
            }
            Thread.sleep(50);
        }
        throw new AssertionError("still at work");
    }

    @Test
    void a_full_disk_is_told_and_with_room_again_the_work_goes_on() throws Exception {
        Path disk = disk();
        try (Workbench workbench = start(disk)) {
            Visitor visitor = Visitor.at(workbench.link());
            Visitor.Answer answer = visitor.put("/api/fields/north/files/big.csv", new byte[16 << 20]);
            assertEquals(507, answer.status(), answer.text());
            assertTrue(answer.text().contains("The disk is full. Nothing was lost."), answer.text());
            assertEquals(List.of("log.csv", "rig.yaml"), names(disk.resolve("north")));
            assertEquals(List.of("lock"), names(disk.resolve(".rowledger")));
            Path junk = disk.resolve("junk");
            try (OutputStream out = Files.newOutputStream(junk)) {
                out.write(new byte[(int) (Files.getFileStore(disk).getUsableSpace() - 300_000)]);
            }
            JsonNode line = run(visitor);
            assertEquals("failed", line.path("state").asText(), line.toString());
            assertTrue(
                    line.path("message").asText().startsWith("The disk is full. Nothing was lost."), line.toString());
            assertFalse(Files.exists(disk.resolve("results/north")));
            Files.delete(junk);
            assertEquals("done", run(visitor).path("state").asText());
            assertTrue(Files.isRegularFile(disk.resolve("results/north/review.html")));
        }
    }

    @Test
    void a_read_only_folder_is_told_at_the_start() throws Exception {
        Path disk = disk();
        assertTrue(call("mount", "-o", "remount,ro", disk.toString()));
        UnusableInputException refused =
                assertThrows(UnusableInputException.class, () -> start(disk).close());
        assertTrue(refused.getMessage().contains("can't be written to"), refused.getMessage());
    }

    @Test
    void the_page_works_without_any_network() throws Exception {
        Assumptions.assumeTrue(
                call("unshare", "--net", "ip", "link", "set", "lo", "up"),
                "only root on Linux can take the network away: not tried here");
        Path season = Files.createDirectory(around.resolve("season"));
        List<String> java = List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:TieredStopAtLevel=1",
                "-cp",
                System.getProperty("kills.classpath", System.getProperty("java.class.path")),
                Offline.class.getName(),
                season.toString());
        List<String> call =
                new ArrayList<>(List.of("unshare", "--net", "sh", "-c", "ip link set lo up && exec \"$@\"", "sh"));
        call.addAll(java);
        Process process = new ProcessBuilder(call).redirectErrorStream(true).start();
        String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertEquals(0, process.waitFor(), said);
        assertTrue(said.contains("interfaces [lo]\npage 200\nseason 200\nsample 200\n"), said);
    }

    /** A workbench and somebody at its page, in a process whose machine has no network. */
    static final class Offline {
        private Offline() {}

        public static void main(String[] args) throws IOException {
            List<String> up = new ArrayList<>();
            for (NetworkInterface each : Collections.list(NetworkInterface.getNetworkInterfaces())) {
                if (each.isUp()) {
                    up.add(each.getName());
                }
            }
            System.out.println("interfaces " + up);
            try (Workbench workbench = start(Path.of(args[0]))) {
                Visitor visitor = Visitor.at(workbench.link());
                System.out.println("page " + visitor.get("/").status());
                System.out.println("season " + visitor.get("/api/season").status());
                System.out.println(
                        "sample " + visitor.json("POST", "/api/sample", "{}").status());
            }
        }
    }

    private static List<String> names(Path folder) throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.map(file -> String.valueOf(file.getFileName()))
                    .sorted()
                    .toList();
        }
    }
}
