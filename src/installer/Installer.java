import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Properties;
import java.util.stream.Stream;

/**
 * Builds what installs Rowledger on a machine without Java: a runtime of the modules it uses, an application image with a
 * class-data archive, and a package of the system it runs on. Started by {@code mvn -Pinstaller package}.
 *
 * <p>Arguments: the jar, the folder to build in, the folder of the sample logs, the version. On Debian the package is put
 * together by {@code dpkg-deb} alone, since {@code jpackage} would make a command-line tool depend on the desktop.
 */
public final class Installer {
    /** Modules that the jar names, and what it uses by name alone: TLS curves for signing and locales of the reports. */
    private static final String MODULES =
            "java.base,java.desktop,java.logging,java.management,java.naming,java.sql,java.xml,jdk.crypto.ec,jdk.httpserver,"
                    + "jdk.localedata,jdk.unsupported,jdk.zipfs";

    /** Parts of the desktop module that need X11 or a sound system; reports are drawn without either. */
    private static final String NOT_NEEDED =
            "**/libawt_xawt.so,**/libjawt.so,**/libsplashscreen.so,**/libjsound.so,**/src.zip,**.diz,**.debuginfo";

    private static final String ARCHIVE = "rowledger.jsa";

    private final Path jdk;
    private final Path jar;
    private final Path work;
    private final Path samples;
    private final String version;

    private Installer(Path jdk, Path jar, Path work, Path samples, String version) {
        this.jdk = jdk;
        this.jar = jar.toAbsolutePath();
        this.work = work.toAbsolutePath();
        this.samples = samples.toAbsolutePath();
        this.version = version;
    }

    public static void main(String[] args) throws Exception {
        Path jdk = newestJdk();
        System.out.println("JDK " + release(jdk) + " in " + jdk);
        new Installer(jdk, Path.of(args[0]), Path.of(args[1]), Path.of(args[2]), args[3]).build();
    }

    private void build() throws Exception {
        clear(work);
        Path app = Files.createDirectories(work.resolve("input")).resolve("rowledger.jar");
        Files.copy(jar, app);
        Path runtime = work.resolve("runtime");
        run(tool("jlink"), "--add-modules", MODULES, "--include-locales", "en,es", "--strip-debug", "--no-header-files",
                "--no-man-pages", "--exclude-files", NOT_NEEDED, "--output", runtime.toString());
        List<String> image = new ArrayList<>(List.of(tool("jpackage"), "--type", "app-image", "--name", "rowledger",
                "--app-version", version, "--input", app.getParent().toString(), "--main-jar", "rowledger.jar",
                "--runtime-image", runtime.toString(), "--dest", work.resolve("image").toString()));
        for (String option : OPTIONS) {
            image.add("--java-options");
            image.add(option);
        }
        if (isWindows()) {
            image.add("--win-console");
        }
        run(image.toArray(String[]::new));
        Path root = work.resolve("image").resolve(isMac() ? "rowledger.app" : "rowledger");
        archive(root);
        if (isDebian()) {
            debian(root);
        } else {
            String type = isWindows() ? "msi" : isMac() ? "dmg" : "rpm";
            run(tool("jpackage"), "--type", type, "--name", "rowledger", "--app-version", version, "--app-image",
                    root.toString(), "--vendor", "Rowledger", "--description", "Checks side-dress logs row by row",
                    "--dest", work.toString());
        }
    }

    /** Java options of a short run: the first compiler alone, sooner on loops, one thread that collects, classes from the archive. */
    private static final List<String> OPTIONS = List.of("-XX:TieredStopAtLevel=1", "-XX:Tier3BackEdgeThreshold=20000",
            "-XX:+UseSerialGC", "-XX:SharedArchiveFile=$APPDIR/" + ARCHIVE, "-Drowledger.launcher=installed",
            "--enable-native-access=ALL-UNNAMED");

    /**
     * Runs a report of a sample log once and keeps the classes that it loaded, linked. Java's ahead-of-time cache (JEP 514) was
     * tried on JDK 25 and takes more processor time than it saves in short runs: a small report 4.6 s against 3.8 s with the
     * archive, {@code inspect} 0.68 s against 0.49 s.
     */
    private void archive(Path root) throws Exception {
        Path app = find(root, "rowledger.jar").getParent();
        Path classes = work.resolve("classes.txt");
        List<String> call = new ArrayList<>(List.of(find(root, isWindows() ? "bin/java.exe" : "bin/java").toString()));
        for (String option : OPTIONS) {
            call.add(option.contains(ARCHIVE) ? "-XX:SharedArchiveFile=" + app.resolve(ARCHIVE) : option);
        }
        call.addAll(List.of("-cp", app.resolve("rowledger.jar").toString()));
        List<String> list = new ArrayList<>(call);
        list.removeIf(option -> option.contains(ARCHIVE));
        Path sample = samples.resolve("plugged-row");
        list.addAll(List.of("-XX:DumpLoadedClassList=" + classes, "io.rowledger.cli.Main", "report",
                sample.resolve("log.csv").toString(), "--rig", sample.resolve("rig.yaml").toString(), "--boundary",
                sample.resolve("boundary.geojson").toString(), "--quiet", "--out", work.resolve("trained").toString()));
        run(list.toArray(String[]::new));
        clear(work.resolve("trained"));
        call.addAll(List.of("-Xshare:dump", "-Xlog:disable", "-XX:SharedClassListFile=" + classes));
        run(call.toArray(String[]::new));
    }

    private void debian(Path root) throws Exception {
        Path tree = work.resolve("deb");
        Path opt = tree.resolve("opt/rowledger");
        Files.createDirectories(opt.getParent());
        Files.move(root, opt);
        Files.createDirectories(tree.resolve("usr/bin"));
        Files.createSymbolicLink(tree.resolve("usr/bin/rowledger"), Path.of("/opt/rowledger/bin/rowledger"));
        write(tree.resolve("usr/share/applications/rowledger.desktop"), """
                [Desktop Entry]
                Type=Application
                Name=Rowledger
                GenericName=Side-dress log review
                Comment=Check that every row of a side-dress bar got its rate
                Exec=/opt/rowledger/bin/rowledger open
                Icon=/opt/rowledger/lib/rowledger.png
                Terminal=true
                Categories=Science;
                """);
        write(tree.resolve("usr/share/doc/rowledger/copyright"), """
                Rowledger, Apache License 2.0 (/usr/share/common-licenses/Apache-2.0).
                The libraries inside and their licenses are listed in META-INF of /opt/rowledger/lib/app/rowledger.jar,
                those of the Java runtime in /opt/rowledger/lib/runtime/legal.
                """);
        write(tree.resolve("DEBIAN/control"), """
                Package: rowledger
                Version: %s
                Section: science
                Priority: optional
                Architecture: %s
                Depends: libc6, zlib1g
                Maintainer: Rowledger maintainers <maintainers@rowledger.invalid>
                Installed-Size: %d
                Description: checks side-dress logs row by row
                 Reads the GPS and flow log of a side-dress bar with a meter on every row,
                 rebuilds each row's strip, finds skips, overlaps and faulty rows, and
                 writes reports for the applicator, the landlord and the dealer.
                """.formatted(version, output("dpkg", "--print-architecture").strip(), size(tree) / 1024));
        // The folder belongs to every Debian but to no package, so that dpkg would remove it with the last one in it.
        Path after = tree.resolve("DEBIAN/postrm");
        write(after, "#!/bin/sh\nset -e\nmkdir -p /opt\n");
        Files.setPosixFilePermissions(after, PosixFilePermissions.fromString("rwxr-xr-x"));
        Path deb = work.resolve("rowledger_" + version + ".deb");
        run("dpkg-deb", "--root-owner-group", "-Zxz", "--build", tree.toString(), deb.toString());
        System.out.println(deb + ": " + Files.size(deb) / 1_000_000 + " MB");
    }

    private static void write(Path file, String text) throws IOException {
        Files.createDirectories(file.getParent());
        Files.writeString(file, text, StandardCharsets.UTF_8);
        Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("rw-r--r--"));
        for (Path folder = file.getParent(); folder.getNameCount() > 0 && !folder.endsWith("deb"); folder = folder.getParent()) {
            Files.setPosixFilePermissions(folder, PosixFilePermissions.fromString("rwxr-xr-x"));
        }
    }

    /** The JDK with the highest version that has jlink and jpackage: that of this process, or one beside it. */
    private static Path newestJdk() throws IOException {
        Path own = Path.of(System.getProperty("java.home"));
        List<Path> homes = new ArrayList<>(List.of(own));
        Path beside = own.getParent();
        if (beside != null && Files.isDirectory(beside)) {
            try (Stream<Path> others = Files.list(beside)) {
                homes.addAll(others.sorted().toList());
            }
        }
        Path newest = own;
        for (Path home : homes) {
            Path bin = home.resolve("bin");
            boolean whole = Files.isExecutable(bin.resolve(isWindows() ? "jpackage.exe" : "jpackage"))
                    && (Files.isDirectory(home.resolve("jmods")) || release(home) >= 24);
            if (whole && release(home) > release(newest)) {
                newest = home;
            }
        }
        return newest;
    }

    /** The feature version of a JDK; 0 where it tells none. */
    private static int release(Path jdk) {
        Properties release = new Properties();
        try (var in = Files.newBufferedReader(jdk.resolve("release"))) {
            release.load(in);
        } catch (IOException e) {
            return 0;
        }
        String version = release.getProperty("JAVA_VERSION", "0").replace("\"", "");
        return Integer.parseInt(version.split("[.+-]")[0]);
    }

    private String tool(String name) {
        return jdk.resolve("bin").resolve(name).toString();
    }

    private static Path find(Path root, String name) throws IOException {
        try (Stream<Path> files = Files.walk(root)) {
            return files.filter(file -> file.endsWith(name)).findFirst().orElseThrow();
        }
    }

    private static long size(Path root) throws IOException {
        try (Stream<Path> files = Files.walk(root)) {
            return files.filter(file -> Files.isRegularFile(file)).mapToLong(file -> file.toFile().length()).sum();
        }
    }

    private static void run(String... call) throws Exception {
        System.out.println(String.join(" ", call));
        int status = new ProcessBuilder(call).inheritIO().start().waitFor();
        if (status != 0) {
            throw new IOException(call[0] + " ended with status " + status);
        }
    }

    private static String output(String... call) throws IOException {
        return new String(new ProcessBuilder(call).start().getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    }

    private static void clear(Path folder) throws IOException {
        if (!Files.exists(folder)) {
            return;
        }
        Files.walkFileTree(folder, new SimpleFileVisitor<>() {
            @Override
            public FileVisitResult visitFile(Path file, BasicFileAttributes attributes) throws IOException {
                Files.delete(file);
                return FileVisitResult.CONTINUE;
            }

            @Override
            public FileVisitResult postVisitDirectory(Path inner, IOException e) throws IOException {
                Files.delete(inner);
                return FileVisitResult.CONTINUE;
            }
        });
    }

    private static boolean isWindows() {
        return System.getProperty("os.name").toLowerCase(Locale.ROOT).contains("win");
    }

    private static boolean isMac() {
        return System.getProperty("os.name").toLowerCase(Locale.ROOT).startsWith("mac");
    }

    private static boolean isDebian() {
        return Files.exists(Path.of("/usr/bin/dpkg-deb"));
    }
}
