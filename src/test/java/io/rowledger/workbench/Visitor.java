package io.rowledger.workbench;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.net.InetAddress;
import java.net.Socket;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;

/** Sends requests byte by byte, so that a test can send what no browser would. */
final class Visitor {
    final int port;
    private final Map<String, String> headers = new LinkedHashMap<>();

    private Visitor(int port) {
        this.port = port;
        headers.put("Host", "127.0.0.1:" + port);
        headers.put("Accept", "application/json");
        headers.put("Connection", "close");
    }

    /** A page's answer. */
    record Answer(int status, Map<String, String> headers, byte[] bytes) {
        String text() {
            return new String(bytes, StandardCharsets.UTF_8);
        }
    }

    static Visitor stranger(String link) {
        return new Visitor(URI.create(link).getPort());
    }

    /** Somebody who opened the link. */
    static Visitor at(String link) throws IOException {
        Visitor visitor = stranger(link);
        Answer answer = visitor.send("GET", "/?" + URI.create(link).getQuery(), new byte[0]);
        String cookie = answer.headers().get("set-cookie");
        if (answer.status() != 303 || cookie == null) {
            throw new IllegalStateException("not let in: " + answer.status() + " " + answer.text());
        }
        visitor.headers.put("Cookie", cookie.split(";", -1)[0]);
        visitor.headers.put("Origin", "http://127.0.0.1:" + visitor.port);
        visitor.headers.put("Sec-Fetch-Site", "same-origin");
        return visitor;
    }

    /** The same person with one header changed, or without it where the value is null. */
    Visitor with(String name, String value) {
        Visitor other = new Visitor(port);
        other.headers.clear();
        other.headers.putAll(headers);
        if (value == null) {
            other.headers.remove(name);
        } else {
            other.headers.put(name, value);
        }
        return other;
    }

    Answer get(String path) throws IOException {
        return send("GET", path, new byte[0]);
    }

    Answer json(String method, String path, String body) throws IOException {
        return with("Content-Type", "application/json").send(method, path, body.getBytes(StandardCharsets.UTF_8));
    }

    Answer put(String path, byte[] body) throws IOException {
        return send("PUT", path, body);
    }

    Answer send(String method, String path, byte[] body) throws IOException {
        // In one piece: the server ends the connection of a malformed request without reading on, and a body that came
        // after the
        // head would then reset the connection before its answer was read.
        byte[] head = head(method, path, body.length).getBytes(StandardCharsets.UTF_8);
        byte[] all = Arrays.copyOf(head, head.length + body.length);
        System.arraycopy(body, 0, all, head.length, body.length);
        try (Socket socket = open()) {
            socket.getOutputStream().write(all);
            socket.getOutputStream().flush();
            return read(socket);
        }
    }

    Socket open() throws IOException {
        Socket socket = new Socket(InetAddress.getByAddress(new byte[] {127, 0, 0, 1}), port);
        socket.setSoTimeout(20_000);
        return socket;
    }

    String head(String method, String path, long length) {
        StringBuilder head = new StringBuilder(method + " " + path + " HTTP/1.1\r\n");
        headers.forEach(
                (name, value) -> head.append(name).append(": ").append(value).append("\r\n"));
        if (length > 0) {
            head.append("Content-Length: ").append(length).append("\r\n");
        }
        return head.append("\r\n").toString();
    }

    static void write(Socket socket, String text) throws IOException {
        socket.getOutputStream().write(text.getBytes(StandardCharsets.UTF_8));
        socket.getOutputStream().flush();
    }

    static Answer read(Socket socket) throws IOException {
        byte[] all;
        try {
            all = socket.getInputStream().readAllBytes();
        } catch (IOException e) {
            return new Answer(0, Map.of(), new byte[0]);
        }
        String text = new String(all, StandardCharsets.ISO_8859_1);
        int end = text.indexOf("\r\n\r\n");
        if (end < 0) {
            return new Answer(0, Map.of(), all);
        }
        String[] lines = text.substring(0, end).split("\r\n", -1);
        Map<String, String> headers = new LinkedHashMap<>();
        for (int i = 1; i < lines.length; i++) {
            int colon = lines[i].indexOf(':');
            headers.put(
                    lines[i].substring(0, colon).toLowerCase(Locale.ROOT),
                    lines[i].substring(colon + 1).strip());
        }
        byte[] body = new byte[all.length - end - 4];
        System.arraycopy(all, end + 4, body, 0, body.length);
        if ("chunked".equals(headers.get("transfer-encoding"))) {
            body = joined(body);
        }
        return new Answer(Integer.parseInt(lines[0].split(" ", -1)[1]), headers, body);
    }

    private static byte[] joined(byte[] chunks) {
        ByteArrayOutputStream all = new ByteArrayOutputStream();
        String text = new String(chunks, StandardCharsets.ISO_8859_1);
        int at = 0;
        while (at < text.length()) {
            int line = text.indexOf("\r\n", at);
            int length = line < 0 ? 0 : Integer.parseInt(text.substring(at, line), 16);
            if (length == 0) {
                break;
            }
            all.write(chunks, line + 2, length);
            at = line + 2 + length + 2;
        }
        return all.toByteArray();
    }

    /** The first bytes that come, for streams that don't end. */
    static String firstBytes(InputStream in) throws IOException {
        byte[] part = new byte[4096];
        int n = in.read(part);
        return n < 0 ? "" : new String(part, 0, n, StandardCharsets.UTF_8);
    }
}
