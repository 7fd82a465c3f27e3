package io.rowledger.page;

import io.rowledger.digest.Sha256;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Base64;
import java.util.List;

/** Scripts and style sheets from the jar, to stand inside the page. */
final class WebAssets {
    private static final String LIBRARIES = "/META-INF/resources/webjars/";
    private static final String OWN = "/io/rowledger/web/";

    /** Libraries in the order in which they are needed. */
    private static final List<String> LIBRARY_SCRIPTS =
            List.of("leaflet/1.9.4/dist/leaflet.js", "uplot/1.6.30/dist/uPlot.iife.min.js");

    private static final List<String> LIBRARY_STYLES =
            List.of("leaflet/1.9.4/dist/leaflet.css", "uplot/1.6.30/dist/uPlot.min.css");

    private static final List<String> LICENSES = List.of("leaflet/1.9.4/LICENSE", "uplot/1.6.30/LICENSE");

    /** Our own scripts, each after those it uses. */
    private static final List<String> SCRIPTS = List.of(
            "data.js",
            "inflate.js",
            "units.js",
            "job.js",
            "colors.js",
            "field.js",
            "map.js",
            "time.js",
            "traces.js",
            "lists.js",
            "controls.js",
            "review.js");

    private WebAssets() {}

    /** All scripts, libraries first. */
    static String scripts() {
        StringBuilder text = new StringBuilder(1 << 18);
        LIBRARY_SCRIPTS.forEach(name -> text.append(library(name)).append("\n;\n"));
        SCRIPTS.forEach(name -> text.append(withoutComments(own(name))).append('\n'));
        return inScript(text.toString());
    }

    /** A script of ours without its documentation and indentation: a reader of the file finds both in the repository. */
    private static String withoutComments(String script) {
        return script.replaceAll("(?s)/\\*\\*.*?\\*/\\s*", "").replaceAll("(?m)^\\s+", "");
    }

    /** All style sheets without comments and layout, libraries first; pictures that a library's sheet would load from elsewhere are left out. */
    static String styles() {
        StringBuilder text = new StringBuilder(1 << 15);
        LIBRARY_STYLES.forEach(name -> text.append(library(name)).append('\n'));
        text.append(own("review.css"));
        return text.toString()
                .replaceAll("url\\((?!#|data:|\"?data:)[^)]*\\)", "none")
                .replaceAll("(?s)/\\*.*?\\*/", "")
                .replaceAll("\\s+", " ");
    }

    /** The licenses of the libraries inside the page. */
    static String licenses() {
        StringBuilder text = new StringBuilder();
        LICENSES.forEach(name -> text.append(name, 0, name.indexOf('/'))
                .append("\n\n")
                .append(library(name))
                .append("\n\n"));
        return text.toString();
    }

    /** The page's template. */
    static String template() {
        return own("review.html");
    }

    /** The template of what the page shows, in one language and unit system. */
    static String body() {
        return own("body.html");
    }

    /** The source expression of a script for the page's content security policy. */
    static String sha256(String script) {
        byte[] digest = Sha256.digest().digest(script.getBytes(StandardCharsets.UTF_8));
        return "sha256-" + Base64.getEncoder().encodeToString(digest);
    }

    /** Text that may stand in a script element: nothing in it ends the element or opens a comment. */
    static String inScript(String text) {
        return text.replaceAll("(?i)</(script)", "<\\\\/$1").replace("<!--", "<\\!--");
    }

    private static String library(String name) {
        return read(LIBRARIES + name).replaceAll("(?m)^//# sourceMappingURL=.*$", "");
    }

    private static String own(String name) {
        return read(OWN + name);
    }

    private static String read(String name) {
        try (InputStream in = WebAssets.class.getResourceAsStream(name)) {
            if (in == null) {
                throw new IllegalStateException("not in the jar: " + name);
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
