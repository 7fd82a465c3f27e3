package io.rowledger.fuzz;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.stream.Stream;

/**
 * What is handed to a reader: some files, and the one of them that is named; a folder where that is empty.
 *
 * @param from what it was made of
 * @param named the file to name, or empty for their folder
 * @param files bytes by name
 */
record Input(String from, String named, Map<String, byte[]> files) {
    /** One file. */
    static Input of(String from, String named, byte[] bytes) {
        return new Input(from, named, Map.of(named, bytes));
    }

    Input with(String name, byte[] bytes) {
        Map<String, byte[]> all = new LinkedHashMap<>(files);
        all.put(name, bytes);
        return new Input(from, named, all);
    }

    /** Puts the files into an empty folder. */
    Path writeTo(Path folder) {
        try {
            Files.createDirectories(folder);
            for (Map.Entry<String, byte[]> file : files.entrySet()) {
                Files.write(folder.resolve(file.getKey()), file.getValue());
            }
            return named.isEmpty() ? folder : folder.resolve(named);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Takes the files away again; false where one was changed or another one is there. */
    boolean takeFrom(Path folder) {
        try (Stream<Path> list = Files.list(folder)) {
            boolean same = true;
            int found = 0;
            for (Path path : list.toList()) {
                byte[] bytes = files.get(path.getFileName().toString());
                same &= bytes != null && java.util.Arrays.equals(bytes, Files.readAllBytes(path));
                found++;
                Files.delete(path);
            }
            return same && found == files.size();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
