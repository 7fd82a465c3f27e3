package io.rowledger.workbench;

import com.sun.net.httpserver.Headers;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.SecureRandom;
import java.util.HashSet;
import java.util.HexFormat;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * Decides which requests are the person's own. Every request must name this exact address in its Host header, so that a
 * name that was rebound to this machine is refused; requests that other pages send are told by Origin and
 * Sec-Fetch-Site (W3C Fetch Metadata); and a cookie must prove that the page was opened from a link of this program.
 */
final class Gate {
    private static final int KEY_BYTES = 32;

    private final SecureRandom random = new SecureRandom();
    private final Set<String> openLinks = new HashSet<>();
    private final String session = key();
    private final String host;
    private final String cookie;

    /** A gate for the server on this port of 127.0.0.1. */
    Gate(int port) {
        this.host = "127.0.0.1:" + port;
        this.cookie = "rowledger-" + port;
    }

    /** Returns a link that opens the page once. */
    synchronized String link() {
        String token = key();
        openLinks.add(token);
        return "http://" + host + "/?token=" + token;
    }

    /**
     * Takes a link's token in exchange for the cookie.
     *
     * @return the Set-Cookie header
     * @throws HttpRefusal if the token is unknown or was used before
     */
    synchronized String enter(String token) {
        if (!openLinks.remove(token)) {
            throw new HttpRefusal(HttpRefusal.FORBIDDEN, "refusals.usedLink");
        }
        return cookie + "=" + session + "; Path=/; HttpOnly; SameSite=Strict";
    }

    /**
     * Refuses a request that is not addressed to this server or that another site sent.
     *
     * @param changes true if the request may change something
     */
    void requireOwn(Headers headers, boolean changes) {
        if (!List.of(host).equals(headers.get("Host"))) {
            throw new HttpRefusal(HttpRefusal.FORBIDDEN, "refusals.host", "http://" + host);
        }
        String origin = only(headers, "Origin");
        if (origin == null ? changes : !origin.equals("http://" + host)) {
            throw new HttpRefusal(HttpRefusal.FORBIDDEN, "refusals.foreign");
        }
        String site = only(headers, "Sec-Fetch-Site");
        boolean navigation = "navigate".equals(only(headers, "Sec-Fetch-Mode"));
        if (site != null && !site.equals("same-origin") && !(site.equals("none") && navigation && !changes)) {
            throw new HttpRefusal(HttpRefusal.FORBIDDEN, "refusals.foreign");
        }
    }

    /** Refuses a request without the cookie. */
    void requireSession(Headers headers) {
        List<String> lines = headers.getOrDefault("Cookie", List.of());
        for (String line : lines) {
            for (String part : line.split(";", -1)) {
                String[] pair = part.strip().split("=", 2);
                if (pair.length == 2 && pair[0].equals(cookie) && same(pair[1], session)) {
                    return;
                }
            }
        }
        throw new HttpRefusal(HttpRefusal.FORBIDDEN, "refusals.session");
    }

    /** Compares in a time that doesn't depend on where the two differ. */
    private static boolean same(String a, String b) {
        return MessageDigest.isEqual(a.getBytes(StandardCharsets.UTF_8), b.getBytes(StandardCharsets.UTF_8));
    }

    private static @Nullable String only(Headers headers, String name) {
        List<String> values = headers.get(name);
        if (values == null) {
            return null;
        }
        return values.size() == 1 ? values.get(0) : "several";
    }

    private String key() {
        byte[] bytes = new byte[KEY_BYTES];
        random.nextBytes(bytes);
        return HexFormat.of().formatHex(bytes);
    }
}
