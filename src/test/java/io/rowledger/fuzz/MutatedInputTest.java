package io.rowledger.fuzz;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.finding.UnusableInputException;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.io.UncheckedIOException;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.io.TempDir;

/**
 * Damaged at random, a file gives a result or a message, never anything else: no other exception, no two seconds of the
 * processor's time, nothing printed, no file changed or left behind. {@code mvn -Pfuzzing test} does it 200,000 times with
 * 512 MB of memory; a short part of it runs in every build.
 *
 * <p>Each input comes from the seed and its own number: {@code -Dfuzz.kind=KML -Dfuzz.only=4711} makes that one again. What
 * failed is kept under {@code target/fuzz}.
 */
@Tag("slow")
class MutatedInputTest {
    private static final long SEED = Long.getLong("fuzz.seed", 4180);
    private static final int INPUTS = Integer.getInteger("fuzz.inputs", 4000);
    private static final int ONLY = Integer.getInteger("fuzz.only", -1);
    private static final String KIND = System.getProperty("fuzz.kind", "");

    /** The processor's time of the reading thread: other programs on the machine make a clock run on, not this. */
    private static final long HANGS_NS = 2_000_000_000L;
    /** A whole job takes longer than reading it; this is for what never ends. */
    private static final long WHOLE_HANGS_NS = 20_000_000_000L;
    /** After this, s by the clock, nobody waits any longer. */
    private static final int STUCK_S = 300;
    /** Of those that can be read, one in so many goes through the whole program. */
    private static final int WHOLE = 100;

    private static final int MAX_FAILURES = 12;
    private static final Path KEPT = Path.of("target/fuzz");
    private static final ThreadMXBean THREADS = ManagementFactory.getThreadMXBean();

    @TempDir
    Path folder;

    /** What was seen of one kind. */
    private static final class Seen {
        int readable;
        int messages;
        int whole;
        long slowestNs;
        int slowest;
        final TreeMap<String, String> failures = new TreeMap<>();
    }

    /** What one process may take, whatever it is given, kB; asked where the heap leaves room for it, as in the long run. */
    private static final long MAX_MEMORY_KB = 512 << 10;

    private static final boolean SMALL_HEAP = Runtime.getRuntime().maxMemory() < 400L << 20;

    @TestFactory
    Stream<DynamicTest> a_damaged_input_gives_a_result_or_a_message() {
        say("seed " + SEED + ", " + INPUTS + " inputs, at most "
                + (Runtime.getRuntime().maxMemory() >> 20) + " MB of heap");
        List<Kind> kinds = new Kinds(new Corpus(folder.resolve("corpus"))).all();
        assertEquals(1000, kinds.stream().mapToInt(Kind::perMille).sum(), "shares of all inputs");
        return kinds.stream()
                .filter(kind -> KIND.isEmpty() || KIND.equals(kind.name()))
                .map(kind -> DynamicTest.dynamicTest(kind.name(), () -> all(kind)));
    }

    private void all(Kind kind) {
        int inputs = Math.max(20, (int) ((long) INPUTS * kind.perMille() / 1000));
        Seen seen = new Seen();
        long start = System.nanoTime();
        for (int number = ONLY >= 0 ? ONLY : 0; number < (ONLY >= 0 ? ONLY + 1 : inputs); number++) {
            one(kind, number, seen);
            if (seen.failures.size() >= MAX_FAILURES) {
                break;
            }
        }
        say(String.format(
                Locale.ROOT,
                "%-16s %6d inputs: %6d read, %6d messages, %4d through the whole program; slowest %.2f s (number %d); %d s;"
                        + " %s",
                kind.name(),
                seen.readable + seen.messages,
                seen.readable,
                seen.messages,
                seen.whole,
                seen.slowestNs / 1e9,
                seen.slowest,
                (System.nanoTime() - start) / 1_000_000_000,
                memory()));
        assertTrue(!SMALL_HEAP || peakKb() <= MAX_MEMORY_KB, MutatedInputTest::memory);
        assertTrue(seen.failures.isEmpty(), () -> String.join("\n", seen.failures.values()));
        // Both ends must have been reached, or the damage is too small or too great to tell anything.
        assertTrue(ONLY >= 0 || inputs < 100 || (seen.messages > 0 && seen.readable > 0), seen.messages + " messages");
    }

    private void one(Kind kind, int number, Seen seen) {
        Random random = random(kind, number);
        Input input = kind.made().make(random);
        Path place = folder.resolve("input");
        Path path = input.writeTo(place);
        ByteArrayOutputStream printed = new ByteArrayOutputStream();
        PrintStream console = System.err;
        System.setErr(new PrintStream(printed, true, StandardCharsets.UTF_8));
        String fault = "";
        Watch.begins(kind, number, input);
        try {
            long start = THREADS.getCurrentThreadCpuTime();
            fault = read(kind.reader(), path, random, seen);
            long tookNs = THREADS.getCurrentThreadCpuTime() - start;
            if (tookNs > seen.slowestNs) {
                seen.slowestNs = tookNs;
                seen.slowest = number;
            }
            if (tookNs > HANGS_NS) {
                fault += "took " + tookNs / 1_000_000 + " ms";
            }
            if (fault.equals("read") && random.nextInt(WHOLE) == 0) {
                seen.whole++;
                start = THREADS.getCurrentThreadCpuTime();
                fault = read(kind.whole(), path, random, new Seen());
                tookNs = THREADS.getCurrentThreadCpuTime() - start;
                if (tookNs > WHOLE_HANGS_NS) {
                    fault += "took " + tookNs / 1_000_000 + " ms as a whole";
                }
            }
        } finally {
            Watch.ends();
            System.setErr(console);
        }
        if (!input.takeFrom(place)) {
            fault += "changed its input, or left something beside it";
        }
        if (printed.size() > 0) {
            fault += "printed "
                    + printed.toString(StandardCharsets.UTF_8).lines().limit(2).toList();
        }
        if (!fault.equals("read") && !fault.equals("message")) {
            fails(kind, number, input, fault, seen);
        }
    }

    /** "read", "message", or what was thrown and where. */
    private static String read(Kind.Reader reader, Path path, Random random, Seen seen) {
        try {
            reader.read(path, random);
            seen.readable++;
            return "read";
        } catch (UnusableInputException expected) {
            seen.messages++;
            return expected.getMessage().isBlank() ? "an empty message" : "message";
        } catch (RuntimeException | Error e) {
            seen.messages++;
            StringBuilder where = new StringBuilder(e.toString());
            where.setLength(Math.min(where.length(), 200));
            for (Throwable at = e; at != null; at = at.getCause()) {
                Arrays.stream(at.getStackTrace())
                        .limit(14)
                        .forEach(line -> where.append("\n    at ").append(line));
            }
            return where.toString();
        }
    }

    private static void fails(Kind kind, int number, Input input, String fault, Seen seen) {
        String same =
                fault.replaceAll("[0-9]+(?= ms)", "").lines().skip(1).limit(3).toList()
                        + fault.lines().findFirst().orElse("").replaceAll("[0-9]+", "0");
        if (seen.failures.containsKey(same)) {
            return;
        }
        Path kept = keep(kind, number, input);
        seen.failures.put(
                same,
                "seed " + SEED + ", " + kind + ", number " + number + " (from " + input.from() + ", kept as " + kept
                        + "): " + fault);
    }

    private static Path keep(Kind kind, int number, Input input) {
        Path kept = KEPT.resolve(kind.name().replaceAll("[^A-Za-z.]+", "-") + "-" + SEED + "-" + number);
        input.writeTo(kept);
        return kept;
    }

    /** Every input has a beginning of its own, spread by the finisher of SplitMix64 (Steele, Lea, Flood 2014). */
    private static Random random(Kind kind, int number) {
        long z = SEED + kind.name().hashCode() * 0x100000000L + number * 0x9E3779B97F4A7C15L;
        z = (z ^ (z >>> 30)) * 0xBF58476D1CE4E5B9L;
        z = (z ^ (z >>> 27)) * 0x94D049BB133111EBL;
        return new Random(z ^ (z >>> 31));
    }

    private static String memory() {
        return peakKb() == 0 ? "memory not known" : "at most " + (peakKb() >> 10) + " MB resident";
    }

    /** The most memory the process has had, database and all, where the system says so; 0 elsewhere. */
    private static long peakKb() {
        Path status = Path.of("/proc/self/status");
        if (!Files.isReadable(status)) {
            return 0;
        }
        try (Stream<String> lines = Files.lines(status)) {
            return lines.filter(line -> line.startsWith("VmHWM"))
                    .mapToLong(line -> Long.parseLong(line.replaceAll("\\D", "")))
                    .findFirst()
                    .orElse(0);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static void say(String line) {
        System.out.println("fuzz: " + line);
    }

    /** Ends the program where one input never comes back, and says which. */
    private static final class Watch {
        private static volatile String current = "";
        private static volatile long beganNs;
        private static volatile Runnable keeping = () -> {};

        static {
            Thread watch = new Thread(Watch::look, "fuzz-watch");
            watch.setDaemon(true);
            watch.start();
        }

        private Watch() {}

        static void begins(Kind kind, int number, Input input) {
            keeping = () -> keep(kind, number, input);
            beganNs = System.nanoTime();
            current = kind + ", number " + number;
        }

        static void ends() {
            current = "";
        }

        private static void look() {
            while (true) {
                try {
                    Thread.sleep(1000);
                } catch (InterruptedException e) {
                    return;
                }
                String stuck = current;
                if (!stuck.isEmpty() && System.nanoTime() - beganNs > STUCK_S * 1_000_000_000L) {
                    keeping.run();
                    say("seed " + SEED + ", " + stuck + " never comes back; kept under " + KEPT);
                    Thread.getAllStackTraces()
                            .forEach((thread, stack) -> say(thread.getName() + " " + Arrays.toString(stack)));
                    Runtime.getRuntime().halt(70);
                }
            }
        }
    }

    @Test
    void the_same_seed_and_number_make_the_same_input() {
        Kind kind = new Kinds(new Corpus(folder.resolve("corpus"))).all().get(0);
        for (int number = 0; number < 20; number++) {
            Input a = kind.made().make(random(kind, number));
            Input b = kind.made().make(random(kind, number));
            assertEquals(a.from(), b.from());
            assertTrue(Arrays.equals(a.files().get(a.named()), b.files().get(b.named())));
        }
    }
}
