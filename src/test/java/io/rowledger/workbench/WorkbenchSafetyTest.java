package io.rowledger.workbench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.finding.UnusableInputException;
import io.rowledger.workbench.Visitor.Answer;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.net.NetworkInterface;
import java.net.Socket;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CopyOnWriteArrayList;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Every attack is sent over a socket, and the folder is looked at afterwards. */
class WorkbenchSafetyTest {
    private static final Duration MAX_STALL = Duration.ofMillis(400);
    private static final Duration LONG = Duration.ofMinutes(10);
    private static final int MAX_BYTES = 200_000;

    @TempDir
    private Path around;

    private Path season;
    private Workbench workbench;
    private final List<Throwable> failures = new CopyOnWriteArrayList<>();

    @BeforeEach
    void open() throws IOException {
        season = Files.createDirectory(around.resolve("season"));
        Files.writeString(around.resolve("secret.txt"), "not for the page");
        workbench = start(LONG);
    }

    private Workbench start(Duration idle) {
        return Workbench.start(new Workbench.Settings(
                season,
                0,
                "test",
                idle,
                new Workbench.UploadLimits(MAX_BYTES, Duration.ofSeconds(30), MAX_STALL),
                null,
                failures::add));
    }

    @AfterEach
    void close() {
        workbench.close();
        assertEquals(List.of(), failures);
    }

    /** All files but locks; one that goes while they are looked through is not there. */
    private List<String> files() throws IOException {
        List<String> names = new ArrayList<>();
        Files.walkFileTree(around, new SimpleFileVisitor<>() {
            @Override
            public FileVisitResult visitFile(Path file, BasicFileAttributes attributes) {
                String name = around.relativize(file).toString();
                if (attributes.isRegularFile() && !name.endsWith("lock")) {
                    names.add(name);
                }
                return FileVisitResult.CONTINUE;
            }

            @Override
            public FileVisitResult visitFileFailed(Path file, IOException e) throws IOException {
                if (e instanceof NoSuchFileException) {
                    return FileVisitResult.CONTINUE;
                }
                throw e;
            }
        });
        return names.stream().sorted().toList();
    }

    @Test
    void the_link_opens_the_page_and_the_cookie_is_kept_from_scripts_and_other_sites() throws IOException {
        String link = workbench.link();
        Answer entered = Visitor.stranger(link).get("/?" + URI.create(link).getQuery());
        assertEquals(303, entered.status());
        assertTrue(entered.headers().get("set-cookie").endsWith("; Path=/; HttpOnly; SameSite=Strict"));
        Answer page = Visitor.at(workbench.link()).with("Origin", null).get("/");
        assertEquals(200, page.status());
        assertTrue(page.headers().get("content-security-policy").startsWith("default-src 'none'; script-src 'self'"));
        assertFalse(page.headers().get("content-security-policy").contains("unsafe"));
    }

    @Test
    void a_link_works_once() throws IOException {
        String link = workbench.link();
        Visitor.at(link);
        Answer again = Visitor.stranger(link).get("/?" + URI.create(link).getQuery());
        assertEquals(403, again.status());
        assertFalse(again.headers().containsKey("set-cookie"));
        assertEquals(
                403, Visitor.stranger(link).get("/?token=" + "0".repeat(64)).status());
    }

    @Test
    void nothing_is_shown_without_the_cookie() throws IOException {
        Visitor stranger = Visitor.stranger(workbench.link());
        for (String path : List.of("/", "/api/about", "/web/core.js", "/api/events", "/nowhere")) {
            assertEquals(403, stranger.get(path).status(), path);
        }
        Visitor other =
                Visitor.at(workbench.link()).with("Cookie", "rowledger-" + stranger.port + "=" + "0".repeat(64));
        assertEquals(403, other.get("/api/about").status());
    }

    @Test
    void a_name_that_was_rebound_to_this_machine_is_refused() throws IOException {
        Visitor visitor = Visitor.at(workbench.link());
        for (String host : List.of(
                "evil.example",
                "evil.example:" + visitor.port,
                "127.0.0.1",
                "127.0.0.1:1",
                "localhost:" + visitor.port)) {
            assertEquals(403, visitor.with("Host", host).get("/api/about").status(), host);
        }
        assertEquals(200, visitor.get("/api/about").status());
    }

    @Test
    void a_form_or_fetch_of_another_site_changes_and_reads_nothing() throws IOException {
        Visitor visitor = Visitor.at(workbench.link());
        byte[] body = "a".getBytes(StandardCharsets.UTF_8);
        for (String origin : new String[] {
            "http://evil.example", "null", "http://127.0.0.1:1", "http://localhost:" + visitor.port, null
        }) {
            assertEquals(
                    403,
                    visitor.with("Origin", origin)
                            .put("/api/fields/north/files/log.csv", body)
                            .status());
        }
        for (String site : List.of("cross-site", "same-site", "none")) {
            Visitor cross = visitor.with("Sec-Fetch-Site", site);
            assertEquals(403, cross.put("/api/fields/north/files/log.csv", body).status(), site);
            assertEquals(403, cross.with("Origin", null).get("/api/about").status(), site);
        }
        assertEquals(List.of("secret.txt"), files());
        assertEquals(200, visitor.put("/api/fields/north/files/log.csv", body).status());
    }

    @Test
    void no_name_leads_out_of_the_folder() throws IOException {
        Visitor visitor = Visitor.at(workbench.link());
        byte[] body = "a".getBytes(StandardCharsets.UTF_8);
        for (String name : List.of(
                "..",
                "%2e%2e",
                "..%2f..%2fsecret.txt",
                "%2fetc%2fpasswd",
                "..%5csecret.txt",
                "c:%5cx",
                "a%00.csv",
                ".hidden",
                ".rowledger",
                "con.csv",
                "nul",
                "a.",
                "a%20",
                "%c0%ae%c0%ae",
                "%ff",
                "%zz",
                "x".repeat(200),
                "a%0ab",
                "%E2%80%AE/x",
                "a:b",
                "")) {
            assertNotTaken(visitor.put("/api/fields/north/files/" + name, body), name);
            assertNotTaken(visitor.put("/api/fields/" + name + "/files/log.csv", body), name);
        }
        assertNotTaken(visitor.put("/api/fields/results/files/log.csv", body), "results");
        assertNotTaken(visitor.put("/api/fields/a%2fb%2fc%2fd%2fe/files/log.csv", body), "too deep");
        assertNotTaken(visitor.get("/web/..%2fcore.js"), "asset");
        assertNotTaken(visitor.get("/web/../../secret.txt"), "asset");
        assertEquals(List.of("secret.txt"), files());
    }

    private static void assertNotTaken(Answer answer, String name) {
        assertTrue(answer.status() >= 400 && answer.status() < 500, name + " was answered with " + answer.status());
    }

    @Test
    void a_link_in_the_folder_is_not_followed() throws IOException {
        try {
            Files.createSymbolicLink(season.resolve("out"), around);
            Files.createDirectory(season.resolve("north"));
            Files.createSymbolicLink(season.resolve("north/log.csv"), around.resolve("secret.txt"));
        } catch (IOException | UnsupportedOperationException e) {
            Assumptions.abort("this system makes no links");
        }
        Visitor visitor = Visitor.at(workbench.link());
        byte[] body = "a".getBytes(StandardCharsets.UTF_8);
        assertNotTaken(visitor.put("/api/fields/out/files/log.csv", body), "folder");
        assertNotTaken(visitor.put("/api/fields/north/files/log.csv?replace=true", body), "file");
        assertEquals("not for the page", Files.readString(around.resolve("secret.txt")));
        assertFalse(Files.exists(around.resolve("log.csv")));
    }

    @Test
    void a_file_that_is_too_large_leaves_nothing() throws IOException {
        Visitor visitor = Visitor.at(workbench.link());
        try (Socket socket = visitor.open()) {
            Visitor.write(socket, visitor.head("PUT", "/api/fields/north/files/log.csv", 2L << 30));
            assertEquals(413, Visitor.read(socket).status());
        }
        Visitor chunked = visitor.with("Transfer-Encoding", "chunked");
        try (Socket socket = chunked.open()) {
            Visitor.write(socket, chunked.head("PUT", "/api/fields/north/files/log.csv", 0));
            String chunk = "8000\r\n" + "a".repeat(0x8000) + "\r\n";
            for (int i = 0; i < 8; i++) {
                Visitor.write(socket, chunk);
            }
            Answer answer = Visitor.read(socket);
            assertTrue(answer.status() == 413 || answer.status() == 0, "status " + answer.status());
        } catch (IOException e) {
            // The server ended the connection while more was coming.
            assertFalse(Files.exists(season.resolve("north/log.csv")));
        }
        assertEquals(List.of("secret.txt"), files());
    }

    @Test
    void a_file_that_stalls_or_breaks_off_leaves_nothing_and_holds_nobody_up() throws Exception {
        Visitor visitor = Visitor.at(workbench.link());
        List<Socket> slow = new ArrayList<>();
        for (int i = 0; i < 3; i++) {
            Socket socket = visitor.open();
            Visitor.write(socket, visitor.head("PUT", "/api/fields/north/files/slow" + i + ".csv", 1000) + "abc");
            slow.add(socket);
        }
        assertEquals(200, visitor.get("/api/about").status());
        slow.remove(0).close();
        for (Socket socket : slow) {
            assertEquals(0, Visitor.read(socket).status());
            socket.close();
        }
        for (int i = 0; i < 100 && files().size() > 1; i++) {
            Thread.sleep(20);
        }
        assertEquals(List.of("secret.txt"), files());
        assertEquals(
                200,
                visitor.put("/api/fields/north/files/log.csv", new byte[] {1}).status());
    }

    @Test
    void a_head_that_comes_byte_by_byte_is_ended_and_holds_nobody_up() throws Exception {
        Visitor visitor = Visitor.at(workbench.link());
        List<Socket> slow = new ArrayList<>();
        // More than there are threads: each reads a head that doesn't end.
        for (int i = 0; i < 20; i++) {
            Socket socket = visitor.open();
            Visitor.write(socket, "GET /api/about HTTP/1.1\r\nX-");
            slow.add(socket);
        }
        long start = System.nanoTime();
        int ended = 0;
        while (ended < slow.size() && System.nanoTime() - start < 20_000_000_000L) {
            ended = 0;
            for (Socket socket : slow) {
                ended += drips(socket) ? 0 : 1;
            }
            Thread.sleep(50);
        }
        assertEquals(slow.size(), ended);
        assertEquals(200, visitor.get("/api/about").status());
        for (Socket socket : slow) {
            socket.close();
        }
    }

    /** Sends another byte of a head; false once the server has ended the connection. */
    private static boolean drips(Socket socket) {
        try {
            Visitor.write(socket, "a");
            return true;
        } catch (IOException e) {
            return false;
        }
    }

    @Test
    void what_is_replaced_goes_to_a_dated_folder_and_only_when_that_was_wanted() throws IOException {
        Visitor visitor = Visitor.at(workbench.link());
        String path = "/api/fields/north/files/log.csv";
        assertEquals(200, visitor.put(path, new byte[] {1}).status());
        assertTrue(visitor.put(path, new byte[] {1}).text().contains("\"same\":true"));
        assertEquals(409, visitor.put(path, new byte[] {2}).status());
        assertEquals(200, visitor.put(path + "?replace=true", new byte[] {2}).status());
        List<String> files = files();
        assertEquals(3, files.size(), files.toString());
        assertTrue(
                files.get(0).matches("season/.replaced/\\d{4}-\\d{2}-\\d{2}-\\d{6}/north/log.csv"), files.toString());
        assertEquals(1, Files.readAllBytes(around.resolve(files.get(0)))[0]);
        assertEquals(2, Files.readAllBytes(season.resolve("north/log.csv"))[0]);
    }

    @Test
    void fifty_requests_at_once_are_all_answered() throws Exception {
        Visitor visitor = Visitor.at(workbench.link());
        List<CompletableFuture<Integer>> answers = new ArrayList<>();
        for (int i = 0; i < 50; i++) {
            answers.add(CompletableFuture.supplyAsync(
                    () -> {
                        try {
                            return visitor.get("/api/about").status();
                        } catch (IOException e) {
                            throw new UncheckedIOException(e);
                        }
                    },
                    task -> new Thread(task).start()));
        }
        for (CompletableFuture<Integer> answer : answers) {
            assertEquals(200, answer.get());
        }
        long threads = Thread.getAllStackTraces().keySet().stream()
                .filter(thread -> thread.getName().equals("workbench request"))
                .count();
        assertTrue(threads <= 16, threads + " threads");
    }

    @Test
    void a_second_workbench_on_the_folder_is_told() {
        UnusableInputException refused = assertThrows(UnusableInputException.class, () -> start(LONG));
        assertTrue(refused.getMessage().contains("another workbench that has this folder open"), refused.getMessage());
        workbench.close();
        workbench = start(LONG);
    }

    @Test
    void a_second_start_shows_the_page_of_the_first_by_a_new_link() throws Exception {
        List<String> shown = new CopyOnWriteArrayList<>();
        // Whoever opened it shows no pages: the second start is told so, after a while.
        assertFalse(SecondStart.ask(SeasonFolder.of(season), Duration.ofMillis(200)));
        workbench.showAgainWith(shown::add);
        assertTrue(Workbench.showAgain(season));
        for (int i = 0; i < 100 && shown.isEmpty(); i++) {
            Thread.sleep(20);
        }
        assertEquals(1, shown.size());
        assertEquals(200, Visitor.at(shown.get(0)).get("/api/about").status());
        workbench.close();
        assertFalse(Workbench.showAgain(season));
        assertFalse(Files.exists(season.resolve(".rowledger/show-page")));
        workbench = start(LONG);
    }

    @Test
    void a_folder_that_cannot_be_written_is_told() throws IOException {
        Path file = Files.writeString(around.resolve("file"), "");
        season = file;
        assertThrows(UnusableInputException.class, () -> start(LONG));
        season = around.resolve("nowhere");
        assertThrows(UnusableInputException.class, () -> start(LONG));
        season = Files.createDirectory(around.resolve("locked"));
        Files.writeString(season.resolve(".rowledger"), "a file where the folder goes");
        UnusableInputException refused = assertThrows(UnusableInputException.class, () -> start(LONG));
        assertTrue(refused.getMessage().contains("can't be written to"), refused.getMessage());
        Files.delete(season.resolve(".rowledger"));
        season = around.resolve("season");
    }

    @Test
    void a_place_that_cannot_be_written_while_it_works_is_told_and_nothing_is_lost() throws IOException {
        Files.writeString(season.resolve("north"), "a file where the field's folder goes");
        Answer answer = Visitor.at(workbench.link()).put("/api/fields/north/files/log.csv", new byte[] {1});
        assertEquals(507, answer.status(), answer.text());
        assertTrue(answer.text().contains("Nothing was lost. Hint:"), answer.text());
        assertEquals(List.of("season/north", "secret.txt"), files());
    }

    @Test
    void files_that_a_killed_workbench_left_half_written_are_cleared() throws IOException {
        workbench.close();
        Files.write(season.resolve(".rowledger/part-1.tmp"), new byte[10]);
        workbench = start(LONG);
        assertEquals(List.of("secret.txt"), files());
    }

    @Test
    void no_other_address_of_this_machine_answers() throws IOException {
        int port = URI.create(workbench.link()).getPort();
        for (NetworkInterface card : Collections.list(NetworkInterface.getNetworkInterfaces())) {
            for (InetAddress address : Collections.list(card.getInetAddresses())) {
                if (!address.isLoopbackAddress()) {
                    assertThrows(IOException.class, () -> new Socket(address, port).close(), address.toString());
                }
            }
        }
    }

    @Test
    void it_ends_when_no_page_is_open_for_a_while_and_stays_while_one_is() throws Exception {
        workbench.close();
        workbench = start(Duration.ofMillis(300));
        Visitor visitor = Visitor.at(workbench.link());
        try (Socket page = visitor.open()) {
            Visitor.write(page, visitor.head("GET", "/api/events", 0));
            assertTrue(Visitor.firstBytes(page.getInputStream()).startsWith("HTTP/1.1 200"));
            Thread.sleep(900);
            assertEquals(200, visitor.get("/api/about").status());
        }
        workbench.close();
        Workbench alone = start(Duration.ZERO);
        alone.awaitEnd();
        workbench = start(LONG);
    }
}
