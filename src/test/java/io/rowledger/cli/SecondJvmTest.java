package io.rowledger.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SecondJvmTest {
    private static final String[] ARGS = {"report", "log.csv", "--rig", "my rig.yaml"};

    @Test
    void takesOverTheMemoryAndThePropertiesOfTheFirst() {
        List<String> call = call("-Xmx2g", "-Djava.io.tmpdir=/var/tmp", "-jar", "rowledger.jar")
                .orElseThrow();
        assertEquals("/usr/bin/java", call.get(0));
        assertTrue(call.contains("-XX:TieredStopAtLevel=1"), call::toString);
        assertTrue(call.contains("-Drowledger.first=" + ProcessHandle.current().pid()), call::toString);
        int memory = call.indexOf("-Xmx2g");
        assertEquals("-Djava.io.tmpdir=/var/tmp", call.get(memory + 1));
        assertEquals(
                List.of("-jar", "rowledger.jar", "report", "log.csv", "--rig", "my rig.yaml"),
                call.subList(call.size() - 6, call.size()));
    }

    @Test
    void leavesTheChoiceOfACollectorOrADebuggerToTheUser() {
        assertTrue(call("-XX:+UseZGC", "-jar", "rowledger.jar").isEmpty());
        assertTrue(call("-agentlib:jdwp=transport=dt_socket", "-jar", "rowledger.jar")
                .isEmpty());
    }

    @Test
    void staysWhereTheProgramWasNotStartedFromItsJar() {
        assertTrue(call("-cp", "classes:libraries", "io.rowledger.cli.Main").isEmpty());
        assertTrue(SecondJvm.call("/usr/bin/java", new String[0], ARGS).isEmpty());
        assertTrue(SecondJvm.call("", concat("-jar", "rowledger.jar"), ARGS).isEmpty());
    }

    @Test
    void startsNothingForCallsThatEndSoonerThanASecondJvmStarts() {
        assertEquals(OptionalInt.empty(), SecondJvm.run("inspect", "log.csv"));
        assertEquals(OptionalInt.empty(), SecondJvm.run());
    }

    @Test
    void takesClassesFromAnArchiveBesideTheJar(@TempDir Path folder) throws IOException {
        List<String> call =
                call("-jar", folder.resolve("rowledger.jar").toString()).orElseThrow();
        assertTrue(SecondJvm.withArchive(call).isEmpty());
        Path archive = Files.createFile(folder.resolve("rowledger.jsa"));
        List<String> with = SecondJvm.withArchive(call).orElseThrow();
        assertEquals("-XX:SharedArchiveFile=" + archive, with.get(1));
        assertEquals(call.subList(1, call.size()), with.subList(with.size() - call.size() + 1, with.size()));
    }

    private static Optional<List<String>> call(String... javas) {
        return SecondJvm.call("/usr/bin/java", concat(javas), ARGS);
    }

    private static String[] concat(String... javas) {
        String[] all = Arrays.copyOf(javas, javas.length + ARGS.length);
        System.arraycopy(ARGS, 0, all, javas.length, ARGS.length);
        return all;
    }
}
