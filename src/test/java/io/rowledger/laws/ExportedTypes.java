package io.rowledger.laws;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** Which types of a package others may use: those that its {@code package-info.java} names behind "For other packages:". */
final class ExportedTypes {
    private static final Path SOURCES = Path.of("src/main/java");
    private static final Pattern LIST = Pattern.compile("For other packages:(.*?)(?:<p>|<pre>|\\*/)", Pattern.DOTALL);
    private static final Pattern LINK = Pattern.compile("\\{@link\\s+([\\w.]+)");

    private ExportedTypes() {}

    /** The simple names that the package names, or null where its package-info has no list. */
    static @Nullable Set<String> of(String packageName) {
        Path info = SOURCES.resolve(packageName.replace('.', '/')).resolve("package-info.java");
        String text;
        try {
            text = Files.readString(info);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        Matcher list = LIST.matcher(text);
        if (!list.find()) {
            return null;
        }
        Set<String> names = new HashSet<>();
        Matcher link = LINK.matcher(list.group(1));
        while (link.find()) {
            names.add(link.group(1).replaceFirst("^.*\\.(?=[A-Z])", ""));
        }
        return names;
    }
}
