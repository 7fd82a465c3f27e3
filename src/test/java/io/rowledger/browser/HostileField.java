package io.rowledger.browser;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** A field of a season whose every name and fact would be markup, a template, a formula or a change of direction if it were let. */
final class HostileField {
    /** A folder that no name of the workbench can be. */
    static final String TAG = "<img src=x onerror=document.title='owned'>";

    static final String WITHOUT_RIG = "+2 'without' a rig";

    /** Allowed in names of files: no slash, angle bracket, colon or double quote. */
    private static final String NAME = "=1+1 & '{{t.page.map}}' &lt;b&gt; \u202eedis";

    private static final String LOG = "@SUM(A1) '&amp;' \u202e.csv";
    private static final String BAR = "-3 {{bar}} '&amp;' \u202ebar";
    private static final String COLUMN = "</script><svg onload=document.title='owned'>{{t.page.map}}'";

    /** What must be read on some screen. */
    static final List<String> SHOWN = List.of(TAG, NAME, LOG, BAR, COLUMN, SampleJob.HOSTILE);

    private HostileField() {}

    /** Writes the fields and a bar; returns the name of the field with a rig file. */
    static String write(Path season) throws IOException {
        Path sample = Path.of("sample-logs/plugged-row");
        List<String> lines = new ArrayList<>();
        for (String line : Files.readAllLines(sample.resolve("log.csv")).subList(0, 1200)) {
            lines.add(line + ",\"" + COLUMN + "\"");
        }
        String quoted = "\"" + SampleJob.HOSTILE.replace("\"", "\\\"").replace("\u202e", "\\u202e") + "\"";
        String rig = Files.readString(sample.resolve("rig.yaml"))
                .replace("name: Twelve-row pull-type bar", "name: " + quoted)
                .replace("name: UAN 32-0-0", "name: " + quoted)
                .replace("\"School eighty\"", quoted)
                .replace("\"Corn, V6\"", quoted);
        Path field = Files.createDirectory(season.resolve(NAME));
        Files.write(field.resolve(LOG), lines);
        Files.writeString(field.resolve("rig.yaml"), rig);
        Files.write(Files.createDirectory(season.resolve(WITHOUT_RIG)).resolve("log.csv"), lines);
        Path bars = Files.createDirectories(season.resolve("bars"));
        Files.writeString(bars.resolve(BAR + ".yaml"), rig);
        Files.createDirectory(season.resolve(TAG));
        return NAME;
    }
}
