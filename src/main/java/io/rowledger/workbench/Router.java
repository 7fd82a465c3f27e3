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
            refuse(exchange, e.status(), e.problem());
        } catch (UnusableInputException e) {
            refuse(exchange, HttpRefusal.UNUSABLE, ProblemText.of(e));
        } catch (FileSystemException e) {
            boolean full = FullDisk.isToldBy(e.getMessage());
            refuse(exchange, HttpRefusal.NO_ROOM, full ? FullDisk.text() : readOnly(e));
        } catch (IOException e) {
            if (FullDisk.isToldBy(e.getMessage())) {
                refuse(exchange, HttpRefusal.NO_ROOM, FullDisk.text());
                return;
            }
            exchange.close();
            throw e;
        } catch (RuntimeException | Error e) {
            failures.accept(e);
            refuse(exchange, HttpRefusal.FAILED, ProblemText.of("refusals.failed"));
        }
    }

    private static ProblemText readOnly(FileSystemException e) {
        return ProblemText.of("refusals.readOnly", String.valueOf(e.getMessage()));
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
                Call call = new Call(exchange, parts, timer);
                Object value = route.endpoint().answer(call);
                if (value != null) {
                    Answers.send(
                            exchange,
                            200,
                            "application/json; charset=utf-8",
                            Json.bytes(value, call.reader().messages()));
                }
                return;
            }
        }
        throw known
                ? new HttpRefusal(HttpRefusal.METHOD, "refusals.method")
                : new HttpRefusal(HttpRefusal.NOT_FOUND, "refusals.nothing");
    }

    private void refuse(HttpExchange exchange, int status, ProblemText problem) throws IOException {
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
            send(exchange, status, problem.in(Reader.of(exchange).messages()), isPage(accept));
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
