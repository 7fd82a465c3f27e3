package io.rowledger.workbench;

import com.sun.net.httpserver.HttpExchange;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Hands out result files. */
final class ResultFiles {
    private static final Map<String, String> TYPES = Map.of(
            "html", "text/html; charset=utf-8",
            "pdf", "application/pdf",
            "gpx", "application/gpx+xml",
            "csv", "text/csv; charset=utf-8",
            "json", "application/json; charset=utf-8",
            "geojson", "application/geo+json; charset=utf-8",
            "gpkg", "application/geopackage+sqlite3",
            "tif", "image/tiff");

    private final SeasonFolder folder;

    ResultFiles(SeasonFolder folder) {
        this.folder = folder;
    }

    private static String policy(String type) {
        if (type.equals("application/pdf")) {
            return Answers.PDF_POLICY;
        }
        return type.startsWith("text/html") ? Answers.REVIEW_POLICY : Answers.PAGE_POLICY;
    }

    /** Sends a file below the folder of the results. */
    @Nullable
    Object send(Call call) throws IOException {
        List<String> parts = new ArrayList<>(List.of(SeasonFolder.RESULTS));
        for (String part : call.parts()) {
            parts.addAll(List.of(part.split("/", -1)));
        }
        Path file = folder.inside(parts);
        String name = String.valueOf(file.getFileName());
        String type = TYPES.get(name.substring(name.lastIndexOf('.') + 1).toLowerCase(Locale.ROOT));
        if (type == null || !Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS)) {
            throw new HttpRefusal(HttpRefusal.NOT_FOUND, "refusals.nothing");
        }
        HttpExchange exchange = call.exchange();
        Answers.headers(exchange, type, policy(type));
        if (!type.startsWith("text/html") && !type.equals("application/pdf")) {
            exchange.getResponseHeaders().set("Content-Disposition", "attachment");
        }
        if (exchange.getRequestMethod().equals("HEAD")) {
            exchange.sendResponseHeaders(200, -1);
            exchange.close();
            return null;
        }
        long size = Files.size(file);
        exchange.sendResponseHeaders(200, size == 0 ? -1 : size);
        if (size > 0) {
            try (OutputStream out = exchange.getResponseBody()) {
                Files.copy(file, out);
            }
        }
        exchange.close();
        return null;
    }
}
