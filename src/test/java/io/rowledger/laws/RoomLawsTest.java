package io.rowledger.laws;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.tngtech.archunit.core.domain.Dependency;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** The laws of the house: which room may know which, and what only one room may touch. */
@Tag("slow")
class RoomLawsTest {
    /** Ground floor first: a room may import only rooms named before it. */
    private static final List<String> ROOMS = List.of(
            "units",
            "text",
            "finding",
            "stats",
            "digest",
            "parallel",
            "geo",
            "maps",
            "backdrop",
            "log.source",
            "log.header",
            "log.time",
            "log.taskdata",
            "log.read",
            "log.clean",
            "log",
            "rig",
            "track",
            "strip",
            "rate",
            "field",
            "coverage.strips",
            "coverage.grid",
            "coverage.sections",
            "coverage",
            "zones",
            "setback",
            "uncertainty",
            "diagnose.signal",
            "diagnose.detect",
            "diagnose",
            "diagnose.setup",
            "whatif",
            "analysis",
            "document.text",
            "document.chart",
            "document.pdf",
            "report.common",
            "report.findings",
            "report.sections",
            "report.answer",
            "report.map",
            "report.rows",
            "report.review",
            "report.record",
            "report.compare",
            "report.season",
            "results",
            "export",
            "page",
            "output",
            "batch",
            "workbench",
            "cli");

    /** Packages that may read the whole result of an analysis. */
    private static final Set<String> WHOLE_RESULT = Set.of("analysis", "page", "output", "batch", "workbench", "cli");

    /** Elsewhere these alone read it and hand on what each file needs. */
    private static final Map<String, Set<String>> ENTRIES = Map.of(
            "results", Set.of("NitrogenRecordJson", "SetupJson", "SummaryJson"),
            "export", Set.of("FieldMap"));

    private static final Set<String> DOCUMENTS =
            Set.of("report.rows", "report.review", "report.record", "report.compare", "report.season");

    private static final Map<String, Set<String>> EXPORTED = new TreeMap<>();

    private static final JavaClasses CLASSES = new ClassFileImporter()
            .withImportOption(new ImportOption.DoNotIncludeTests())
            .importPackages("io.rowledger");

    @Test
    void the_import_found_the_product() {
        assertTrue(CLASSES.size() > 20, "only " + CLASSES.size() + " classes: the laws below would hold of nothing");
    }

    @Test
    void packages_have_no_cycles() {
        slices().matching("io.rowledger.(**)").should().beFreeOfCycles().check(CLASSES);
    }

    @Test
    void a_package_imports_only_packages_above_it() {
        for (int i = 0; i < ROOMS.size() - 1; i++) {
            String[] below = ROOMS.subList(i + 1, ROOMS.size()).stream()
                    .map(room -> "io.rowledger." + room)
                    .toArray(String[]::new);
            noClasses()
                    .that()
                    .resideInAPackage("io.rowledger." + ROOMS.get(i))
                    .should()
                    .dependOnClassesThat()
                    .resideInAnyPackage(below)
                    .check(CLASSES);
        }
    }

    @Test
    void no_document_imports_another() {
        for (String document : DOCUMENTS) {
            String[] others = DOCUMENTS.stream()
                    .filter(other -> !other.equals(document))
                    .map(other -> "io.rowledger." + other)
                    .toArray(String[]::new);
            noClasses()
                    .that()
                    .resideInAPackage("io.rowledger." + document)
                    .should()
                    .dependOnClassesThat()
                    .resideInAnyPackage(others)
                    .check(CLASSES);
        }
    }

    @Test
    void every_class_lives_in_a_known_room() {
        String[] rooms = ROOMS.stream().map(room -> "io.rowledger." + room).toArray(String[]::new);
        classes().should().resideInAnyPackage(rooms).check(CLASSES);
    }

    @Test
    void only_documents_maps_and_exports_draw() {
        noClasses()
                .that()
                .resideOutsideOfPackages(
                        "io.rowledger.backdrop",
                        "io.rowledger.document..",
                        "io.rowledger.report.map",
                        "io.rowledger.export")
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage(
                        "com.lowagie..", "org.openpdf..", "org.jfree..", "java.awt..", "org.xhtmlrenderer..")
                .check(CLASSES);
    }

    @Test
    void only_cli_parses_the_command_line_prints_and_exits() {
        noClasses()
                .that()
                .resideOutsideOfPackage("io.rowledger.cli..")
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage("picocli..")
                .orShould()
                .accessField(System.class, "out")
                .orShould()
                .accessField(System.class, "err")
                .orShould()
                .callMethod(System.class, "exit", int.class)
                .check(CLASSES);
    }

    @Test
    void no_clock_no_default_locale_no_default_zone_no_unseeded_random_outside_cli_and_workbench() {
        noClasses()
                .that()
                .resideOutsideOfPackages("io.rowledger.cli..", "io.rowledger.workbench..")
                .should()
                .callMethod(System.class, "currentTimeMillis")
                .orShould()
                .callMethod(System.class, "nanoTime")
                .orShould()
                .callMethod(java.time.Instant.class, "now")
                .orShould()
                .callMethod(java.time.LocalDate.class, "now")
                .orShould()
                .callMethod(java.time.LocalDateTime.class, "now")
                .orShould()
                .callMethod(java.time.ZonedDateTime.class, "now")
                .orShould()
                .callMethod(java.time.ZoneId.class, "systemDefault")
                .orShould()
                .callMethod(java.util.Locale.class, "getDefault")
                .orShould()
                .callMethod(java.util.TimeZone.class, "getDefault")
                .orShould()
                .callMethod(String.class, "format", String.class, Object[].class)
                .orShould()
                .callMethod(String.class, "formatted", Object[].class)
                .orShould()
                .callMethod(String.class, "toLowerCase")
                .orShould()
                .callMethod(String.class, "toUpperCase")
                .orShould()
                .callConstructor(java.util.Random.class)
                .orShould()
                .callMethod(Math.class, "random")
                .check(CLASSES);
    }

    @Test
    void only_the_workbench_serves_and_nobody_calls_out() {
        noClasses()
                .that()
                .resideOutsideOfPackage("io.rowledger.workbench..")
                .should()
                .dependOnClassesThat()
                .resideInAPackage("com.sun.net.httpserver..")
                .check(CLASSES);
        noClasses()
                .should()
                .dependOnClassesThat()
                .haveFullyQualifiedName("java.net.Socket")
                .orShould()
                .dependOnClassesThat()
                .haveFullyQualifiedName("java.net.URLConnection")
                .orShould()
                .dependOnClassesThat()
                .resideInAPackage("java.net.http..")
                .check(CLASSES);
    }

    @Test
    void no_room_is_named_after_nothing() {
        noClasses()
                .should()
                .resideInAnyPackage("..util..", "..utils..", "..helper..", "..helpers..", "..misc..")
                .check(CLASSES);
    }

    @Test
    void only_types_named_in_package_info_are_used_from_outside() {
        List<String> broken = new ArrayList<>();
        for (JavaClass from : CLASSES) {
            for (Dependency use : from.getDirectDependenciesFromSelf()) {
                JavaClass to = topLevel(use.getTargetClass());
                String room = to.getPackageName();
                if (!room.startsWith("io.rowledger") || room.equals(from.getPackageName())) {
                    continue;
                }
                Set<String> exported = EXPORTED.computeIfAbsent(room, name -> {
                    Set<String> named = ExportedTypes.of(name);
                    return named == null ? Set.of() : named;
                });
                if (!exported.contains(to.getSimpleName())) {
                    broken.add(room + " doesn't name " + to.getSimpleName() + ", which "
                            + topLevel(from).getFullName() + " uses");
                }
            }
        }
        assertEquals(List.of(), broken.stream().distinct().sorted().toList());
    }

    @Test
    void package_info_names_only_types_that_are_there() {
        Set<String> packages = CLASSES.stream().map(JavaClass::getPackageName).collect(Collectors.toSet());
        for (String name : packages) {
            Set<String> named = ExportedTypes.of(name);
            Set<String> there = CLASSES.stream()
                    .filter(c -> c.getPackageName().equals(name))
                    .map(JavaClass::getSimpleName)
                    .collect(Collectors.toSet());
            if (named != null) {
                assertTrue(there.containsAll(named), name + " names types it doesn't have: " + named);
            }
        }
    }

    /** More than four classes that can only be understood together are one class too many. */
    @Test
    void no_cycle_inside_a_package_has_more_than_four_classes() {
        Map<String, Set<String>> uses = new TreeMap<>();
        for (JavaClass from : CLASSES) {
            Set<String> targets = uses.computeIfAbsent(topLevel(from).getFullName(), name -> new TreeSet<>());
            for (Dependency use : from.getDirectDependenciesFromSelf()) {
                JavaClass to = topLevel(use.getTargetClass());
                if (to.getPackageName().equals(from.getPackageName())) {
                    targets.add(to.getFullName());
                }
            }
        }
        List<Set<String>> large =
                Cycles.of(uses).stream().filter(cycle -> cycle.size() > 4).toList();
        assertEquals(List.of(), large);
    }

    /** The whole result goes only to what saves it, writes it and hands it to a document. */
    @Test
    void the_analysis_goes_no_further_than_a_documents_entry_class() {
        Map<String, Set<String>> readers = new TreeMap<>();
        for (JavaClass from : CLASSES) {
            boolean reads = from.getDirectDependenciesFromSelf().stream()
                    .anyMatch(use -> use.getTargetClass().getFullName().equals("io.rowledger.analysis.Analysis"));
            String room = from.getPackageName().replaceFirst("^io\\.rowledger\\.", "");
            if (reads && !WHOLE_RESULT.contains(room)) {
                readers.computeIfAbsent(room, name -> new TreeSet<>())
                        .add(topLevel(from).getSimpleName());
            }
        }
        readers.entrySet()
                .removeIf(entry ->
                        (DOCUMENTS.contains(entry.getKey()) && entry.getValue().size() == 1)
                                || entry.getValue().equals(ENTRIES.get(entry.getKey())));
        assertEquals(Map.of(), readers);
    }

    private static JavaClass topLevel(JavaClass type) {
        JavaClass top = type.getBaseComponentType();
        while (top.getEnclosingClass().isPresent()) {
            top = top.getEnclosingClass().get();
        }
        return top;
    }
}
