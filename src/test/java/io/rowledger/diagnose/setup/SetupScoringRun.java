package io.rowledger.diagnose.setup;

import static org.junit.jupiter.api.Assertions.assertEquals;

import io.rowledger.analysis.Analysis;
import io.rowledger.analysis.CorrectedRun;
import io.rowledger.analysis.JobFiles;
import io.rowledger.analysis.Pipeline;
import io.rowledger.coverage.Coverage;
import io.rowledger.coverage.CoverageOptions;
import io.rowledger.coverage.Coverages;
import io.rowledger.rate.DeliveryBuilder;
import io.rowledger.rig.Rig;
import io.rowledger.rig.RigReader;
import io.rowledger.site.SitePage;
import io.rowledger.strip.Strips;
import io.rowledger.track.Track;
import io.rowledger.track.TrackBuilder;
import io.rowledger.track.TrackOptions;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * How good the setup check is: random jobs with wrong setups, the whole program run on each, with the corrected rig file and
 * with the right one. {@code mvn -Psetup-scoring test} runs 200 of them ({@code -Dsetup.logs}, {@code -Dsetup.seed} for
 * others; {@code -Dsetup.swaps=true} lays out the ground with true figures put in, too) and prints the table. Not part of a build: a short run of the same is, in {@link SetupScoringTest}. Tuned on seeds 1
 * to 5; this run uses another.
 */
class SetupScoringRun {
    @TempDir
    Path folder;

    @Test
    void the_long_run_holds_what_the_project_promises() {
        long seed = Long.getLong("setup.seed", 20_263);
        int jobs = Integer.getInteger("setup.logs", 200);
        SetupScores scores = new SetupScores();
        // Two at a time; added up in order, so that the table is the same each time.
        List<Scored> scored = IntStream.range(0, jobs)
                .parallel()
                .mapToObj(i -> score(RandomSetup.draw(seed * RandomSetup.STRIDE + i), i))
                .toList();
        scored.forEach(of -> of.into(scores));
        String table = scores.table("Setup check on " + jobs + " simulated jobs, seed " + seed);
        System.out.println(table);
        SitePage.write("accuracy", "setup-check", SitePage.code(table));
        scores.far().forEach(System.out::println);
        assertEquals(List.of(), scores.broken(0.95, 100));
    }

    /** A job's measures and its skip and overlap by the wrong setup, the corrected and the right one, m². */
    private record Scored(
            RandomSetup.Drawn drawn,
            SetupCheck ofWrong,
            SetupCheck ofRight,
            List<double[]> grounds,
            int passes,
            Map<String, double[]> swapped) {
        void into(SetupScores scores) {
            scores.add(drawn, ofWrong, ofRight);
            scores.ground(grounds.get(0), grounds.get(1), grounds.get(2), passes);
            swapped.forEach((figures, by) -> scores.swapped(figures, by, grounds.get(2)));
        }
    }

    private Scored score(RandomSetup.Drawn d, int job) {
        try {
            Path log = Files.writeString(
                    folder.resolve(job + "-log.csv"), d.result().logText());
            Path boundary = Files.writeString(
                    folder.resolve(job + "-boundary.geojson"), d.result().boundaryText());
            Path wrongRig = Files.writeString(folder.resolve(job + "-wrong.yaml"), d.wrongText());
            Path rightRig = Files.writeString(folder.resolve(job + "-right.yaml"), d.rightText());
            JobFiles files = new JobFiles(List.of(log), wrongRig, boundary);
            Analysis wrong =
                    Pipeline.withSetupApplied(Pipeline.analyze(files, 1, (a, b) -> {}), files, 1, (a, b) -> {});
            Analysis right = Pipeline.analyze(new JobFiles(List.of(log), rightRig, boundary), 1, (a, b) -> {});
            Files.delete(log);
            CorrectedRun corrected = wrong.setup().corrected();
            List<double[]> grounds = List.of(
                    areas(wrong.coverage()),
                    areas(corrected == null ? wrong.coverage() : corrected.coverage()),
                    areas(right.coverage()));
            return new Scored(
                    d.withoutLog(),
                    wrong.setup().check(),
                    right.setup().check(),
                    grounds,
                    right.track().passes().size(),
                    Boolean.getBoolean("setup.swaps") ? swapped(d, wrong) : Map.of());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** What the ground would be with one true figure in place of the estimated one, or with what no log can tell alone wrong. */
    private static Map<String, double[]> swapped(RandomSetup.Drawn d, Analysis wrong) {
        Map<SetupParameter, Double> estimated = new EnumMap<>(SetupParameter.class);
        for (SetupMeasurement m : wrong.setup().check().measurements()) {
            estimated.put(m.parameter(), m.determined() ? m.estimate() : m.given());
        }
        double lagS = estimated.getOrDefault(SetupParameter.FLOW_LAG, 0.0);
        double dropM = estimated.getOrDefault(SetupParameter.DROP_OFFSET, 0.0);
        double sideM = estimated.getOrDefault(SetupParameter.SIDE_OFFSET, 0.0);
        RandomSetup.Told told = d.told();
        Map<String, double[]> swapped = new TreeMap<>();
        swapped.put("every estimate, even of what isn't contradicted", ground(d, wrong, lagS, dropM, sideM));
        swapped.put("the true lag in it", ground(d, wrong, d.lagS(), dropM, sideM));
        swapped.put("the true drop line in it", ground(d, wrong, lagS, d.dropM(), sideM));
        swapped.put("the true side in it", ground(d, wrong, lagS, dropM, d.barRightM()));
        swapped.put(
                "what a log without any noise would tell",
                ground(d, wrong, told.lagS(), told.dropM(), told.barRightM()));
        return swapped;
    }

    private static double[] ground(RandomSetup.Drawn d, Analysis of, double lagS, double dropM, double sideM) {
        String text = RandomSetup.with(d.wrongText(), "flow_lag", lagS, "s");
        text = RandomSetup.with(text, "hitch_to_drop", dropM, "m");
        Rig rig = RigReader.ofText("swapped.yaml", RandomSetup.with(text, "bar_right_of_center", sideM, "m"));
        Track track = TrackBuilder.build(of.log(), rig, TrackOptions.defaults());
        Strips strips = new Strips(track.poses(), rig.bands());
        return areas(Coverages.of(
                track,
                strips,
                DeliveryBuilder.build(of.log(), rig, strips),
                of.coverage().boundary(),
                CoverageOptions.defaults(1)));
    }

    private static double[] areas(Coverage c) {
        return new double[] {c.skipAreaM2(), c.overlapAreaM2()};
    }
}
