package io.rowledger.analysis;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;

class JobFilesTest {
    @Test
    void a_log_is_named_without_folders_and_endings() {
        assertEquals("north", JobFiles.stem(Path.of("logs/north.csv.gz")));
        assertEquals("North 40", JobFiles.stem(Path.of("North 40.CSV")));
        assertEquals("job.2", JobFiles.stem(Path.of("job.2.zip")));
        assertEquals("monday", JobFiles.stem(Path.of("monday/TASKDATA.XML")));
        assertEquals("monday", JobFiles.stem(Path.of("monday/")));
        assertEquals(".csv", JobFiles.stem(Path.of(".csv")));
    }
}
