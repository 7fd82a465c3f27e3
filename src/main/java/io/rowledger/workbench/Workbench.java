package io.rowledger.workbench;

import com.sun.net.httpserver.HttpServer;
import io.rowledger.finding.UnusableInputException;
import java.io.IOException;
import java.net.BindException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.ScheduledFuture;
import java.util.concurrent.ScheduledThreadPoolExecutor;
import java.util.concurrent.ThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;

/** A local server over a season folder. It listens on 127.0.0.1 alone and ends a while after the last page was closed. */
public final class Workbench implements AutoCloseable {
    private static final int MAX_THREADS = 16;
    private static final int MAX_WAITING = 4096;
    private static final int BACKLOG = 64;
    /** Time for a whole request, s: more than an upload may take, which the JDK's server can't tell from other requests. */
    private static final int MAX_REQUEST_S = 330;
    /** Time between two looks at whether a page is open, ms: small against the time it ends after. */
    private static final long CHECK_MS = 200;
    /** Time that a workbench has to show its page again: many times that between two looks. */
    private static final Duration MAX_SHOWN_AGAIN = Duration.ofSeconds(3);

    private final SeasonFolder folder;
    private volatile @Nullable Consumer<String> browser;
    private final FolderLock lock;
    private final HttpServer server;
    private final ExecutorService threads;
    private final ScheduledExecutorService timer;
    private final Gate gate;
    private final Services services;
    private final ScheduledFuture<?> idleCheck;
    private final CountDownLatch ended = new CountDownLatch(1);

    /**
     * How the workbench is started.
     *
     * @param folder the season folder
     * @param port of 127.0.0.1; 0 for a free one
     * @param version of the program
     * @param idle time after which it ends once no page is open
     * @param uploads bounds for one upload
     * @param opener shows a folder in the system's own window; null where it can't
     * @param failures hears failures of the program itself
     */
    public record Settings(
            Path folder,
            int port,
            String version,
            Duration idle,
            UploadLimits uploads,
            @Nullable Consumer<Path> opener,
            Consumer<Throwable> failures) {
        /** Settings for a page on a free port that opens no windows. */
        public Settings(Path folder, String version, Consumer<Throwable> failures) {
            this(folder, 0, version, Duration.ofMinutes(10), UploadLimits.DEFAULTS, null, failures);
        }
    }

    /**
     * Bounds for one upload.
     *
     * @param maxBytes size
     * @param max time for the whole file
     * @param maxStall time without a byte; also the time for the head of a request
     */
    public record UploadLimits(long maxBytes, Duration max, Duration maxStall) {
        /** 1 GB, ten times the log of a long day at 10 Hz; a slow stick takes a minute for it. */
        public static final UploadLimits DEFAULTS =
                new UploadLimits(1L << 30, Duration.ofMinutes(5), Duration.ofSeconds(20));
    }

    private Workbench(Settings settings, SeasonFolder folder, FolderLock lock) throws IOException {
        this.folder = folder;
        this.lock = lock;
        limitRequests();
        InetAddress loopback = InetAddress.getByAddress("127.0.0.1", new byte[] {127, 0, 0, 1});
        server = HttpServer.create(new InetSocketAddress(loopback, settings.port), BACKLOG);
        gate = new Gate(server.getAddress().getPort());
        ThreadPoolExecutor pool = new ThreadPoolExecutor(
                MAX_THREADS,
                MAX_THREADS,
                30,
                TimeUnit.SECONDS,
                new LinkedBlockingQueue<>(MAX_WAITING),
                task -> daemon(task, "workbench request"),
                new ThreadPoolExecutor.CallerRunsPolicy());
        pool.allowCoreThreadTimeOut(true);
        threads = pool;
        timer = new ScheduledThreadPoolExecutor(1, task -> daemon(task, "workbench timer"));
        services = new Services(folder, timer, settings);
        HeadTimeout heads = new HeadTimeout(threads, timer, settings.uploads.maxStall());
        server.setExecutor(heads);
        List<Route> routes = new ArrayList<>(services.routes());
        Router router = new Router(gate, routes, timer, settings.failures);
        server.createContext("/", exchange -> {
            heads.headRead();
            router.handle(exchange);
        });
        idleCheck = timer.scheduleWithFixedDelay(() -> check(settings.idle), CHECK_MS, CHECK_MS, TimeUnit.MILLISECONDS);
    }

    private static Thread daemon(Runnable task, String name) {
        Thread thread = new Thread(task, name);
        thread.setDaemon(true);
        return thread;
    }

    /** The JDK's server reads its limits from system properties, once, before the first server is made. */
    private static void limitRequests() {
        if (System.getProperty("sun.net.httpserver.maxReqTime") == null) {
            System.setProperty("sun.net.httpserver.maxReqTime", Integer.toString(MAX_REQUEST_S));
        }
    }

    /**
     * Starts the server.
     *
     * @throws UnusableInputException if the folder or the port can't be used
     */
    public static Workbench start(Settings settings) {
        SeasonFolder folder = SeasonFolder.of(settings.folder);
        FolderLock lock = FolderLock.take(folder);
        try {
            Workbench workbench = new Workbench(settings, folder, lock);
            workbench.server.start();
            workbench.services.start();
            return workbench;
        } catch (BindException e) {
            lock.close();
            throw UnusableInputException.found("port " + settings.port + ", which another program uses")
                    .atColumn("--port")
                    .expected("a free port")
                    .hint("leave --port out, and a free one is taken");
        } catch (IOException e) {
            lock.close();
            throw new IllegalStateException("the server can't be started", e);
        }
    }

    /** Returns a link that opens the page, once. */
    public String link() {
        return gate.link();
    }

    /** Returns when the workbench has ended. */
    public void awaitEnd() throws InterruptedException {
        ended.await();
    }

    /**
     * Asks the workbench that has a folder open, if any, to show its page again.
     *
     * @return false if none has it open, or the one that has shows no pages
     */
    public static boolean showAgain(Path folder) {
        return SecondStart.ask(SeasonFolder.of(folder), MAX_SHOWN_AGAIN);
    }

    /** Shows a new link wherever {@link #showAgain} asks for it. */
    public void showAgainWith(Consumer<String> shows) {
        browser = shows;
    }

    /**
     * Shows somebody who sees no terminal why the workbench can't start, in a page; returns when it was sent, or after a while.
     *
     * @param browser shows a link; false if it can't
     */
    public static void showRefusal(UnusableInputException refusal, Predicate<String> browser) {
        RefusedStart.show(refusal, browser);
    }

    private void check(Duration idle) {
        Consumer<String> shows = browser;
        if (shows != null && SecondStart.take(folder)) {
            shows.accept(gate.link());
        }
        if (services.isIdle(idle)) {
            close();
        }
    }

    @Override
    public void close() {
        idleCheck.cancel(false);
        services.close();
        server.stop(0);
        threads.shutdownNow();
        timer.shutdownNow();
        lock.close();
        ended.countDown();
    }
}
