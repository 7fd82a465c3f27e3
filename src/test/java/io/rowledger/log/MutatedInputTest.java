package io.rowledger.log;

import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.finding.UnusableInputException;
import io.rowledger.rig.RigReader;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Damaged at random, a file gives a table or a message, never anything else. */
class MutatedInputTest {
    private static final long SEED = 4180;
    private static final int ROUNDS = 1500;
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
        Random random = new Random(SEED);
        int messages = 0;
        for (int round = 0; round < ROUNDS; round++) {
            Path from = logs.get(random.nextInt(logs.size()));
            Path to = Files.write(folder.resolve("log.csv"), mutated(Files.readAllBytes(from), random));
            try {
                LogReader.read(List.of(to), random.nextBoolean() ? rig : LogOptions.unknownRig());
            } catch (UnusableInputException expected) {
                messages++;
            } catch (RuntimeException e) {
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
                RigReader.read(to);
            } catch (UnusableInputException expected) {
                messages++;
            } catch (RuntimeException | StackOverflowError e) {
                throw new AssertionError("seed " + SEED + ", round " + round + ", from " + from, e);
            }
        }
        // Both ends must have been reached, or the damage is too small or too great to tell anything.
        assertTrue(messages > 0 && messages < ROUNDS, messages + " messages");
    }

    private static List<Path> files(String prefix) throws IOException {
        try (Stream<Path> walk = Files.walk(Path.of("src/test/resources/cases"))) {
            return walk.filter(path -> path.getFileName().toString().startsWith(prefix))
                    .filter(path -> path.toString().contains("bad-input")
                            || path.toString().contains("good-log"))
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
