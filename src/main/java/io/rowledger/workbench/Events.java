package io.rowledger.workbench;

import com.sun.net.httpserver.HttpExchange;
import io.rowledger.document.text.Messages;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.ScheduledFuture;
import java.util.concurrent.TimeUnit;
import java.util.function.Function;
import java.util.function.LongSupplier;
import org.jspecify.annotations.Nullable;

/**
 * Server-sent events (WHATWG HTML, section 9.2) to every open page. A page keeps its stream open as long as it is shown,
 * so the streams also tell whether anybody is there.
 */
final class Events implements AutoCloseable {
    private static final int BEAT_S = 10;
    /** Pages at once: a person has a few, and each holds a connection. */
    private static final int MAX_PAGES = 16;

    private final List<Page> pages = new ArrayList<>();
    private final ScheduledExecutorService timer;
    private final LongSupplier nanos;
    private long lastSeenNanos;
    private @Nullable ScheduledFuture<?> beats;

    /** One open page. */
    private record Page(HttpExchange exchange, OutputStream out, Messages language) {}

    /** Sends beats with this timer. */
    Events(ScheduledExecutorService timer, LongSupplier nanos) {
        this.timer = timer;
        this.nanos = nanos;
        this.lastSeenNanos = nanos.getAsLong();
    }

    synchronized void start() {
        beats = timer.scheduleWithFixedDelay(() -> write(language -> ": here\n\n"), BEAT_S, BEAT_S, TimeUnit.SECONDS);
    }

    /** Opens the stream of a page; it stays open after the call. */
    void open(Call call) throws IOException {
        HttpExchange exchange = call.exchange();
        synchronized (this) {
            if (pages.size() >= MAX_PAGES) {
                throw new HttpRefusal(HttpRefusal.BUSY, "refusals.pages");
            }
        }
        Answers.headers(exchange, "text/event-stream; charset=utf-8", Answers.PAGE_POLICY);
        exchange.sendResponseHeaders(200, 0);
        OutputStream out = exchange.getResponseBody();
        out.write("retry: 1000\n\n".getBytes(StandardCharsets.UTF_8));
        out.flush();
        synchronized (this) {
            pages.add(new Page(exchange, out, call.reader().messages()));
        }
    }

    /** Sends an event to every page, in its language. */
    void send(String name, Object value) {
        write(language -> "event: " + name + "\ndata: "
                + new String(Json.bytes(value, language), StandardCharsets.UTF_8) + "\n\n");
    }

    private synchronized void write(Function<Messages, String> text) {
        if (!pages.isEmpty()) {
            lastSeenNanos = nanos.getAsLong();
        }
        pages.removeIf(page -> {
            try {
                page.out.write(text.apply(page.language).getBytes(StandardCharsets.UTF_8));
                page.out.flush();
                return false;
            } catch (IOException e) {
                page.exchange.close();
                return true;
            }
        });
    }

    /** Time since a page was last known to be open; 0 while one is. */
    synchronized Duration quiet() {
        return pages.isEmpty() ? Duration.ofNanos(nanos.getAsLong() - lastSeenNanos) : Duration.ZERO;
    }

    @Override
    public synchronized void close() {
        if (beats != null) {
            beats.cancel(false);
        }
        pages.forEach(page -> page.exchange.close());
        pages.clear();
    }
}
