package io.rowledger.maps;

import java.io.IOException;
import java.io.InputStream;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import org.jspecify.annotations.Nullable;
import org.sqlite.SQLiteJDBCLoader;

/**
 * Loads SQLite's native library and leaves no copy of it behind: the library is unpacked into a folder of this process among
 * the temporary files, which is deleted as soon as it is loaded (systems that keep loaded files from being deleted: when the
 * process ends). A folder that a killed process left is deleted by the next one: the lock in it is then free.
 *
 * <p>On Linux with the usual C library the file is unpacked here and its place told to the driver. Elsewhere the driver unpacks
 * it: it starts another program to ask for the system's name and compares the file with its source byte by byte, which takes a
 * tenth of a second.
 */
public final class SqliteLibrary {
    private static final String PREFIX = "rowledger-sqlite-";
    private static final String LOCK = "lock";
    /** Where the driver unpacks to; who sets it wants another place. */
    private static final String FOLDER = "org.sqlite.tmpdir";
    /** Where the driver finds a library that is there already, and its name. */
    private static final String READY_FOLDER = "org.sqlite.lib.path";

    private static final String READY_NAME = "org.sqlite.lib.name";
    /** Another process may take a folder for a leftover before the lock is in it. */
    private static final int TRIES = 3;

    private static boolean loaded;

    private SqliteLibrary() {}

    /**
     * Loads the library once; later calls do nothing.
     *
     * @throws IOException where there is none for this machine, or it can't be unpacked or loaded
     */
    public static synchronized void load() throws IOException {
        if (loaded) {
            return;
        }
        if (System.getProperty(FOLDER) != null || System.getProperty(READY_FOLDER) != null) {
            initialize();
            loaded = true;
            return;
        }
        // A signal that comes meanwhile waits until this process's folder is gone.
        Thread atExit = new Thread(SqliteLibrary::awaitLoaded, "wait for SQLite's library");
        try {
            Runtime.getRuntime().addShutdownHook(atExit);
        } catch (IllegalStateException e) {
            throw new IOException("the program is being ended", e);
        }
        try {
            loadFrom(Path.of(System.getProperty("java.io.tmpdir")));
        } finally {
            forget(atExit);
        }
    }

    private static synchronized void awaitLoaded() {
        // The lock of this method is held while the library is loaded.
    }

    private static void forget(Thread atExit) {
        try {
            Runtime.getRuntime().removeShutdownHook(atExit);
        } catch (IllegalStateException e) {
            // The program is being ended, and the hook runs.
            return;
        }
    }

    private static void loadFrom(Path temporary) throws IOException {
        clearLeftovers(temporary);
        for (int tries = 1; !loaded; tries++) {
            Path own = Files.createTempDirectory(temporary, PREFIX);
            try (FileChannel channel = FileChannel.open(
                            own.resolve(LOCK), StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);
                    FileLock lock = channel.lock()) {
                System.setProperty(FOLDER, own.toString());
                unpack(own);
                initialize();
                loaded = lock.isValid();
            } catch (IOException e) {
                if (tries == TRIES) {
                    throw e;
                }
            } finally {
                System.clearProperty(FOLDER);
                System.clearProperty(READY_FOLDER);
                System.clearProperty(READY_NAME);
                clear(own);
            }
        }
    }

    /** Unpacks the library where it is known which one and tells the driver; elsewhere does nothing. */
    private static void unpack(Path folder) throws IOException {
        String name = System.mapLibraryName("sqlitejdbc");
        try (InputStream library = SQLiteJDBCLoader.class.getResourceAsStream("native/" + system() + "/" + name)) {
            if (library != null) {
                Files.copy(library, folder.resolve(name));
                System.setProperty(READY_FOLDER, folder.toString());
                System.setProperty(READY_NAME, name);
            }
        }
    }

    /** The driver's folder for this system; one that doesn't exist where the driver has to choose. */
    private static String system() {
        String processor = System.getProperty("os.arch", "").replace("amd64", "x86_64");
        boolean linux = System.getProperty("os.name", "").equals("Linux");
        boolean otherLibrary = Files.exists(Path.of("/lib/libc.musl-" + processor + ".so.1"));
        return linux && !otherLibrary ? "Linux/" + processor : "-";
    }

    private static void initialize() throws IOException {
        try {
            if (!SQLiteJDBCLoader.initialize()) {
                throw new IOException("no SQLite library for this machine");
            }
        } catch (IOException e) {
            throw e;
        } catch (Exception e) {
            throw new IOException("the SQLite library can't be loaded", e);
        }
    }

    /** Deletes the folders of processes that are gone. */
    private static void clearLeftovers(Path temporary) {
        try (DirectoryStream<Path> folders = Files.newDirectoryStream(temporary, PREFIX + "*")) {
            for (Path folder : folders) {
                if (isLeft(folder)) {
                    clear(folder);
                }
            }
        } catch (IOException e) {
            // A folder that may not be listed has nothing of this user's to clear.
            return;
        }
    }

    private static boolean isLeft(Path folder) {
        Path file = folder.resolve(LOCK);
        if (!Files.isWritable(folder) || !Files.exists(file)) {
            return false;
        }
        try (FileChannel channel = FileChannel.open(file, StandardOpenOption.WRITE);
                @Nullable FileLock lock = tryLock(channel)) {
            return lock != null;
        } catch (IOException e) {
            return false;
        }
    }

    private static @Nullable FileLock tryLock(FileChannel channel) throws IOException {
        try {
            return channel.tryLock();
        } catch (OverlappingFileLockException e) {
            return null;
        }
    }

    private static void clear(Path folder) {
        try (DirectoryStream<Path> files = Files.newDirectoryStream(folder)) {
            for (Path file : files) {
                Files.deleteIfExists(file);
            }
        } catch (IOException e) {
            // Still loaded on a system that keeps it then: the driver deletes it at the end, the next process the rest.
            folder.toFile().deleteOnExit();
            return;
        }
        try {
            Files.deleteIfExists(folder);
        } catch (IOException e) {
            folder.toFile().deleteOnExit();
        }
    }
}
