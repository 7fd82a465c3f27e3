package io.rowledger.faults;

import java.io.FilterOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.net.URI;
import java.nio.channels.FileChannel;
import java.nio.channels.SeekableByteChannel;
import java.nio.file.AccessMode;
import java.nio.file.CopyOption;
import java.nio.file.DirectoryStream;
import java.nio.file.FileStore;
import java.nio.file.FileSystem;
import java.nio.file.FileSystemException;
import java.nio.file.FileSystems;
import java.nio.file.LinkOption;
import java.nio.file.OpenOption;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.BasicFileAttributes;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.FileAttributeView;
import java.nio.file.spi.FileSystemProvider;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.atomic.AtomicInteger;
import org.jspecify.annotations.Nullable;

/**
 * A file system over the machine's own that counts every change (folder made, file opened, written or closed, renamed,
 * deleted) and lets one of them go wrong.
 */
public final class FaultyFiles extends FileSystemProvider {
    /** What goes wrong at the chosen change. */
    public enum Fault {
        NONE,
        /** The process dies before the change: neither it nor anything after it happens. */
        KILL,
        /** The process is halted before the change: the virtual machine ends without running anything more. */
        HALT,
        /** This change fails and all later ones work. */
        FAIL_ONCE,
        /** No byte can be written from here on; renaming and deleting work. */
        DISK_FULL,
        /** Nothing can be changed from here on. */
        READ_ONLY
    }

    /** Exit status of a process that was halted: that of one ended by SIGKILL. */
    public static final int HALTED = 137;

    /** A process that died at a change; also thrown for every change that its threads try afterwards. */
    public static final class Killed extends Error {
        private static final long serialVersionUID = 1L;
    }

    private final FileSystemProvider real;
    /** Only changes of paths below it count. */
    private final String under;

    private final boolean onlyRenames;
    private final String scheme;
    private final FaultyFileSystem faulty;
    private final Fault fault;
    private final int at;
    private final AtomicInteger changes = new AtomicInteger();

    /** The fault comes at this change, from 0. */
    public FaultyFiles(Fault fault, int at) {
        this.real = FileSystems.getDefault().provider();
        this.faulty = new FaultyFileSystem(this, FileSystems.getDefault());
        this.under = "";
        this.onlyRenames = false;
        this.scheme = "faulty";
        this.fault = fault;
        this.at = at;
    }

    /**
     * As the default file system of a process that dies: {@code -Djava.nio.file.spi.DefaultFileSystemProvider} names this class,
     * {@code faults.under} the folder whose changes count, {@code faults.at} the one at which the process is halted without a
     * chance to clear anything, {@code faults.renames} is true where renames alone count.
     */
    public FaultyFiles(FileSystemProvider real) {
        this.real = real;
        this.faulty = new FaultyFileSystem(this, real.getFileSystem(URI.create("file:///")));
        this.under = System.getProperty("faults.under", "");
        this.onlyRenames = Boolean.getBoolean("faults.renames");
        this.scheme = "file";
        this.fault = Fault.HALT;
        this.at = Integer.getInteger("faults.at", Integer.MAX_VALUE);
    }

    /** A path of the machine, seen through this file system. */
    public Path path(Path path) {
        return faulty.path(path.toAbsolutePath());
    }

    /** Changes so far, counting the one that went wrong. */
    public int changes() {
        return changes.get();
    }

    private void change(Path path, boolean writes) throws IOException {
        change(path, writes, false);
    }

    private void change(Path path, boolean writes, boolean renames) throws IOException {
        if (!path.toString().startsWith(under) || (onlyRenames && !renames)) {
            return;
        }
        int now = changes.getAndIncrement();
        boolean wrong =
                switch (fault) {
                    case NONE -> false;
                    case FAIL_ONCE -> now == at;
                    case DISK_FULL -> now >= at && writes;
                    case HALT, KILL, READ_ONLY -> now >= at;
                };
        if (wrong && fault == Fault.HALT) {
            Runtime.getRuntime().halt(HALTED);
        }
        if (wrong && fault == Fault.KILL) {
            throw new Killed();
        }
        if (wrong) {
            String reason = fault == Fault.DISK_FULL ? "No space left on device" : "Read-only file system";
            throw new FileSystemException(path.toString(), null, reason);
        }
    }

    static Path real(Path path) {
        return ((FaultyPath) path).path;
    }

    @Override
    public String getScheme() {
        return scheme;
    }

    @Override
    public FileSystem newFileSystem(URI uri, Map<String, ?> env) {
        throw new UnsupportedOperationException();
    }

    @Override
    public FileSystem getFileSystem(URI uri) {
        return faulty;
    }

    @Override
    public Path getPath(URI uri) {
        return faulty.path(real.getPath(uri));
    }

    @Override
    public OutputStream newOutputStream(Path path, OpenOption... options) throws IOException {
        change(path, true);
        return new FilterOutputStream(real.newOutputStream(real(path), options)) {
            @Override
            public void write(byte[] bytes, int from, int length) throws IOException {
                change(path, true);
                out.write(bytes, from, length);
            }

            @Override
            public void close() throws IOException {
                // A process that dies closes its files too.
                out.close();
            }
        };
    }

    @Override
    public SeekableByteChannel newByteChannel(Path path, Set<? extends OpenOption> options, FileAttribute<?>... with)
            throws IOException {
        if (options.contains(StandardOpenOption.WRITE)) {
            change(path, true);
        }
        return real.newByteChannel(real(path), options, with);
    }

    @Override
    public FileChannel newFileChannel(Path path, Set<? extends OpenOption> options, FileAttribute<?>... with)
            throws IOException {
        if (options.contains(StandardOpenOption.WRITE)) {
            change(path, true);
        }
        return real.newFileChannel(real(path), options, with);
    }

    @Override
    public DirectoryStream<Path> newDirectoryStream(Path folder, DirectoryStream.Filter<? super Path> filter)
            throws IOException {
        List<Path> found = new ArrayList<>();
        try (DirectoryStream<Path> list = real.newDirectoryStream(real(folder), path -> true)) {
            for (Path path : list) {
                Path seen = faulty.path(path);
                if (filter.accept(seen)) {
                    found.add(seen);
                }
            }
        }
        return new DirectoryStream<>() {
            @Override
            public java.util.Iterator<Path> iterator() {
                return found.iterator();
            }

            @Override
            public void close() {}
        };
    }

    @Override
    public void createDirectory(Path folder, FileAttribute<?>... with) throws IOException {
        // Files.createDirectories tries to make folders that are there.
        if (!isThere(folder)) {
            change(folder, true);
        }
        real.createDirectory(real(folder), with);
    }

    private boolean isThere(Path path) {
        try {
            real.checkAccess(real(path));
            return true;
        } catch (IOException e) {
            return false;
        }
    }

    @Override
    public void delete(Path path) throws IOException {
        change(path, false);
        real.delete(real(path));
    }

    @Override
    public void copy(Path from, Path to, CopyOption... options) throws IOException {
        change(to, true);
        real.copy(real(from), real(to), options);
    }

    @Override
    public void move(Path from, Path to, CopyOption... options) throws IOException {
        change(to, false, true);
        real.move(real(from), real(to), options);
    }

    @Override
    public void createSymbolicLink(Path link, Path target, FileAttribute<?>... with) throws IOException {
        change(link, true);
        real.createSymbolicLink(real(link), real(target), with);
    }

    @Override
    public Path readSymbolicLink(Path link) throws IOException {
        return faulty.path(real.readSymbolicLink(real(link)));
    }

    @Override
    public boolean isSameFile(Path a, Path b) throws IOException {
        return real.isSameFile(real(a), real(b));
    }

    @Override
    public boolean isHidden(Path path) throws IOException {
        return real.isHidden(real(path));
    }

    @Override
    public FileStore getFileStore(Path path) throws IOException {
        return real.getFileStore(real(path));
    }

    @Override
    public void checkAccess(Path path, AccessMode... modes) throws IOException {
        real.checkAccess(real(path), modes);
    }

    @Override
    public <V extends FileAttributeView> @Nullable V getFileAttributeView(
            Path path, Class<V> type, LinkOption... options) {
        return real.getFileAttributeView(real(path), type, options);
    }

    @Override
    public <A extends BasicFileAttributes> A readAttributes(Path path, Class<A> type, LinkOption... options)
            throws IOException {
        return real.readAttributes(real(path), type, options);
    }

    @Override
    public Map<String, Object> readAttributes(Path path, String attributes, LinkOption... options) throws IOException {
        return real.readAttributes(real(path), attributes, options);
    }

    @Override
    public void setAttribute(Path path, String attribute, Object value, LinkOption... options) throws IOException {
        change(path, false);
        real.setAttribute(real(path), attribute, value, options);
    }
}
