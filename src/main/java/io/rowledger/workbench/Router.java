package io.rowledger.workbench;

import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpHandler;
import io.rowledger.finding.UnusableInputException;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileSystemException;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ScheduledExecutorService;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;

/** Lets requests through the gate and hands them to their routes. */
final class Router implements HttpHandler {
    private static final int UNUSABLE = 422;
    private static final int FAILED = 500;
    private static final int NO_ROOM = 507;

    /** Time to answer a refused request and to read what is left of its body, ms: on a busy machine the answer alone takes some. */
    private static final int MAX_DRAIN_MS = 2000;

    /** Time for the body of a request that is no upload, ms. */
    static final int MAX_BODY_MS = 10_000;

    private final Gate gate;
    private final List<Route> routes;
    private final Consumer<Throwable> failures;
    private final ScheduledExecutorService timer;

    /**
     * Routes requests.
     *
     * @param timer ends requests that hold a thread for too long
     * @param failures hears failures of the program itself
     */
    Router(Gate gate, List<Route> routes, ScheduledExecutorService timer, Consumer<Throwable> failures) {
        this.gate = gate;
        this.routes = List.copyOf(routes);
        this.timer = timer;
        this.failures = failures;
    }

    /** An answer that is a problem. */
    record Problem(int status, String problem) {}

    @Override
    public void handle(HttpExchange exchange) throws IOException {
        try {
            answer(exchange);
        } catch (HttpRefusal e) {
            refuse(exchange, e.status(), String.valueOf(e.getMessage()));
        } catch (UnusableInputException e) {
            refuse(exchange, UNUSABLE, String.valueOf(e.getMessage()));
        } catch (FileSystemException e) {
            refuse(
                    exchange,
                    NO_ROOM,
                    "The folder can't be written to (" + e.getMessage()
                            + "). Nothing was lost. Hint: make room on the disk, or"
                            + " copy the folder to your own disk and open the copy.");
        } catch (IOException e) {
            if (FullDisk.isToldBy(e.getMessage())) {
                refuse(exchange, NO_ROOM, FullDisk.text());
                return;
            }
            exchange.close();
            throw e;
        } catch (RuntimeException | Error e) {
            failures.accept(e);
            refuse(exchange, FAILED, "The program failed. Your files are as they were.");
        }
    }

    private void answer(HttpExchange exchange) throws IOException {
        String method = exchange.getRequestMethod();
        boolean changes = !method.equals("GET") && !method.equals("HEAD");
        gate.requireOwn(exchange.getRequestHeaders(), changes);
        List<String> path = Call.path(exchange);
        String token = Call.query(exchange).get("token");
        if (!changes && path.equals(List.of("")) && token != null) {
            exchange.getResponseHeaders().set("Set-Cookie", gate.enter(token));
            exchange.getResponseHeaders().set("Location", "/");
            Answers.send(exchange, 303, "text/plain; charset=utf-8", new byte[0]);
            return;
        }
        gate.requireSession(exchange.getRequestHeaders());
        boolean known = false;
        for (Route route : routes) {
            List<String> parts = route.match(path);
            known |= parts != null;
            if (parts != null
                    && (route.method().equals(method) || (route.method().equals("GET") && method.equals("HEAD")))) {
                Object value = route.endpoint().answer(new Call(exchange, parts, timer));
                if (value != null) {
                    Answers.send(exchange, 200, "application/json; charset=utf-8", Json.bytes(value));
                }
                return;
            }
        }
        throw known
                ? new HttpRefusal(HttpRefusal.METHOD, "This can't be done here.")
                : new HttpRefusal(HttpRefusal.NOT_FOUND, "Nothing is here.");
    }

    private void refuse(HttpExchange exchange, int status, String text) throws IOException {
        if (exchange.getResponseCode() >= 0) {
            // The answer has begun; all that is left is to end it.
            exchange.close();
            return;
        }
        exchange.getResponseHeaders().set("Connection", "close");
        String accept = exchange.getRequestHeaders().getFirst("Accept");
        // The server reads on to the end of a body, which may never come.
        TimeGuard guard = TimeGuard.of(timer, MAX_DRAIN_MS);
        try {
            send(exchange, status, text, isPage(accept));
        } finally {
            guard.end();
        }
    }

    private static void send(HttpExchange exchange, int status, String text, boolean page) throws IOException {
        if (page) {
            Answers.send(exchange, status, "text/plain; charset=utf-8", text.getBytes(StandardCharsets.UTF_8));
        } else {
            Answers.send(exchange, status, "application/json; charset=utf-8", Json.bytes(new Problem(status, text)));
        }
    }

    private static boolean isPage(@Nullable String accept) {
        return accept != null && accept.contains("text/html");
    }

    /** For answers without a value of their own. */
    static Map<String, Object> done() {
        return Map.of("done", true);
    }
}
