package io.rowledger.batch;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeFalse;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import io.rowledger.finding.UnusableInputException;
import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.List;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What of a folder becomes which job, layout by layout; expected jobs are what the guide promises. */
class BatchFolderTest {
    static final String RIG = """
            rig:
              name: Bar
              antenna: {ahead_of_axle: 1 m, right_of_center: 0 m}
              axle_to_hitch: 1 m
              hitch: mounted
              hitch_to_drop: 2 m
              bar_right_of_center: 0 m
            rows: {count: 6, spacing: 30 in, outer_share: 1}
            products:
              uan: {name: UAN, density: 11.06 lb/gal, analysis: 32-0-0, target: 42 gal/ac, flow_lag: 0 s}
            """;

    @TempDir
    private Path temporary;

    private Path season;

    @BeforeEach
    void a_season() throws IOException {
        season = Files.createDirectory(temporary.resolve("season"));
    }

    private Path put(String name) throws IOException {
        Path file = season.resolve(name);
        Files.createDirectories(file.getParent());
        String file1 = file.getFileName().toString();
        return Files.writeString(file, file1.startsWith("rig") ? RIG : "of " + name);
    }

    private List<FieldJob> jobs() {
        return jobs(JobGrouping.UNSAID);
    }

    private List<FieldJob> jobs(JobGrouping each) {
        return BatchFolder.jobs(season, null, each, temporary.resolve("out"));
    }

    private static List<String> names(List<FieldJob> jobs) {
        return jobs.stream().map(FieldJob::name).toList();
    }

    private static FieldJob job(List<FieldJob> jobs, String name) {
        return jobs.stream().filter(job -> job.name().equals(name)).findFirst().orElseThrow();
    }

    private static String problem(FieldJob job) {
        assertNotNull(job.problem(), job.how());
        assertNull(job.files());
        return job.problem().getMessage();
    }

    @Test
    void task_data_is_a_log_as_a_folder_as_a_zip_and_with_the_rig_file_beside_it() throws IOException {
        put("rig.yaml");
        put("north/TASKDATA/TASKDATA.XML");
        put("north/TASKDATA/TLG00001.BIN");
        put("north/boundary.geojson");
        put("hill/taskdata.xml");
        put("hill/TLG00001.bin");
        put("hill/TLG00001.xml");
        put("hill/rig.yaml");
        Path zip = Files.createDirectories(season.resolve("creek")).resolve("card.zip");
        try (ZipOutputStream out = new ZipOutputStream(Files.newOutputStream(zip))) {
            out.putNextEntry(new ZipEntry("TASKDATA/TASKDATA.XML"));
            out.closeEntry();
        }
        List<FieldJob> jobs = jobs();
        assertEquals(List.of("creek", "hill", "north"), names(jobs));
        assertEquals(List.of(zip), jobs.get(0).files().logs());
        assertEquals(List.of(season.resolve("hill")), jobs.get(1).files().logs());
        assertEquals(season.resolve("hill/rig.yaml"), jobs.get(1).files().rig());
        assertEquals(
                List.of(season.resolve("north/TASKDATA")), jobs.get(2).files().logs());
        assertNotNull(jobs.get(2).files().boundary());
    }

    @Test
    void a_folder_of_logs_is_one_job_with_what_lies_beside_and_the_rig_file_above() throws IOException {
        Path rig = put("rig.yaml");
        Path a = put("two-oaks/north/a.csv");
        Path b = put("two-oaks/north/B.CSV.GZ");
        Path boundary = put("two-oaks/north/Boundary.KML");
        Path plan = put("two-oaks/north/prescription.geojson");
        Path wells = put("two-oaks/keep_outs.geojson");
        put("two-oaks/north/notes.pdf");
        Path own = put("hill/rig.yml");
        put("hill/log.tsv");
        List<FieldJob> jobs = jobs();
        assertEquals(List.of("hill", "two-oaks/north"), names(jobs));
        FieldJob north = jobs.get(1);
        assertEquals(List.of(b, a), north.files().logs());
        assertEquals(rig, north.files().rig());
        assertEquals(boundary, north.files().boundary());
        assertEquals(plan, north.files().prescription());
        assertEquals(wells, north.files().keepOut());
        assertEquals(
                "2 logs as one job, rig.yaml of the folder above (season), Boundary.KML, prescription.geojson, "
                        + "keep_outs.geojson of the folder above (two-oaks). Not used: notes.pdf.",
                north.how());
        assertEquals(own, jobs.get(0).files().rig());
        assertEquals("1 log, rig.yml, no boundary.", jobs.get(0).how());
    }

    @Test
    void logs_side_by_side_in_the_folder_itself_are_asked_about_until_it_is_said_what_they_are() throws IOException {
        put("rig.yaml");
        put("north.csv");
        put("hill.csv.gz");
        List<FieldJob> asked = jobs();
        assertEquals(List.of("season"), names(asked));
        assertEquals(
                season
                        + ": found 2 logs beside one another in the folder handed in: one field, or a field each; expected a"
                        + " folder for each field, with all logs of that field's job in it and no other folder of logs. Hint:"
                        + " move them so, or say how it is meant: --each folder makes every folder of logs one job,"
                        + " --each log every log.",
                problem(asked.get(0)));
        assertEquals(List.of("hill", "north"), names(jobs(JobGrouping.LOG)));
        assertEquals(1, jobs(JobGrouping.LOG).get(0).files().logs().size());
        assertEquals(List.of("season"), names(jobs(JobGrouping.FOLDER)));
        assertEquals(2, jobs(JobGrouping.FOLDER).get(0).files().logs().size());
    }

    @Test
    void a_log_beside_folders_of_logs_is_asked_about_and_the_folders_are_done() throws IOException {
        put("rig.yaml");
        put("stray.csv");
        put("north/log.csv");
        List<FieldJob> jobs = jobs();
        assertEquals(List.of("north", "season"), names(jobs));
        assertNotNull(jobs.get(0).files());
        assertTrue(problem(jobs.get(1)).contains("found a log (stray.csv) beside a folder with logs (north)"));
    }

    @Test
    void logs_in_a_field_and_in_a_folder_of_it_are_asked_about_together() throws IOException {
        put("rig.yaml");
        put("north/log.csv");
        put("north/june/log.csv");
        put("hill/log.csv");
        List<FieldJob> jobs = jobs();
        assertEquals(List.of("hill", "north"), names(jobs));
        assertTrue(problem(jobs.get(1)).contains("found a log (log.csv) beside a folder with logs (north/june)"));
        // Each with results of its own, none inside another's.
        assertEquals(List.of("hill", "north/june", "north/north"), names(jobs(JobGrouping.FOLDER)));
    }

    @Test
    void a_boundary_above_one_job_is_its_and_above_two_is_asked_about() throws IOException {
        put("rig.yaml");
        Path boundary = put("north/boundary.geojson");
        put("north/logs/a.csv");
        put("hill/log.csv");
        assertEquals(boundary, job(jobs(), "north/logs").files().boundary());
        put("north/more/b.csv");
        String problem = problem(job(jobs(), "north/logs"));
        assertTrue(problem.startsWith(boundary + ": found one boundary file for 2 jobs; expected"), problem);
        assertNotNull(job(jobs(), "hill").files());
        Path own = put("north/more/boundary.geojson");
        assertEquals(own, job(jobs(), "north/more").files().boundary());
        assertEquals(boundary, job(jobs(), "north/logs").files().boundary());
    }

    @Test
    void two_boundaries_are_asked_about_but_the_parts_of_a_shapefile_are_one() throws IOException {
        put("rig.yaml");
        put("north/log.csv");
        Path shp = put("north/boundary.shp");
        put("north/boundary.dbf");
        put("north/boundary.prj");
        assertEquals(shp, jobs().get(0).files().boundary());
        assertEquals(
                "1 log, rig.yaml of the folder above (season), boundary.shp.",
                jobs().get(0).how());
        put("north/boundary.geojson");
        assertTrue(problem(jobs().get(0)).contains("found both boundary.geojson and boundary.shp"));
    }

    @Test
    void a_rig_file_that_names_a_field_is_not_for_two_jobs() throws IOException {
        Path rig = put("rig.yaml");
        Files.writeString(rig, RIG + "job: {field: North bottom}\n");
        put("north/log.csv");
        assertNotNull(jobs().get(0).files());
        put("hill/log.csv");
        String problem = problem(jobs().get(0));
        assertTrue(problem.startsWith(rig + ":job.field: found the field \"North bottom\" for 2 jobs;"), problem);
    }

    @Test
    void a_field_without_a_rig_file_fails_alone_and_one_given_is_for_those() throws IOException {
        put("north/log.csv");
        Path own = put("hill/rig.yaml");
        put("hill/log.csv");
        assertTrue(problem(job(jobs(), "north")).contains("found no rig.yaml beside the logs or above them"));
        assertEquals(own, job(jobs(), "hill").files().rig());
        Path usual = Files.writeString(temporary.resolve("bar.yaml"), RIG);
        List<FieldJob> jobs = BatchFolder.jobs(season, usual, JobGrouping.UNSAID, temporary.resolve("out"));
        assertEquals(usual, job(jobs, "north").files().rig());
        assertTrue(job(jobs, "north").how().contains("bar.yaml given with --rig"));
        assertEquals(own, job(jobs, "hill").files().rig());
        Files.writeString(own, "rig: {nme: x}");
        assertTrue(problem(job(jobs(), "hill")).startsWith(own.toString()));
    }

    @Test
    void results_hidden_files_and_maps_in_a_zip_are_no_logs() throws IOException {
        put("rig.yaml");
        put("north/log.csv");
        put("north/.~lock.log.csv");
        put(".trash/log.csv");
        put("old-results/summary.json");
        put("old-results/rows.csv");
        put("old-results/layers/x.csv");
        Path zip = season.resolve("hill/field.zip");
        Files.createDirectories(zip.getParent());
        try (ZipOutputStream out = new ZipOutputStream(Files.newOutputStream(zip))) {
            out.putNextEntry(new ZipEntry("field.shp"));
        }
        assertEquals(List.of("north"), names(jobs()));
        try (ZipOutputStream out = new ZipOutputStream(Files.newOutputStream(zip))) {
            out.putNextEntry(new ZipEntry("log.csv"));
        }
        assertEquals(List.of("hill", "north"), names(jobs()));
        Path out = season.resolve("out");
        put("out/north/rows.csv");
        assertEquals(List.of("hill", "north"), names(BatchFolder.jobs(season, null, JobGrouping.UNSAID, out)));
    }

    @Test
    void a_shapefile_in_a_zip_with_a_text_beside_it_is_no_log() throws IOException {
        put("rig.yaml");
        put("north/log.csv");
        try (ZipOutputStream zip = new ZipOutputStream(Files.newOutputStream(season.resolve("north/soils.zip")))) {
            for (String name : List.of("soils.shp", "soils.dbf", "readme.txt")) {
                zip.putNextEntry(new ZipEntry(name));
                zip.closeEntry();
            }
        }
        assertEquals(
                List.of(season.resolve("north/log.csv")), job(jobs(), "north").logs());
    }

    @Test
    void a_name_this_session_can_read_but_not_write_fails_alone() throws IOException {
        Charset names = Charset.forName(System.getProperty("sun.jnu.encoding"));
        assumeTrue(names.newEncoder().canEncode('\ufffd'), "a session that can't make such a folder");
        put("rig.yaml");
        put("north/log.csv");
        // What Java makes of "M\u00fchle" where the session's setting has no such letter.
        put("M\ufffdhle/log.csv");
        assertTrue(problem(job(jobs(), "M\ufffdhle")).contains("set LC_ALL=C.UTF-8 before the call"));
        assertNull(job(jobs(), "north").problem());
    }

    @Test
    void a_folder_that_may_not_be_read_fails_alone() throws IOException {
        put("rig.yaml");
        put("north/log.csv");
        put("private/log.csv");
        Path closed = season.resolve("private");
        Files.setPosixFilePermissions(closed, PosixFilePermissions.fromString("---------"));
        try {
            assumeFalse(Files.isReadable(closed), "a user who may read everything");
            assertTrue(problem(job(jobs(), "private")).contains("a folder that can't be read"));
            assertNull(job(jobs(), "north").problem());
        } finally {
            Files.setPosixFilePermissions(closed, PosixFilePermissions.fromString("rwx------"));
        }
    }

    @Test
    void two_logs_of_one_name_are_not_written_over_one_another() throws IOException {
        put("rig.yaml");
        put("a.csv");
        put("a.csv.gz");
        List<FieldJob> jobs = jobs(JobGrouping.LOG);
        assertNotNull(jobs.get(0).files());
        assertTrue(problem(jobs.get(1)).contains("found two jobs named a"));
    }

    @Test
    void no_folder_and_no_logs_are_one_message_each() throws IOException {
        put("notes.txt");
        assertTrue(assertThrows(UnusableInputException.class, this::jobs)
                .getMessage()
                .startsWith(season + ": found no log in this folder or below it; expected"));
        Path nowhere = temporary.resolve("nowhere");
        assertTrue(assertThrows(
                        UnusableInputException.class,
                        () -> BatchFolder.jobs(nowhere, null, JobGrouping.UNSAID, temporary.resolve("out")))
                .getMessage()
                .startsWith(nowhere + ": found no such folder;"));
    }
}
