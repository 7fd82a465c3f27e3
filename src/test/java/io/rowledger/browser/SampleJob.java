package io.rowledger.browser;

import static org.junit.jupiter.api.Assertions.assertEquals;

import io.rowledger.cli.Calls;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import javax.imageio.ImageIO;

/** The sample with a plugged row, with every text that a person enters made hostile, setbacks, zones and a picture. */
final class SampleJob {
    /** Ends a script, opens an attribute and a comment, and turns the direction of writing. */
    static final String HOSTILE =
            "</script><img src=x onerror=\"document.title='owned'\">{{t.page.map}}<!--'&amp;\u202e";

    private static final Path SAMPLE = Path.of("sample-logs/plugged-row");

    private SampleJob() {}

    /** Runs report into the folder; options may follow. */
    static Path report(Path folder, String... options) throws IOException {
        Path out = folder.resolve("results");
        Object[] call = {
            "report",
            SAMPLE.resolve("log.csv"),
            "--rig",
            rig(folder),
            "--boundary",
            SAMPLE.resolve("boundary.geojson"),
            "--prescription",
            zones(folder),
            "--keep-out",
            keepOut(folder),
            "--backdrop",
            picture(folder),
            "--quiet",
            "--out",
            out
        };
        Object[] all = new Object[call.length + options.length];
        System.arraycopy(call, 0, all, 0, call.length);
        System.arraycopy(options, 0, all, call.length, options.length);
        Calls run = Calls.of(all);
        assertEquals(0, run.status(), run.err());
        return out.resolve("review.html");
    }

    private static Path rig(Path folder) throws IOException {
        String quoted =
                "\"" + HOSTILE.replace("\\", "\\\\").replace("\"", "\\\"").replace("\u202e", "\\u202e") + "\"";
        String rig = Files.readString(SAMPLE.resolve("rig.yaml"))
                .replace("name: Twelve-row pull-type bar", "name: " + quoted)
                .replace("name: UAN 32-0-0", "name: " + quoted)
                .replace("\"School eighty\"", quoted)
                .replace("\"Corn, V6\"", quoted);
        return Files.writeString(folder.resolve("rig.yaml"), rig + "prescription: {rate: rate, unit: gal/ac}\n");
    }

    private static Path zones(Path folder) throws IOException {
        String halves = feature(
                        "\"rate\": 48", "[-93.5150,41.5325],[-93.5127,41.5325],[-93.5127,41.5350],[-93.5150,41.5350]")
                + ","
                + feature(
                        "\"rate\": 46", "[-93.5127,41.5325],[-93.5100,41.5325],[-93.5100,41.5350],[-93.5127,41.5350]");
        return Files.writeString(folder.resolve("zones.geojson"), collection(halves));
    }

    private static Path keepOut(Path folder) throws IOException {
        String name = HOSTILE.replace("\\", "\\\\").replace("\"", "\\\"");
        String well = feature(
                "\"name\": \"" + name + "\", \"setback\": \"40 ft\"",
                "[-93.51300,41.53350],[-93.51295,41.53350],[-93.51295,41.53354],[-93.51300,41.53354]");
        return Files.writeString(folder.resolve("wells.geojson"), collection(well));
    }

    private static String collection(String features) {
        return "{\"type\": \"FeatureCollection\", \"features\": [" + features + "]}";
    }

    private static String feature(String properties, String ring) {
        String first = ring.substring(0, ring.indexOf(']') + 1);
        return "{\"type\": \"Feature\", \"properties\": {" + properties + "}, \"geometry\": {\"type\": \"Polygon\","
                + " \"coordinates\": [[" + ring + "," + first + "]]}}";
    }

    private static Path picture(Path folder) throws IOException {
        BufferedImage image = new BufferedImage(300, 200, BufferedImage.TYPE_INT_RGB);
        Path file = folder.resolve("ground.png");
        ImageIO.write(image, "png", file.toFile());
        Files.writeString(folder.resolve("ground.pgw"), "0.00002\n0\n0\n-0.0000125\n-93.5155\n41.5352\n");
        return file;
    }
}
