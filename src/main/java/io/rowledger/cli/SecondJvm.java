package io.rowledger.cli;

import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.concurrent.CompletableFuture;

/**
 * Runs a call of {@code java -jar} in a second JVM, started with the options that fit a run of seconds. A jar can't
 * carry options, and without them half of a short run is spent on compiling and measuring code that ends before it pays:
 * {@link CompilerDirectives} has the figures.
 *
 * <p>The two are one to whoever started the first. The second has the first one's streams, its memory options and its folder; its
 * exit status becomes the first one's. A signal that ends the first ends the second before it, with all its clearing up; where
 * the first is killed outright, the second, which watches it, stops within half a second as if killed too. Where a class-data archive
 * lies beside the jar, {@code rowledger.jsa} beside {@code rowledger.jar}, the second takes its classes from there; whoever may
 * write it may write the jar. Java itself leaves an archive of another jar or another Java alone. The call stays
 * in the first where anyone has chosen options for Java (on the command line or in its environment variables), where the
 * system doesn't tell how the process was started (Windows), and where a second can't be started.
 */
final class SecondJvm {
    /** Calls of seconds; the workbench stays for hours, and the others end sooner than a second JVM starts. */
    private static final Set<String> VERBS = Set.of("report", "demo");

    private static final List<String> OPTIONS = List.of(
            "-XX:TieredStopAtLevel=1", "-XX:Tier3BackEdgeThreshold=20000", "-XX:+UseSerialGC", "-XX:-UsePerfData");
    /** Options of the first that the second takes over; with any other the call stays in the first. */
    private static final List<String> KEPT = List.of("-Xmx", "-Xms", "-Xss", "-D");

    /**
     * Nothing is said about an archive that doesn't fit. Java checks no more than the beginning of one, and aborts over one
     * that was cut off, by a full disk for instance: then without a word, and the call runs without it.
     */
    private static final List<String> ARCHIVE_OPTIONS =
            List.of("-Xlog:cds=off", "-Xlog:cds+dynamic=off", "-XX:+SuppressFatalErrorMessage");

    /** Exit status of a JVM that has aborted: 128 and the signal's number. */
    private static final int ABORTED = 128 + 6;

    /** End of the name of an archive in the place of {@code .jar}. */
    private static final String ARCHIVE = ".jsa";

    private static final List<String> VARIABLES = List.of("JAVA_TOOL_OPTIONS", "JDK_JAVA_OPTIONS", "_JAVA_OPTIONS");
    /** The process number of the first, in the second. */
    private static final String FIRST = "rowledger.first";
    /** Exit status as the system gives it to a process that was killed: 128 and the signal's number. */
    private static final int KILLED = 128 + 9;

    private SecondJvm() {}

    /** Runs the call in a second JVM; empty where it must run in this one. */
    static OptionalInt run(String... args) {
        if (args.length == 0 || !VERBS.contains(args[0]) || isChosen()) {
            return OptionalInt.empty();
        }
        ProcessHandle.Info own = ProcessHandle.current().info();
        Optional<List<String>> call =
                call(own.command().orElse(""), own.arguments().orElse(new String[0]), args);
        if (call.isEmpty()) {
            return OptionalInt.empty();
        }
        try {
            Optional<List<String>> withArchive = withArchive(call.get());
            int status = withArchive.isPresent() ? run(withArchive.get()) : ABORTED;
            return OptionalInt.of(status == ABORTED ? run(call.get()) : status);
        } catch (IOException | IllegalStateException e) {
            return OptionalInt.empty();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return OptionalInt.of(Main.FAILED);
        }
    }

    private static int run(List<String> call) throws IOException, InterruptedException {
        Process second = new ProcessBuilder(call).inheritIO().start();
        Runtime.getRuntime().addShutdownHook(new Thread(() -> end(second), "end second"));
        return second.waitFor();
    }

    /** In a second JVM: stops this process when the first has gone. */
    static void watchFirst() {
        String first = System.getProperty(FIRST);
        if (first == null) {
            return;
        }
        Optional<ProcessHandle> process = ProcessHandle.of(Long.parseLong(first));
        if (process.isEmpty()) {
            stop();
            return;
        }
        // Java looks for the process three times a second.
        CompletableFuture<Void> unused = process.get().onExit().thenRun(SecondJvm::stop);
    }

    private static void stop() {
        Runtime.getRuntime().halt(KILLED);
    }

    private static boolean isChosen() {
        return System.getProperty(CompilerDirectives.LAUNCHER) != null
                || VARIABLES.stream().anyMatch(name -> System.getenv(name) != null);
    }

    /**
     * The call of the second JVM.
     *
     * @param java the program file of the first
     * @param arguments all its arguments as the system tells them
     * @param args those of this program
     * @return empty where the first wasn't started by {@code -jar}, or with options that are its user's own choice
     */
    static Optional<List<String>> call(String java, String[] arguments, String... args) {
        int jar = arguments.length - args.length - 1;
        if (java.isEmpty()
                || jar < 1
                || !arguments[jar - 1].equals("-jar")
                || !Arrays.equals(arguments, jar + 1, arguments.length, args, 0, args.length)) {
            return Optional.empty();
        }
        List<String> call = new ArrayList<>(List.of(java));
        call.addAll(OPTIONS);
        for (String option : Arrays.copyOf(arguments, jar - 1)) {
            if (KEPT.stream().noneMatch(option::startsWith)) {
                return Optional.empty();
            }
            call.add(option);
        }
        call.add("-D" + CompilerDirectives.LAUNCHER + "=second");
        call.add("-D" + FIRST + "=" + ProcessHandle.current().pid());
        call.add("-jar");
        call.addAll(List.of(arguments).subList(jar, arguments.length));
        return Optional.of(call);
    }

    /** The same call with the class-data archive beside the jar; empty without one. */
    static Optional<List<String>> withArchive(List<String> call) {
        int jar = call.indexOf("-jar") + 1;
        String file = call.get(jar).replaceFirst("\\.jar$", "") + ARCHIVE;
        // Java would take a colon in the name for the end of one of two names.
        if (!Files.isRegularFile(Path.of(file)) || file.indexOf(File.pathSeparatorChar) >= 0) {
            return Optional.empty();
        }
        List<String> with = new ArrayList<>(call);
        with.addAll(1, ARCHIVE_OPTIONS);
        with.add(1, "-XX:SharedArchiveFile=" + file);
        return Optional.of(with);
    }

    /** Ends the second and waits for it: it clears what it had begun. */
    private static void end(Process second) {
        second.destroy();
        boolean interrupted = false;
        while (second.isAlive()) {
            try {
                second.waitFor();
            } catch (InterruptedException e) {
                interrupted = true;
            }
        }
        if (interrupted) {
            Thread.currentThread().interrupt();
        }
    }
}
