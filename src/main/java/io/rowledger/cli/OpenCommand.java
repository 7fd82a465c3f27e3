package io.rowledger.cli;

import io.rowledger.finding.RefusalKind;
import io.rowledger.finding.UnusableInputException;
import io.rowledger.workbench.Workbench;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code rowledger open}: the workbench, a local page over a season folder. */
@Command(
        name = "open",
        mixinStandardHelpOptions = true,
        description = {
            "Opens the workbench: a page in your browser over a season folder.",
            "It is served on this computer alone and needs no network."
        })
@SuppressWarnings("NullAway.Init")
final class OpenCommand implements Callable<Integer> {
    /** Time from closing the last page to the end: long enough to close a laptop's lid and open it again. */
    private static final Duration IDLE = Duration.ofMinutes(10);

    @Parameters(
            paramLabel = "DIR",
            arity = "0..1",
            description = "The season folder (default: Rowledger in your home folder, made if it is not there).")
    private @Nullable Path folder;

    @Option(names = "--port", paramLabel = "N", defaultValue = "0", description = "Port (default: a free one).")
    private int port;

    @Option(names = "--no-browser", description = "Only prints the link.")
    private boolean noBrowser;

    private final Console console;

    OpenCommand(Console console) {
        this.console = console;
    }

    private static final int MAX_PORT = 65_535;

    @Override
    public Integer call() throws InterruptedException {
        try {
            return open();
        } catch (UnusableInputException e) {
            if (!noBrowser && !console.isSeen()) {
                Workbench.showRefusal(e, OpenCommand::browse);
            }
            throw e;
        }
    }

    private int open() throws InterruptedException {
        if (port < 0 || port > MAX_PORT) {
            throw UnusableInputException.found("port " + port)
                    .atColumn("--port")
                    .expected("a port from 1 to " + MAX_PORT + ", or 0 for any that is free")
                    .hint("leave --port out to use a free one");
        }
        Path season = folder == null ? home() : folder;
        if (!noBrowser && Workbench.showAgain(season)) {
            console.out().println("The workbench has this folder open already. Its page opens again in your browser.");
            return Main.DONE;
        }
        Workbench.Settings settings = new Workbench.Settings(
                season,
                port,
                Version.number(),
                IDLE,
                Workbench.UploadLimits.DEFAULTS,
                noBrowser ? null : place -> browse(place.toString()),
                failure -> failure.printStackTrace(console.err()));
        try (Workbench workbench = Workbench.start(settings)) {
            Thread atExit = new Thread(workbench::close, "close the workbench");
            Runtime.getRuntime().addShutdownHook(atExit);
            console.out().println("Season folder: " + season.toAbsolutePath().normalize());
            console.out().println("Open this link in your browser; it works once:");
            console.out().println(workbench.link());
            console.out().println("The program ends a while after you close the page, or with Ctrl+C.");
            if (!noBrowser) {
                browse(workbench.link());
                workbench.showAgainWith(OpenCommand::browse);
            }
            workbench.awaitEnd();
        }
        return Main.DONE;
    }

    private static Path home() {
        Path home = Path.of(System.getProperty("user.home", ".")).resolve("Rowledger");
        try {
            return Files.createDirectories(home);
        } catch (IOException e) {
            throw UnusableInputException.found("a home folder that can't be written to")
                    .inFile(home.toString())
                    .kind(RefusalKind.FOLDER_CLOSED)
                    .expected("a place for the season folder")
                    .hint("name a folder, such as rowledger open season");
        }
    }

    /** Asks the system to show a link or a folder; false if it can't. Where that fails, the printed link is there. */
    private static boolean browse(String link) {
        String system = System.getProperty("os.name", "").toLowerCase(Locale.ROOT);
        List<String> call = system.contains("win")
                ? List.of("rundll32", "url.dll,FileProtocolHandler", link)
                : List.of(system.contains("mac") ? "open" : "xdg-open", link);
        try {
            new ProcessBuilder(call)
                    .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                    .redirectError(ProcessBuilder.Redirect.DISCARD)
                    .start();
            return true;
        } catch (IOException e) {
            return false;
        }
    }
}
