package io.rowledger.cli;

import java.io.IOException;
import java.lang.reflect.Method;
import java.nio.charset.StandardCharsets;
import java.nio.file.DirectoryIteratorException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.time.Instant;

/**
 * Tells the Java virtual machine (JVM) of this process to leave its optimizing compiler out. A run lasts seconds: measured on jobs of
 * 5,797 and 144,000 records, the optimizer took half of all processor time and its code never earned that back.
 *
 * <p>What was tried for {@code java -jar}, small job, processor time (two cores, OpenJDK 17): nothing 8.3 s; these directives
 * 5.2 s; the option {@code -XX:TieredStopAtLevel=1}, which only a launcher can give, 4.3 s, with the serial collector 4.1 s and
 * with a class-data archive 3.7 s. So {@link SecondJvm} starts a second JVM with those options for calls that take
 * seconds, and these directives are for all others. The same directives through the platform's MBean server cost 0.15 s a run,
 * through the class behind that bean 0.01 s, so that class is called, by reflection, since it is no public interface; the jar's
 * manifest opens its package. Where it is missing or closed, the program runs as without directives.
 */
final class CompilerDirectives {
    /** Set by launchers whose Java options leave nothing to add. */
    static final String LAUNCHER = "rowledger.launcher";

    /**
     * Excluded methods stay with the first compiler. SHA-256 is left to the second, which has processor instructions for it.
     */
    private static final String DIRECTIVES = """
            [{match: ["sun/security/provider/*.*"], c2: {Exclude: false}},
             {match: ["*.*"], c2: {Exclude: true}}]
            """;

    /** Names of the files that hold them for the milliseconds in which the JVM reads one. */
    private static final String PREFIX = "rowledger-directives-";

    private static final String ENDING = ".json";

    /** Age from which such a file is one that a killed process left, s. */
    private static final long MIN_AGE_S = 60;

    private CompilerDirectives() {}

    /** Adds the directives; does nothing if this JVM takes none. */
    static void leaveOutOptimizer() {
        if (System.getProperty(LAUNCHER) != null) {
            return;
        }
        try {
            Path file = Files.createTempFile(PREFIX, ENDING);
            clear(file);
            try {
                Files.write(file, DIRECTIVES.getBytes(StandardCharsets.US_ASCII));
                command("Compiler.directives_add \"" + file + "\"");
            } finally {
                Files.deleteIfExists(file);
            }
        } catch (IOException | ReflectiveOperationException | RuntimeException | LinkageError e) {
            return; // The program only runs slower.
        }
    }

    /** Deletes what killed processes left beside a file, as far as this user may. */
    static void clear(Path file) {
        Instant before = Instant.now().minusSeconds(MIN_AGE_S);
        try (DirectoryStream<Path> files = Files.newDirectoryStream(file.resolveSibling(""), PREFIX + "*" + ENDING)) {
            for (Path other : files) {
                if (Files.getLastModifiedTime(other, LinkOption.NOFOLLOW_LINKS)
                        .toInstant()
                        .isBefore(before)) {
                    Files.deleteIfExists(other);
                }
            }
        } catch (IOException | DirectoryIteratorException e) {
            return; // Another user's, or gone by now.
        }
    }

    /** Runs a diagnostic command of the JVM (the list is that of {@code jcmd PID help}). */
    private static void command(String command) throws ReflectiveOperationException {
        Class.forName("com.sun.management.internal.PlatformMBeanProviderImpl"); // loads the native library
        Class<?> type = Class.forName("com.sun.management.internal.DiagnosticCommandImpl");
        Method bean = type.getDeclaredMethod("getDiagnosticCommandMBean");
        Method execute = type.getDeclaredMethod("executeDiagnosticCommand", String.class);
        bean.setAccessible(true);
        execute.setAccessible(true);
        execute.invoke(bean.invoke(null), command);
    }
}
