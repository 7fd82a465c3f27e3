package io.rowledger.workbench;

import com.sun.net.httpserver.Headers;
import com.sun.net.httpserver.HttpExchange;
import java.io.IOException;
import java.io.OutputStream;

/** Sends answers with the headers that every answer carries. */
final class Answers {
    /** The page runs only scripts and styles of this server, and asks nobody else for anything (W3C CSP level 3). */
    static final String PAGE_POLICY =
            "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data: blob:; "
                    + "connect-src 'self'; frame-src 'self'; form-action 'none'; base-uri 'none'; frame-ancestors 'none'";

    /**
     * The review page brings its scripts in itself. It runs without an origin, so that nothing in it reaches this server,
     * whatever a log or a rig file put into it.
     */
    static final String REVIEW_POLICY = "sandbox allow-scripts allow-downloads; default-src 'none'; "
            + "script-src 'unsafe-inline'; style-src 'unsafe-inline'; img-src data: blob:; base-uri 'none'; "
            + "form-action 'none'; frame-ancestors 'self'";

    /** A PDF is drawn by the browser's own viewer, which some browsers load as a plug-in of the response. */
    static final String PDF_POLICY = "frame-ancestors 'none'";

    private Answers() {}

    static void send(HttpExchange exchange, int status, String type, byte[] body) throws IOException {
        send(exchange, status, type, PAGE_POLICY, body);
    }

    static void send(HttpExchange exchange, int status, String type, String policy, byte[] body) throws IOException {
        headers(exchange, type, policy);
        boolean head = exchange.getRequestMethod().equals("HEAD");
        exchange.sendResponseHeaders(status, head || body.length == 0 ? -1 : body.length);
        if (!head && body.length > 0) {
            try (OutputStream out = exchange.getResponseBody()) {
                out.write(body);
            }
        }
        exchange.close();
    }

    static void headers(HttpExchange exchange, String type, String policy) {
        Headers headers = exchange.getResponseHeaders();
        headers.set("Content-Type", type);
        headers.set("Content-Security-Policy", policy);
        headers.set("X-Content-Type-Options", "nosniff");
        headers.set("Referrer-Policy", "no-referrer");
        headers.set("Cross-Origin-Opener-Policy", "same-origin");
        headers.set("Cross-Origin-Resource-Policy", "same-origin");
        headers.set("Cache-Control", "no-store");
    }
}
