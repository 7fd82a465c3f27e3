package io.rowledger.faults;

import java.io.IOException;
import java.net.URI;
import java.nio.file.FileSystem;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.WatchService;
import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/** A path of the machine in this file system. */
final class FaultyPath implements Path {
    /** The machine's own path. */
    final Path path;

    private final FaultyFileSystem system;

    FaultyPath(FaultyFileSystem system, Path path) {
        this.system = system;
        this.path = path;
    }

    private Path seen(Path other) {
        return new FaultyPath(system, other);
    }

    private @Nullable Path seenOrNull(@Nullable Path other) {
        return other == null ? null : new FaultyPath(system, other);
    }

    private Path plain(Path other) {
        return other instanceof FaultyPath faultyPath ? faultyPath.path : other;
    }

    @Override
    public FileSystem getFileSystem() {
        return system;
    }

    @Override
    public boolean isAbsolute() {
        return path.isAbsolute();
    }

    @Override
    public @Nullable Path getRoot() {
        return seenOrNull(path.getRoot());
    }

    @Override
    public @Nullable Path getFileName() {
        return seenOrNull(path.getFileName());
    }

    @Override
    public @Nullable Path getParent() {
        return seenOrNull(path.getParent());
    }

    @Override
    public int getNameCount() {
        return path.getNameCount();
    }

    @Override
    public Path getName(int index) {
        return seen(path.getName(index));
    }

    @Override
    public Path subpath(int from, int to) {
        return seen(path.subpath(from, to));
    }

    @Override
    public boolean startsWith(Path other) {
        return path.startsWith(plain(other));
    }

    @Override
    public boolean endsWith(Path other) {
        return path.endsWith(plain(other));
    }

    @Override
    public Path normalize() {
        return seen(path.normalize());
    }

    @Override
    public Path resolve(Path other) {
        return seen(path.resolve(plain(other)));
    }

    @Override
    public Path relativize(Path other) {
        return seen(path.relativize(plain(other)));
    }

    @Override
    public URI toUri() {
        return path.toUri();
    }

    @Override
    public Path toAbsolutePath() {
        return seen(path.toAbsolutePath());
    }

    @Override
    public Path toRealPath(LinkOption... options) throws IOException {
        return seen(path.toRealPath(options));
    }

    @Override
    public java.nio.file.WatchKey register(
            WatchService watcher, java.nio.file.WatchEvent.Kind<?>[] events, java.nio.file.WatchEvent.Modifier... m) {
        throw new UnsupportedOperationException();
    }

    @Override
    public int compareTo(Path other) {
        return path.compareTo(plain(other));
    }

    @Override
    public boolean equals(@Nullable Object other) {
        return other instanceof FaultyPath faultyPath && path.equals(faultyPath.path);
    }

    @Override
    public int hashCode() {
        return Arrays.hashCode(new Object[] {path});
    }

    @Override
    public java.io.File toFile() {
        return new java.io.File(path.toString());
    }

    @Override
    public String toString() {
        return path.toString();
    }
}
