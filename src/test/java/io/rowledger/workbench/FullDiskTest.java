package io.rowledger.workbench;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FullDiskTest {
    /** The systems' words from memory: strerror of ENOSPC and EDQUOT, FormatMessage of ERROR_DISK_FULL. */
    @ParameterizedTest
    @CsvSource({
        "true, found that the outputs can't be written (No space left on device)",
        "true, C:\\seasons\\x: There is not enough space on the disk",
        "true, Disk quota exceeded",
        "false, /home/ann/workspace/season: found that the outputs can't be written (Read-only file system)",
        "false, /mnt/spaceship/North 40: access denied",
    })
    void a_full_disk_is_told_by_the_systems_words_and_not_by_a_folders_name(boolean full, String message) {
        assertEquals(full, FullDisk.isToldBy(message), message);
    }
}
