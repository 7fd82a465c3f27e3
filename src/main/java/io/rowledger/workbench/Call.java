package io.rowledger.workbench;

import com.sun.net.httpserver.HttpExchange;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.net.URLDecoder;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ScheduledExecutorService;

/**
 * One request.
 *
 * @param exchange of the JDK's server
 * @param parts parts of the path that stand for the braces of the route, decoded
 * @param timer ends a body that is too slow
 */
record Call(HttpExchange exchange, List<String> parts, ScheduledExecutorService timer) {
    /** Largest JSON body, bytes: a drawn boundary of 20,000 corners. */
    private static final int MAX_JSON_BYTES = 1 << 20;

    /** Copies the list. */
    Call {
        parts = List.copyOf(parts);
    }

    /** The parts of the path, decoded. */
    static List<String> path(HttpExchange exchange) {
        List<String> parts = new ArrayList<>();
        for (String part : exchange.getRequestURI().getRawPath().split("/", -1)) {
            parts.add(decoded(part.replace("+", "%2B")));
        }
        return parts.subList(1, parts.size());
    }

    /** Who reads the page, and how. */
    Reader reader() {
        return Reader.of(exchange);
    }

    /** The parameters after the question mark; the last of several with one name. */
    Map<String, String> query() {
        return query(exchange);
    }

    static Map<String, String> query(HttpExchange exchange) {
        Map<String, String> query = new LinkedHashMap<>();
        String raw = exchange.getRequestURI().getRawQuery();
        if (raw != null) {
            for (String pair : raw.split("&", -1)) {
                int equals = pair.indexOf('=');
                query.put(
                        decoded(equals < 0 ? pair : pair.substring(0, equals)),
                        equals < 0 ? "" : decoded(pair.substring(equals + 1)));
            }
        }
        return query;
    }

    /** Returns the body read as JSON. */
    <T> T json(Class<T> type) throws IOException {
        String kind = exchange.getRequestHeaders().getFirst("Content-Type");
        if (kind == null || !kind.startsWith("application/json")) {
            throw new HttpRefusal(HttpRefusal.BAD_REQUEST, "refusals.noJson");
        }
        ByteArrayOutputStream body = new ByteArrayOutputStream();
        byte[] part = new byte[8192];
        TimeGuard guard = TimeGuard.of(timer, Router.MAX_BODY_MS);
        try {
            InputStream in = exchange.getRequestBody();
            for (int n = in.read(part); n >= 0; n = in.read(part)) {
                if (body.size() + n > MAX_JSON_BYTES) {
                    throw new HttpRefusal(HttpRefusal.TOO_LARGE, "refusals.tooMuch");
                }
                body.write(part, 0, n);
            }
        } finally {
            guard.end();
        }
        return Json.read(body.toByteArray(), type);
    }

    private static String decoded(String text) {
        try {
            String plain = URLDecoder.decode(text, StandardCharsets.UTF_8);
            StandardCharsets.UTF_8.newEncoder().encode(java.nio.CharBuffer.wrap(plain));
            if (plain.indexOf('\ufffd') < 0) {
                return plain;
            }
        } catch (IllegalArgumentException | CharacterCodingException e) {
            throw new HttpRefusal(HttpRefusal.BAD_REQUEST, "refusals.address");
        }
        throw new HttpRefusal(HttpRefusal.BAD_REQUEST, "refusals.address");
    }
}
