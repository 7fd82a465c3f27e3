package io.rowledger.workbench;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** The page: one document, its style and scripts. */
final class WorkbenchPage {
    private static final String DOCUMENT = "/io/rowledger/web/workbench/workbench.html";

    /** Style and scripts, each script after those it uses. */
    static final List<String> FILES = List.of(
            "workbench.css",
            "core.js",
            "units.js",
            "drawing.js",
            "drag.js",
            "corners.js",
            "rig.js",
            "topview.js",
            "season.js",
            "logs.js",
            "columns.js",
            "time.js",
            "bar.js",
            "tape.js",
            "product.js",
            "maps.js",
            "amounts.js",
            "facts.js",
            "first.js",
            "run.js",
            "app.js");

    private WorkbenchPage() {}

    /** Sends the document. */
    static @Nullable Object send(Call call) throws IOException {
        StringBuilder tags = new StringBuilder();
        for (String file : FILES) {
            if (file.endsWith(".js")) {
                tags.append("<script src=\"/web/").append(file).append("\"></script>\n");
            }
        }
        String page = new String(Assets.read(DOCUMENT), StandardCharsets.UTF_8).replace("<!--scripts-->", tags);
        Answers.send(call.exchange(), 200, "text/html; charset=utf-8", page.getBytes(StandardCharsets.UTF_8));
        return null;
    }
}
