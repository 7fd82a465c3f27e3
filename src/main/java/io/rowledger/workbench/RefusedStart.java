package io.rowledger.workbench;

import com.sun.net.httpserver.HttpServer;
import io.rowledger.document.text.Messages;
import io.rowledger.finding.UnusableInputException;
import io.rowledger.units.UnitFormat;
import io.rowledger.units.UnitSystem;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.nio.charset.StandardCharsets;
import java.security.SecureRandom;
import java.time.Duration;
import java.time.ZoneOffset;
import java.util.HexFormat;
import java.util.Locale;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.function.Predicate;

/**
 * Tells somebody who sees no terminal, such as after a double click, why the workbench can't start: a page in both languages that
 * is served once, on this computer alone, since the language of the person is not known before a page is open.
 */
final class RefusedStart {
    /** Time that a browser has to start and ask for the page. */
    private static final Duration MAX_WAIT = Duration.ofSeconds(20);

    private static final int KEY_BYTES = 16;

    private RefusedStart() {}

    /**
     * Shows the page; returns when it was sent, or after a while.
     *
     * @param browser shows a link; false if it can't
     */
    static void show(UnusableInputException refusal, Predicate<String> browser) {
        byte[] page = page(refusal).getBytes(StandardCharsets.UTF_8);
        byte[] key = new byte[KEY_BYTES];
        new SecureRandom().nextBytes(key);
        String path = "/" + HexFormat.of().formatHex(key);
        CountDownLatch sent = new CountDownLatch(1);
        try {
            InetAddress loopback = InetAddress.getByAddress("127.0.0.1", new byte[] {127, 0, 0, 1});
            HttpServer server = HttpServer.create(new InetSocketAddress(loopback, 0), 1);
            server.createContext(path, exchange -> {
                Answers.send(exchange, 200, "text/html; charset=utf-8", page);
                sent.countDown();
            });
            server.start();
            if (browser.test("http://127.0.0.1:" + server.getAddress().getPort() + path)) {
                sent.await(MAX_WAIT.toMillis(), TimeUnit.MILLISECONDS);
            }
            server.stop(0);
        } catch (IOException e) {
            // Nothing can be shown; what is printed is all that there is.
            return;
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    private static String page(UnusableInputException refusal) {
        return "<!DOCTYPE html>\n<html lang=\"en\"><head><meta charset=\"utf-8\"><title>Rowledger</title></head><body>\n"
                + told(refusal, Locale.ENGLISH) + told(refusal, Locale.forLanguageTag("es")) + "</body></html>\n";
    }

    private static String told(UnusableInputException refusal, Locale language) {
        Messages words = new Messages(new UnitFormat(UnitSystem.US, ZoneOffset.UTC).in(language));
        StringBuilder told = new StringBuilder("<div lang=\"" + language.getLanguage() + "\">\n<h1>"
                + escaped(words.text("refusals.start")) + "</h1>\n");
        ProblemText.of(refusal)
                .in(words)
                .lines()
                .forEach(line -> told.append("<p>").append(escaped(line)).append("</p>\n"));
        return told.append("</div>\n").toString();
    }

    private static String escaped(String text) {
        return text.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;");
    }
}
