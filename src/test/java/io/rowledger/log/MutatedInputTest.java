package io.rowledger.log;

import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.finding.UnusableInputException;
import io.rowledger.rig.RigReader;
import io.rowledger.units.Dimension;
import io.rowledger.units.Unit;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Damaged at random, a file gives a table or a message, never anything else. {@code mvn -Pfuzzing test} does it 200,000
 * times, with 512 MB of memory and two seconds for each; a short part of it runs in every build.
 */
class MutatedInputTest {
    private static final long SEED = Long.getLong("fuzz.seed", 4180);
    private static final int ROUNDS = Integer.getInteger("fuzz.inputs", 2000) / 2;
    /** A hang; generous where the machine builds other things beside. */
    private static final Duration HANGS = Duration.ofSeconds(Long.getLong("fuzz.hang_s", 20));
    /** Larger cases are there for their size alone. */
    private static final long LARGEST_BYTES = 50_000;

    private static final String[] TOKENS = {
        ",",
        ";",
        "\t",
        "\"",
        "\n",
        "\r",
        "\u0000",
        "\ufeff",
        "[",
        "]",
        "(",
        "gal/min",
        "-",
        ".",
        "1e999",
        "NaN",
        "flow_999[lpm]",
        "uan.",
        "time",
        ": ",
        "- ",
        "{",
        "&a ",
        "*a",
        "<<: ",
        "!!int ",
        "log:\n  zone: ",
        "counts: total\n",
        "pulses: 9e9 per gal\n",
        "measure this",
        "12:60 AM",
        "31/02/2026",
        "//",
        "Total",
        "4199.99",
        "W",
        "row",
        "date",
        "|",
        "#",
        "'",
        "\u0661",
        "99999999999999999999"
    };

    @TempDir
    Path folder;

    @Test
    void a_damaged_log_gives_a_table_or_a_message() throws IOException {
        List<Path> logs = files("log.");
        LogOptions rig = new LogOptions(Map.of(), List.of("uan"), 3);
        LogOptions hinted = hinted();
        System.getLogger("fuzz").log(System.Logger.Level.INFO, "logs: seed {0}, inputs {1}", SEED, ROUNDS);
        Random random = new Random(SEED);
        int messages = 0;
        for (int round = 0; round < ROUNDS; round++) {
            Path from = logs.get(random.nextInt(logs.size()));
            Path to = Files.write(folder.resolve("log.csv"), mutated(Files.readAllBytes(from), random));
            try {
                int which = random.nextInt(3);
                LogOptions options = which == 0 ? rig : which == 1 ? hinted : LogOptions.unknownRig();
                long start = System.nanoTime();
                LogReader.read(List.of(to), options);
                notHanging(start, round, from);
            } catch (UnusableInputException expected) {
                messages++;
            } catch (RuntimeException | OutOfMemoryError | StackOverflowError e) {
                throw new AssertionError("seed " + SEED + ", round " + round + ", from " + from, e);
            }
        }
        // Both ends must have been reached, or the damage is too small or too great to tell anything.
        assertTrue(messages > 0 && messages < ROUNDS, messages + " messages");
    }

    @Test
    void a_damaged_rig_file_gives_a_rig_or_a_message() throws IOException {
        List<Path> rigs = files("rig.");
        Random random = new Random(SEED);
        int messages = 0;
        for (int round = 0; round < ROUNDS; round++) {
            Path from = rigs.get(random.nextInt(rigs.size()));
            Path to = Files.write(folder.resolve("rig.yaml"), mutated(Files.readAllBytes(from), random));
            try {
                long start = System.nanoTime();
                RigReader.read(to);
                notHanging(start, round, from);
            } catch (UnusableInputException expected) {
                messages++;
            } catch (RuntimeException | StackOverflowError e) {
                throw new AssertionError("seed " + SEED + ", round " + round + ", from " + from, e);
            }
        }
        // Both ends must have been reached, or the damage is too small or too great to tell anything.
        assertTrue(messages > 0 && messages < ROUNDS, messages + " messages");
    }

    private static void notHanging(long startNs, int round, Path from) {
        Duration took = Duration.ofNanos(System.nanoTime() - startNs);
        assertTrue(took.compareTo(HANGS) < 0, "seed " + SEED + ", round " + round + ", from " + from + " took " + took);
    }

    /** Everything a rig file can say about a log. */
    private static LogOptions hinted() {
        LogHints hints = new LogHints(
                ZoneId.of("America/Chicago"),
                LocalDate.of(2026, 11, 1),
                LogHints.DateOrder.DAY_MONTH_YEAR,
                2418,
                LogHints.Counts.TOTAL,
                700,
                Unit.find("gal/min", Dimension.FLOW).orElseThrow());
        return new LogOptions(Map.of("lat[ddmm.mmmm]", "lat"), List.of("uan"), 3, hints);
    }

    private static boolean isSmall(Path path) {
        try {
            return Files.size(path) <= LARGEST_BYTES;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static List<Path> files(String prefix) throws IOException {
        try (Stream<Path> walk = Files.walk(Path.of("src/test/resources/cases"))) {
            return walk.filter(path -> path.getFileName().toString().startsWith(prefix))
                    .filter(path -> path.toString().contains("bad-input")
                            || path.toString().contains("good-log"))
                    .filter(MutatedInputTest::isSmall)
                    .sorted()
                    .toList();
        }
    }

    private static byte[] mutated(byte[] bytes, Random random) {
        byte[] result = bytes;
        for (int edit = random.nextInt(6) + 1; edit > 0; edit--) {
            int at = random.nextInt(result.length + 1);
            int end = Math.min(result.length, at + random.nextInt(20));
            byte[] middle =
                    switch (random.nextInt(4)) {
                        case 0 -> new byte[0];
                        case 1 -> TOKENS[random.nextInt(TOKENS.length)].getBytes(StandardCharsets.UTF_8);
                        case 2 -> new byte[] {(byte) random.nextInt(256)};
                        default -> java.util.Arrays.copyOfRange(result, at, end);
                    };
            int resume = random.nextBoolean() ? at : end;
            ByteArrayOutputStream out = new ByteArrayOutputStream();
            out.write(result, 0, at);
            out.writeBytes(middle);
            out.write(result, resume, result.length - resume);
            result = out.toByteArray();
        }
        return result;
    }
}
