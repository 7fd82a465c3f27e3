package io.rowledger.cli;

import java.io.IOException;
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
 * the first is killed outright, the second, which watches it, stops within half a second as if killed too. The call stays
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
            Process second = new ProcessBuilder(call.get()).inheritIO().start();
            Runtime.getRuntime().addShutdownHook(new Thread(() -> end(second), "end second"));
            return OptionalInt.of(second.waitFor());
        } catch (IOException | IllegalStateException e) {
            return OptionalInt.empty();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return OptionalInt.of(Main.FAILED);
        }
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
