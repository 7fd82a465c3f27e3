package io.rowledger.log;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.finding.UnusableInputException;
import io.rowledger.log.taskdata.TaskData;
import io.rowledger.rig.Rig;
import io.rowledger.rig.RigReader;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;

/**
 * Every folder of {@code cases/bad-input} holds a log and a rig file of which one can't be used, why somebody could come
 * to write it ({@code why.txt}), and the one message that answers it ({@code expected.txt}, file names without folder).
 */
class BadInputTest {
    private static final Path CASES = Path.of("src/test/resources/cases/bad-input");

    @TestFactory
    Stream<DynamicTest> every_unusable_file_ends_with_its_message() throws IOException {
        List<Path> folders;
        try (Stream<Path> list = Files.list(CASES)) {
            folders = list.filter(BadInputTest::holdsLog).sorted().toList();
        }
        assertTrue(folders.size() >= 40, folders.size() + " cases");
        return folders.stream()
                .map(folder -> DynamicTest.dynamicTest(folder.getFileName().toString(), () -> check(folder)));
    }

    /** The other folders hold a map file, and the command line's test reads them beside a good log. */
    private static boolean holdsLog(Path folder) {
        return Files.exists(folder.resolve("rig.yaml"));
    }

    private static void check(Path folder) throws IOException {
        assertTrue(Files.size(folder.resolve("why.txt")) > 0);
        Path log;
        try (Stream<Path> list = Files.list(folder)) {
            log = list.filter(path -> path.getFileName().toString().startsWith("log."))
                    .findFirst()
                    .orElseThrow();
        }
        UnusableInputException e = assertThrows(UnusableInputException.class, () -> {
            Rig rig = RigReader.read(folder.resolve("rig.yaml")).rig();
            if (!TaskData.is(log) && AreaLog.is(log)) {
                AreaLog.read(List.of(log), rig.logOptions());
            } else {
                LogReader.read(List.of(log), rig.logOptions());
            }
        });
        String message = e.getMessage().replace(folder + "/", "");
        assertEquals(Files.readString(folder.resolve("expected.txt")).strip(), message);
    }
}
