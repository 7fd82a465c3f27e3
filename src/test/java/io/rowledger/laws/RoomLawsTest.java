package io.rowledger.laws;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The laws of the house: which room may know which, and what only one room may touch. */
class RoomLawsTest {
    /** Ground floor first: a room may import only rooms named before it. */
    private static final List<String> ROOMS = List.of(
            "units",
            "text",
            "finding",
            "stats",
            "parallel",
            "geo",
            "maps",
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
            "report.map",
            "report.rows",
            "report.review",
            "report.record",
            "report.compare",
            "report.season",
            "results",
            "export",
            "output",
            "batch",
            "cli");

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
        List<String> documents = List.of("rows", "review", "record", "compare", "season");
        for (String document : documents) {
            String[] others = documents.stream()
                    .filter(other -> !other.equals(document))
                    .map(other -> "io.rowledger.report." + other)
                    .toArray(String[]::new);
            noClasses()
                    .that()
                    .resideInAPackage("io.rowledger.report." + document)
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
                .resideOutsideOfPackages("io.rowledger.document..", "io.rowledger.report.map", "io.rowledger.export")
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
    void no_clock_no_default_locale_no_default_zone_no_unseeded_random_outside_cli() {
        noClasses()
                .that()
                .resideOutsideOfPackage("io.rowledger.cli..")
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
    void no_room_is_named_after_nothing() {
        noClasses()
                .should()
                .resideInAnyPackage("..util..", "..utils..", "..helper..", "..helpers..", "..misc..")
                .check(CLASSES);
    }
}
