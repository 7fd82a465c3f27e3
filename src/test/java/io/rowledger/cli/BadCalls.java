package io.rowledger.cli;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import java.util.zip.GZIPOutputStream;

/** Calls and inputs that can't be used, made by tables: one wrong thing each, beside a good log, rig file and boundary. */
final class BadCalls {
    private final Path folder;
    private final Path log;
    private final Path rig;
    private final Path boundary;
    private final Map<String, List<Object>> calls = new LinkedHashMap<>();

    /** A folder with a good {@code log.csv}, {@code rig.yaml} and {@code boundary.geojson}. */
    BadCalls(Path folder) {
        this.folder = folder;
        log = folder.resolve("log.csv");
        rig = folder.resolve("rig.yaml");
        boundary = folder.resolve("boundary.geojson");
    }

    /** All calls by name. */
    Map<String, List<Object>> all() throws IOException {
        options();
        verbs();
        rigValues();
        rigText();
        logs();
        maps();
        templates();
        keys();
        devices();
        cases();
        return calls;
    }

    private void put(String name, Object... words) {
        if (calls.put(name, List.of(words)) != null) {
            throw new IllegalStateException("twice: " + name);
        }
    }

    private void report(String name, Object... more) {
        List<Object> words = new ArrayList<>(List.of("report", log, "--rig", rig));
        words.addAll(List.of(more));
        calls.put(name, words);
    }

    private Path file(String name, String text) throws IOException {
        Path path = folder.resolve("bad").resolve(name);
        Files.createDirectories(path.getParent());
        return Files.writeString(path, text);
    }

    private void options() {
        Map<String, List<String>> values = Map.of(
                "--units", List.of("imperial", "", "us,metric", "US metric"),
                "--paper", List.of("legal", "", "a3"),
                "--for", List.of("banker", ",", "applicator,banker"),
                "--threads", List.of("0", "-1", "two", "", "1.5", "99999999999"),
                "--language", List.of("xx", "", "englisch"),
                "--setback", List.of("35 ft", "", "35", "-35 ft", "35 gal", "1e9 ft", "NaN ft"),
                "--out", List.of("", ".", "..", "/", "/proc/none", "/dev/null"));
        values.forEach(
                (option, list) -> list.forEach(value -> report("report " + option + "=" + value, option, value)));
        for (String value : List.of("0 in", "1 mm", "-30 in", "30", "30 gal", "", "1e9 m", "2 in per row", "NaN in")) {
            put("check --spacing=" + value, "check", log, "--spacing", value);
        }
        for (String value : List.of("-1", "201", "two", "1.5")) {
            put("check --rows=" + value, "check", log, "--rows", value);
        }
        for (String option : List.of("--rig", "--boundary", "--prescription", "--keep-out", "--templates", "--sign")) {
            report("report " + option + " without a value", option);
            report("report " + option + " twice", option, "a", option, "b");
        }
        report("unknown option", "--color");
        report("an option with a dash too few", "-out", folder.resolve("x"));
        report("a value for a switch", "--quiet=maybe");
        report("a name with NUL", "--boundary", "a\0b.geojson");
        report("an option file that isn't there", "@none");
        put("batch --jobs=0", "batch", folder, "--jobs", "0");
        put("batch --jobs=x", "batch", folder, "--jobs", "x");
        put("batch --each=field", "batch", folder, "--each", "field");
        for (String value : List.of("0/4", "5/4", "x", "", "1/0", "99999999999/99999999999", "-1/2")) {
            put("batch --shard=" + value, "batch", folder, "--shard", value);
        }
        put("open --port=x", "open", folder, "--port", "x", "--no-browser");
        put("open --port=-1", "open", folder, "--port", "-1", "--no-browser");
        put("open --port=70000", "open", folder, "--port", "70000", "--no-browser");
        put("open a file", "open", log, "--no-browser");
        put("open nothing", "open", folder.resolve("nowhere"), "--no-browser");
    }

    private void verbs() throws IOException {
        Path empty = Files.createDirectories(folder.resolve("bad/empty"));
        Path half = Files.createDirectories(folder.resolve("bad/half"));
        Files.writeString(half.resolve("summary.json"), "{\"schema\": ");
        Files.writeString(half.resolve("diagnosis.json"), "[]");
        Path old = Files.createDirectories(folder.resolve("bad/old"));
        Files.writeString(old.resolve("summary.json"), "{\"schema\": \"rowledger-summary/1\"}");
        Files.writeString(old.resolve("diagnosis.json"), "{\"schema\": \"rowledger-diagnosis/2\"}");
        Path deep = Files.createDirectories(folder.resolve("bad/deep"));
        Files.writeString(deep.resolve("summary.json"), "[".repeat(100_000));
        Files.writeString(deep.resolve("diagnosis.json"), "{\"a\":".repeat(100_000));
        put("unknown verb", "reprot", log);
        put("report of nothing", "report", "--rig", rig);
        put("report without rig", "report", log);
        for (String verb : List.of("inspect", "check", "season", "compare", "batch")) {
            put(verb + " of nothing", verb);
            put(verb + " of what is not there", verb, folder.resolve("nowhere"));
        }
        for (Path wrong : List.of(log, empty, half, old, deep)) {
            put("season of " + wrong.getFileName(), "season", wrong, "--out", folder.resolve("never"));
            put("compare with " + wrong.getFileName(), "compare", wrong, half, "--out", folder.resolve("never"));
        }
        put("compare three", "compare", empty, half, old);
        put("batch of a file", "batch", log, "--out", folder.resolve("never"));
        put("batch of an empty folder", "batch", empty, "--out", folder.resolve("never"));
        put("check of a folder", "check", empty);
        put("check of a rig file", "check", rig);
        put("inspect with a broken rig", "inspect", log, "--rig", file("inspect.yaml", "columns: 1\n"));
        put("record-fields in another format", "record-fields", "--format", "json");
        put("record-fields of a log", "record-fields", log);
        put("demo into a file", "demo", "--out", log);
        put("demo into no name", "demo", "--out", "");
        put("season into no name", "season", half, "--out", "");
    }

    /** One value of the rig file after another is replaced. */
    private void rigValues() throws IOException {
        Map<String, List<String>> values = new LinkedHashMap<>();
        List<String> lengths =
                List.of("", "5.9", "5.9 gal", "1e9 m", "NaN m", "[1, 2]", "{a: 1}", "Infinity m", "1,5,9 m");
        values.put("ahead_of_axle", lengths);
        values.put("axle_to_hitch", lengths);
        values.put("hitch_to_drop", lengths);
        values.put("bar_right_of_center", lengths);
        values.put("hitch", List.of("", "towed", "[mounted]"));
        values.put("count", List.of("0", "-6", "1.5", "201", "six", "1e99", ""));
        values.put("spacing", List.of("1 mm", "0 in", "-30 in", "30", "30 gal", "1 km", "NaN in", ""));
        values.put("outer_share", List.of("2", "-1", "half", ""));
        values.put("density", List.of("0 lb/gal", "-1 lb/gal", "11.06", "1000 lb/gal", "11.06 gal", ""));
        values.put("analysis", List.of("32", "132-0-0", "-1-0-0", "a-b-c", "60-60-0", ""));
        values.put("target", List.of("-1 gal/ac", "0 gal/ac", "42", "1e9 gal/ac", "42 in"));
        values.put("flow_lag", List.of("100 s", "5", "1 ft", "NaN s"));
        String text = Files.readString(rig);
        int n = 0;
        for (Map.Entry<String, List<String>> key : values.entrySet()) {
            if (!text.contains(key.getKey() + ":")) {
                continue;
            }
            for (String value : key.getValue()) {
                String changed = text.replaceFirst("(?m)(^\\s+" + key.getKey() + ":).*$", "$1 " + value);
                Path bad = file("rig-" + n++ + ".yaml", changed);
                put(
                        "rig " + key.getKey() + ": " + value,
                        "report",
                        log,
                        "--rig",
                        bad,
                        "--out",
                        folder.resolve("never"));
            }
        }
    }

    private void rigText() throws IOException {
        String text = Files.readString(rig);
        Map<String, String> rigs = new LinkedHashMap<>();
        rigs.put("empty", "");
        rigs.put("blank", "\n\n");
        rigs.put("binary", "\u0000\u0001\u0002");
        rigs.put("nested", "rig: " + "[".repeat(50_000));
        rigs.put("nested blocks", "{a: ".repeat(50_000));
        rigs.put("aliases", "a: &a [x, x]\nb: &b [*a, *a]\nc: [*b, *b]\n" + text);
        rigs.put("two documents", text + "\n---\n" + text);
        rigs.put("a tag", "!!javax.script.ScriptEngineManager [x]\n");
        rigs.put("a tab", text.replaceFirst("\n  ", "\n\t"));
        rigs.put("a key twice", text + "\nrows:\n  count: 6\n");
        rigs.put("an unknown key", text + "\ncolour: red\n");
        rigs.put("an unknown key in rows", text.replaceFirst("(?m)^  count:", "  colour: 1\n  count:"));
        rigs.put("a list", "- a\n- b\n");
        rigs.put("a word", "rig");
        rigs.put("XML", "<rig/>");
        rigs.put("JSON cut short", "{\"rig\": {");
        rigs.put("too large", "#".repeat((1 << 20) + 1));
        for (String day : List.of("2026-02-30", "2026-13-01", "0026-06-02", "2026-06-31", "2/30/2026")) {
            rigs.put("a day " + day, text.replaceFirst("(?m)^job:.*$", "job:\n  planting_date: \"" + day + "\""));
        }
        rigs.put("a zone", text.replaceFirst("(?m)^job:.*$", "job:\n  zone: Middle/Nowhere"));
        for (Map.Entry<String, String> one : rigs.entrySet()) {
            Path bad = file("rig-" + one.getKey().replaceAll("\\W", "_") + ".yaml", one.getValue());
            put("rig file: " + one.getKey(), "report", log, "--rig", bad, "--out", folder.resolve("never"));
        }
        put("rig is the log", "report", log, "--rig", log);
        put("rig is a folder", "report", log, "--rig", folder);
        put("rig is not there", "report", log, "--rig", folder.resolve("none.yaml"));
    }

    private void logs() throws IOException {
        String text = Files.readString(log);
        String header = text.substring(0, text.indexOf('\n') + 1);
        String records = text.substring(header.length());
        Map<String, String> logs = new LinkedHashMap<>();
        logs.put("empty", "");
        logs.put("blank", " \n \n");
        logs.put("binary", "PK\u0003\u0004" + "\u0000\u0001".repeat(500));
        logs.put("zeros", "\u0000".repeat(100_000));
        logs.put("one endless line", "a,".repeat(20_000_000));
        logs.put("a quote never closed", header + "\"" + "2026-06-04T13:40:00Z,41,-93\n".repeat(700_000));
        logs.put("header alone", header);
        logs.put("records alone", records);
        logs.put("no header names known", "a,b,c\n1,2,3\n");
        logs.put("letters", "rowledger ".repeat(1000));
        logs.put("HTML", "<!DOCTYPE html><html><body>" + "x".repeat(5000) + "</body></html>");
        logs.put("JSON", "{\"type\": \"FeatureCollection\", \"features\": []}");
        logs.put("nested GeoJSON", nested(100_000));
        logs.put("a log of 2099", text.replace("2026-", "2099-"));
        logs.put("a log of no day", text.replaceAll("2026-\\d\\d-\\d\\d", "2026-02-30"));
        logs.put("latitudes of 95", text.replaceAll("(?m)^([^,]*),4\\d\\.", "$1,95."));
        logs.put("positions all zero", text.replaceAll("(?m)^(\\d[^,]*),[^,]*,[^,]*,", "$1,0,0,"));
        logs.put("200,000 columns", "time,lat,lon" + ",x".repeat(200_000) + "\n1,2,3\n");
        logs.put("times of words", text.replaceAll("(?m)^\\d[^,]*,", "soon,"));
        logs.put("times all the same", text.replaceAll("(?m)^\\d[^,]*,", "2026-06-04T13:40:00Z,"));
        int n = 0;
        for (Map.Entry<String, String> one : logs.entrySet()) {
            Path bad = file("log-" + n++ + ".csv", one.getValue());
            put("log: " + one.getKey(), "report", bad, "--rig", rig, "--out", folder.resolve("never"));
            if (n % 2 == 0) {
                put("check of a log: " + one.getKey(), "check", bad);
            }
        }
        Path bomb = folder.resolve("bad/bomb.csv.gz");
        try (OutputStream out = new GZIPOutputStream(Files.newOutputStream(bomb))) {
            byte[] zeros = new byte[1 << 20];
            for (int i = 0; i < 300; i++) {
                out.write(zeros);
            }
        }
        put("a log that unpacks without end", "report", bomb, "--rig", rig);
        put("a log that is a folder", "report", folder, "--rig", rig);
        put("a log that is not there", "report", folder.resolve("none.csv"), "--rig", rig);
        put("a log that is the rig", "report", rig, "--rig", rig);
    }

    /** Geometry collections within one another. */
    static String nested(int depth) {
        return "{\"type\":\"GeometryCollection\",\"geometries\":[".repeat(depth) + "]}".repeat(depth);
    }

    private void maps() throws IOException {
        String good = Files.readString(boundary);
        Map<String, String> maps = new LinkedHashMap<>();
        maps.put("empty", "");
        maps.put("cut short", good.substring(0, good.length() / 2));
        maps.put("an array", "[]");
        maps.put("a point", "{\"type\":\"Point\",\"coordinates\":[-93.5,41.5]}");
        maps.put("no coordinates", "{\"type\":\"Polygon\"}");
        maps.put("words for coordinates", "{\"type\":\"Polygon\",\"coordinates\":[[[\"a\",\"b\"]]]}");
        maps.put("nested collections", nested(100_000));
        maps.put("nested coordinates", "{\"type\":\"Polygon\",\"coordinates\":" + "[".repeat(100_000));
        maps.put("nested properties", "{\"type\":\"Feature\",\"properties\":" + "{\"a\":".repeat(100_000));
        maps.put("beyond the poles", "{\"type\":\"Polygon\",\"coordinates\":[[[0,91],[1,91],[1,92],[0,91]]]}");
        maps.put("far away", "{\"type\":\"Polygon\",\"coordinates\":[[[10,50],[10.01,50],[10.01,50.01],[10,50]]]}");
        maps.put("open ring", "{\"type\":\"Polygon\",\"coordinates\":[[[10,50],[10.01,50],[10.01,50.01],[10,50.01]]]}");
        maps.put("KML of nothing", "<kml/>");
        maps.put("KML cut short", "<kml><Placemark>");
        maps.put("KML nested", "<kml>" + "<Folder>".repeat(100_000));
        maps.put("KML with entities", "<!DOCTYPE k [<!ENTITY a SYSTEM \"file:///etc/passwd\">]><kml>&a;</kml>");
        maps.put("HTML", "<html></html>");
        maps.put("a broken database", "SQLite format 3\u0000" + "x".repeat(2000));
        maps.put("a broken archive", "PK\u0003\u0004" + "x".repeat(2000));
        maps.put("numbers without end", "{\"type\":\"Polygon\",\"coordinates\":[[[" + "9".repeat(100_000) + ",1]]]}");
        int n = 0;
        for (Map.Entry<String, String> one : maps.entrySet()) {
            Path bad = file("map-" + n++ + ".geojson", one.getValue());
            for (String option : List.of("--boundary", "--prescription", "--keep-out")) {
                boolean fine = option.equals("--keep-out") && one.getKey().equals("far away");
                if (!fine) {
                    report(option + " " + one.getKey(), option, bad, "--out", folder.resolve("never"));
                }
            }
        }
        for (String option : List.of("--boundary", "--prescription", "--keep-out")) {
            report(option + " not there", option, folder.resolve("none.geojson"));
            report(option + " a folder", option, folder);
        }
        for (String end : List.of("shp", "dbf", "gpkg", "kmz", "zip")) {
            Path bad = file("bad." + end, "this is no " + end);
            report("boundary ." + end, "--boundary", bad, "--out", folder.resolve("never"));
        }
    }

    private void templates() throws IOException {
        Map<String, String> pages = new LinkedHashMap<>();
        pages.put("empty", "");
        pages.put("no page", "words");
        pages.put("cut short", "<html><body>");
        pages.put("an unknown tag", "<html><body>{{nothing}}</body></html>");
        pages.put("an open section", "<html><body>{{#review}}</body></html>");
        pages.put("a partial", "<html><body>{{> other}}</body></html>");
        pages.put(
                "an unknown sheet",
                "<html><head><link rel=\"stylesheet\" href=\"x.css\"/></head><body>x</body></html>");
        pages.put("an import", "<html><head><style>@import 'x.css';</style></head><body>x</body></html>");
        pages.put("nesting", "<html><body>" + "<b>".repeat(100_000));
        pages.put("an unknown chart", "<html><body><div data-chart=\"pie\"/></body></html>");
        int n = 0;
        for (Map.Entry<String, String> one : pages.entrySet()) {
            Path bad = file("templates-" + n++ + "/pass-review.xhtml", one.getValue());
            report("template: " + one.getKey(), "--templates", bad.getParent(), "--out", folder.resolve("never"));
        }
        Path sheet = file("templates-sheet/report.css", "@import url(http://localhost/x.css);");
        report("template: a sheet with an import", "--templates", sheet.getParent(), "--out", folder.resolve("never"));
        report("templates not there", "--templates", folder.resolve("none"));
        report("templates a file", "--templates", log);
    }

    private void keys() throws IOException {
        Path key = file("no.p12", "no key");
        Path password = file("password", "guess");
        Path bytes = Files.write(folder.resolve("bad/bytes"), new byte[] {(byte) 0xff, 1, 2});
        report("sign without password", "--sign", key);
        report("sign with no key", "--sign", key, "--sign-password-file", password);
        report("sign with a folder", "--sign", folder, "--sign-password-file", password);
        report("sign with nothing there", "--sign", folder.resolve("none"), "--sign-password-file", password);
        report("sign with no password file", "--sign", key, "--sign-password-file", folder.resolve("none"));
        report("sign with a password of bytes", "--sign", key, "--sign-password-file", bytes);
        report("sign with a password file that is a folder", "--sign", key, "--sign-password-file", folder);
        report("a password without a key", "--sign-password-file", password);
        for (String time : List.of(
                "now",
                "2026-13-01T00:00:00Z",
                "2026-06-01",
                "+999999999-12-31T23:59:59Z",
                "",
                "0001-01-01T00:00Z",
                "-999999999-01-01T00:00:00Z")) {
            report("sign at " + time, "--sign", key, "--sign-password-file", password, "--sign-time", time);
        }
    }

    /** Devices and pipes that never end or never begin, where the system has them. */
    private void devices() throws IOException {
        List<Path> devices = new ArrayList<>();
        for (String device : List.of("/dev/zero", "/dev/urandom", "/dev/null", "/dev/full")) {
            if (Files.exists(Path.of(device))) {
                devices.add(Path.of(device));
            }
        }
        Path pipe = folder.resolve("bad/pipe");
        if (Files.exists(pipe) || isMade(pipe)) {
            devices.add(pipe);
        }
        for (Path device : devices) {
            put("log " + device, "report", device, "--rig", rig);
            put("check " + device, "check", device);
            put("inspect " + device, "inspect", device);
            put("rig " + device, "report", log, "--rig", device);
            report("boundary " + device, "--boundary", device);
            report("prescription " + device, "--prescription", device);
            report("keep-out " + device, "--keep-out", device);
            report("key " + device, "--sign", device, "--sign-password-file", file("password", "guess"));
            report("password " + device, "--sign", file("no.p12", "no key"), "--sign-password-file", device);
            Path templates = Files.createDirectories(folder.resolve("bad/t" + device.getFileName()));
            Path page = templates.resolve("pass-review.xhtml");
            if (!Files.exists(page, java.nio.file.LinkOption.NOFOLLOW_LINKS)) {
                Files.createSymbolicLink(page, device);
            }
            report("template " + device, "--templates", templates, "--out", folder.resolve("never"));
            report("output " + device, "--out", device);
        }
    }

    private static boolean isMade(Path pipe) {
        try {
            return new ProcessBuilder("mkfifo", pipe.toString()).start().waitFor() == 0;
        } catch (IOException e) {
            return false;
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return false;
        }
    }

    /** The hand-made logs and rig files that can't be used. */
    private void cases() throws IOException {
        try (Stream<Path> list = Files.list(Path.of("src/test/resources/cases/bad-input"))) {
            for (Path one : list.filter(path -> Files.exists(path.resolve("rig.yaml")))
                    .sorted()
                    .toList()) {
                try (Stream<Path> files = Files.list(one)) {
                    Path bad = files.filter(
                                    path -> String.valueOf(path.getFileName()).startsWith("log."))
                            .findFirst()
                            .orElseThrow();
                    put(
                            "case " + one.getFileName(),
                            "report",
                            bad,
                            "--rig",
                            one.resolve("rig.yaml"),
                            "--out",
                            folder.resolve("never"));
                }
            }
        }
    }
}
