package io.rowledger.log;

import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.finding.UnusableInputException;
import io.rowledger.sim.GnssModel;
import io.rowledger.sim.LogFormat;
import io.rowledger.sim.PassPlan;
import io.rowledger.sim.Scenario;
import io.rowledger.sim.SimRig;
import io.rowledger.sim.TaskDataWriter;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Task data damaged at random gives a table or a message, never anything else. */
class MutatedTaskDataTest {
    private static final long SEED = 11783;
    /** Each reads a whole job of some hundred records; {@code -Drowledger.fuzz.rounds=N} for more. */
    private static final int ROUNDS = Integer.getInteger("rowledger.fuzz.rounds", 2000);

    private static final String[] TOKENS = {
        "<",
        ">",
        "\"",
        "\"\"",
        "&",
        "&#0;",
        "&#x110000;",
        "]]>",
        "<!--",
        "<![CDATA[",
        "<?x ",
        "\u0000",
        "\ufeff",
        "-1",
        "0",
        "2147483648",
        "FFFF",
        "DET-11",
        "DVC-1",
        " F=\"20\"",
        "<DLV A=\"0025\" B=\"\" C=\"DET-20\"/>",
        "<DLV A=\"0043\" B=\"5\" C=\"DET-21\"/>",
        "<PTN A=\"\"/>",
        "<TLG A=\"TLG00002\"/>",
        "<XFR A=\"TSK00001\"/>"
    };

    @TempDir
    Path folder;

    private Path job() {
        SimRig rig = SimRig.drawn(3);
        return TaskDataWriter.of(new Scenario(3, rig, PassPlan.rectangle(40, 2, 0, rig.widthM()))
                        .gnss(GnssModel.rtk(1))
                        .format(LogFormat.customaryUnits().with(LogFormat.Column.ON, LogFormat.Column.TOTAL))
                        .run())
                .writeTo(folder.resolve("TASKDATA"));
    }

    private static void read(Path path, Random random) {
        LogOptions rig = new LogOptions(Map.of(), List.of("uan"), 3);
        LogReader.read(List.of(path), random.nextBoolean() ? rig : LogOptions.unknownRig());
    }

    @Test
    void damaged_task_data_gives_a_table_or_a_message() throws IOException {
        Path data = job();
        Random random = new Random(SEED);
        List<String> names = TaskDataWriter.names();
        int messages = 0;
        for (int round = 0; round < ROUNDS; round++) {
            String name = names.get(random.nextInt(names.size()));
            Path file = data.resolve(name);
            byte[] good = Files.readAllBytes(file);
            Files.write(file, mutated(good, random, name.endsWith("BIN")));
            try {
                read(data, random);
            } catch (UnusableInputException expected) {
                messages++;
            } catch (RuntimeException | StackOverflowError e) {
                throw new AssertionError("seed " + SEED + ", round " + round + ", " + name, e);
            } finally {
                Files.write(file, good);
            }
        }
        // Both ends must have been reached, or the damage is too small or too great to tell anything.
        assertTrue(messages > ROUNDS / 20 && messages < ROUNDS * 19 / 20, messages + " messages of " + ROUNDS);
    }

    @Test
    void a_damaged_zip_of_it_gives_a_table_or_a_message() throws IOException {
        Path data = job();
        Random random = new Random(SEED);
        ByteArrayOutputStream packed = new ByteArrayOutputStream();
        try (ZipOutputStream out = new ZipOutputStream(packed)) {
            for (String name : TaskDataWriter.names()) {
                out.putNextEntry(new ZipEntry("TASKDATA/" + name));
                out.write(Files.readAllBytes(data.resolve(name)));
            }
        }
        Path zip = folder.resolve("job.zip");
        int messages = 0;
        for (int round = 0; round < ROUNDS / 4; round++) {
            Files.write(zip, mutated(packed.toByteArray(), random, true));
            try {
                read(zip, random);
            } catch (UnusableInputException expected) {
                messages++;
            } catch (RuntimeException | StackOverflowError e) {
                throw new AssertionError("seed " + SEED + ", round " + round, e);
            }
        }
        assertTrue(messages > 0, "no message");
    }

    private static byte[] mutated(byte[] bytes, Random random, boolean binary) {
        byte[] result = bytes;
        for (int edit = random.nextInt(4) + 1; edit > 0; edit--) {
            int at = random.nextInt(result.length + 1);
            int end = Math.min(result.length, at + random.nextInt(20));
            byte[] middle =
                    switch (random.nextInt(4)) {
                        case 0 -> new byte[0];
                        case 1 ->
                            binary
                                    ? new byte[] {(byte) 0xFF, (byte) 0xFF, (byte) 0xFF, 0x7F}
                                    : TOKENS[random.nextInt(TOKENS.length)].getBytes(StandardCharsets.UTF_8);
                        case 2 -> new byte[] {(byte) random.nextInt(256)};
                        default -> Arrays.copyOfRange(result, at, end);
                    };
            // As often as not what follows stays where it was: a figure changes, not the layout.
            int resume = binary && random.nextBoolean() ? Math.min(result.length, at + middle.length) : end;
            resume = !binary && random.nextBoolean() ? at : resume;
            ByteArrayOutputStream out = new ByteArrayOutputStream();
            out.write(result, 0, at);
            out.writeBytes(middle);
            out.write(result, resume, result.length - resume);
            result = out.toByteArray();
        }
        return result;
    }
}
