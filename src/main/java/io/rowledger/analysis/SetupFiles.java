package io.rowledger.analysis;

import io.rowledger.digest.Sha256;
import io.rowledger.finding.UnusableInputException;
import io.rowledger.log.LogReading;
import io.rowledger.log.taskdata.ReadFile;
import io.rowledger.maps.MapReader;
import io.rowledger.rig.RigFile;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** The files handed in beside the logs with their digests, so that a record can name what it rests on. */
final class SetupFiles {
    private SetupFiles() {}

    static List<InputFile> of(JobFiles files, RigFile rig, LogReading reading) {
        List<InputFile> setups = new ArrayList<>();
        setups.add(new InputFile("--rig", rig.file(), rig.sha256()));
        if (files.boundary() != null) {
            map("--boundary", files.boundary(), setups);
        }
        if (files.prescription() != null) {
            map("--prescription", files.prescription(), setups);
        }
        if (files.keepOut() != null) {
            map("--keep-out", files.keepOut(), setups);
        }
        for (ReadFile beside : reading.beside()) {
            setups.add(new InputFile("task data", beside.name(), beside.sha256()));
        }
        return setups;
    }

    /** A map's file, and beside a shapefile its other parts. */
    private static void map(String option, Path path, List<InputFile> setups) {
        MapReader.files(path).forEach(part -> setups.add(file(option, part)));
    }

    private static InputFile file(String option, Path path) {
        try {
            return new InputFile(option, path.toString(), Sha256.of(path));
        } catch (IOException e) {
            throw UnusableInputException.found("a file that can't be read any more")
                    .inFile(path.toString())
                    .hint("leave the file where it is until the run has ended");
        }
    }
}
