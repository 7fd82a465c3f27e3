package io.rowledger.workbench;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.List;

/** The sample fields of the jar, for a first look: simulated, like every sample of this program. */
final class Samples {
    private static final List<Sample> ALL = List.of(
            new Sample("Sample plugged row", "plugged-row", List.of("log.csv", "rig.yaml", "boundary.geojson")),
            new Sample("Sample contour", "contour", List.of("log.csv", "rig.yaml")),
            new Sample("Sample clean", "clean", List.of("log.csv.gz", "rig.yaml", "boundary.geojson")));

    /** Where the samples lie. */
    private static final String ZONE = "America/Chicago";

    private final SeasonFolder folder;

    Samples(SeasonFolder folder) {
        this.folder = folder;
    }

    /** A sample: the name of its field, its folder in the jar, its files. */
    private record Sample(String field, String place, List<String> files) {}

    /** The fields that were made. */
    record Made(List<String> fields) {}

    /** Unpacks the samples as fields; those that are there stay as they are. */
    Made unpack() throws IOException {
        for (Sample sample : ALL) {
            for (String file : sample.files) {
                Path there = folder.inside(List.of(sample.field, file));
                if (!Files.exists(there, LinkOption.NOFOLLOW_LINKS)) {
                    byte[] bytes = inZone(file, bytes("/sample-logs/" + sample.place + "/" + file));
                    folder.write(List.of(sample.field, file), out -> out.write(bytes));
                }
            }
        }
        return new Made(ALL.stream().map(Sample::field).toList());
    }

    /** The rig file with the zone that the screen of time and place would propose: all screens and pages show one time. */
    private static byte[] inZone(String file, byte[] bytes) {
        String text = new String(bytes, StandardCharsets.UTF_8);
        return !file.equals(FieldStore.RIG) || text.contains("\n  zone: ")
                ? bytes
                : text.replace("\njob:\n", "\njob:\n  zone: " + ZONE + "\n").getBytes(StandardCharsets.UTF_8);
    }

    private static byte[] bytes(String resource) throws IOException {
        try (InputStream in = Samples.class.getResourceAsStream(resource)) {
            if (in == null) {
                throw new IllegalStateException("the jar lacks " + resource);
            }
            return in.readAllBytes();
        }
    }
}
