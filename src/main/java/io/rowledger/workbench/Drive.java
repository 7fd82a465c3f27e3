package io.rowledger.workbench;

import io.rowledger.analysis.Analysis;
import io.rowledger.analysis.JobFiles;
import io.rowledger.analysis.Pipeline;
import io.rowledger.analysis.Progress;
import io.rowledger.batch.FieldFiles;
import io.rowledger.document.text.Messages;
import io.rowledger.finding.UnusableInputException;
import io.rowledger.report.common.ReportOptions;
import io.rowledger.report.review.PassReview;
import io.rowledger.report.review.PassReviewReport;
import io.rowledger.report.sections.CoveragePhrases;
import io.rowledger.report.sections.CoverageSectionBuilder;
import io.rowledger.track.Pass;
import io.rowledger.track.Poses;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.locks.ReentrantLock;

/**
 * The field's own drive by the lengths as typed: a headland turn with the passes before and after it, the skips and overlap
 * that the whole drive comes to, and the setup check's word on each length. It is the analysis of a report that is not
 * written.
 */
final class Drive {
    /** Length of the passes that is drawn on either side of a turn, m. */
    private static final double SHOWN_M = 45;

    private final FieldStore store;
    /** One drive at a time: each takes all cores. */
    private final ReentrantLock turn = new ReentrantLock();

    Drive(FieldStore store) {
        this.store = store;
    }

    /**
     * A drive.
     *
     * @param turns a few headland turns
     * @param skip skipped ground of the whole drive with slivers, with its unit, as the review prints it
     * @param overlap overlap of the whole drive with slivers, likewise
     * @param fineOverlap the same before it is rounded to what its bounds allow: it changes with every length
     * @param setup a line for each length that the log tells
     * @param untold lengths that the log can't tell, and why
     */
    record Driven(
            List<Turn> turns,
            String skip,
            String overlap,
            String fineOverlap,
            List<SetupWord> setup,
            List<SetupWord> untold) {}

    /**
     * A turn on the ground: east and north, m, one pair after the other.
     *
     * @param antenna path of the antenna
     * @param drop path of the middle of the drop line
     * @param before outline of the rows' strips before the turn
     * @param after outline of the rows' strips after the turn
     */
    record Turn(List<Double> antenna, List<Double> drop, List<Double> before, List<Double> after) {}

    /**
     * What the log says of a length.
     *
     * @param key of the length in the rig file; empty where it is not known
     * @param name of the length
     * @param text length as entered and by the log, in words
     * @param byLog length by the log and whether it agrees, in words
     * @param differs true if it does not agree
     */
    record SetupWord(String key, String name, String text, String byLog, boolean differs) {}

    /**
     * Drives a field.
     *
     * @param blocks of the rig file as typed
     * @param look language and units of what is told of the lengths
     */
    Driven drive(String name, RigView.Blocks blocks, ReportOptions look) throws IOException {
        FieldFiles field = store.field(name);
        RigTree rig = store.rig(field).with(blocks.blocks());
        if (rig.block("products").isEmpty()) {
            rig = rig.with("products", standIn());
        }
        Path file = store.folder().temporary();
        turn.lock();
        try {
            Files.write(file, rig.yaml().getBytes(StandardCharsets.UTF_8));
            JobFiles files = new JobFiles(field.logs(), file, field.boundary());
            Analysis analysis = Pipeline.analyze(files, Runtime.getRuntime().availableProcessors(), Progress.SILENT);
            return driven(analysis, look);
        } catch (UnusableInputException e) {
            throw file.toString().equals(e.file()) ? e.inFile(FieldStore.RIG) : e;
        } finally {
            turn.unlock();
            Files.deleteIfExists(file);
        }
    }

    /** A product for a drive before the product is known: no skip, overlap or length depends on it. */
    private static Map<String, Object> standIn() {
        Map<String, Object> product = new LinkedHashMap<>();
        product.put("density", "1 kg/L");
        product.put("analysis", "28-0-0");
        Map<String, Object> products = new LinkedHashMap<>();
        products.put("liquid", product);
        return products;
    }

    private static Driven driven(Analysis analysis, ReportOptions look) {
        PassReview.Setup setup = PassReviewReport.of(analysis, look).content().setup();
        Messages words = look.messages();
        CoveragePhrases skips = CoverageSectionBuilder.skips(analysis.coverage(), analysis.intervals(), words);
        CoveragePhrases overlap = CoverageSectionBuilder.overlap(analysis.coverage(), analysis.intervals(), words);
        return new Driven(
                turns(analysis),
                skips.area(),
                overlap.area(),
                words.units().anyArea(overlap.areaM2()),
                setup.told().stream()
                        .map(line -> {
                            String byLog = line.is() + " (" + line.between() + "): " + line.verdict();
                            return new SetupWord(
                                    line.key(),
                                    line.name(),
                                    line.was() + " → " + byLog,
                                    byLog,
                                    !line.mark().isEmpty());
                        })
                        .toList(),
                setup.untold().stream()
                        .map(fact -> new SetupWord("", fact.label(), fact.value(), "", false))
                        .toList());
    }

    private static List<Turn> turns(Analysis analysis) {
        List<Pass> passes = analysis.track().passes();
        List<Turn> turns = new ArrayList<>();
        for (int p = passes.size() / 2; p + 1 < passes.size() && turns.size() < 2; p++) {
            turns.add(turn(analysis, passes.get(p), passes.get(p + 1)));
        }
        return turns;
    }

    private static Turn turn(Analysis analysis, Pass before, Pass after) {
        Poses poses = analysis.track().poses();
        int from = near(poses, before.endStep(), before.firstStep(), -1);
        int to = near(poses, after.firstStep(), after.endStep(), 1);
        List<Double> antenna = new ArrayList<>();
        List<Double> drop = new ArrayList<>();
        for (int i = from; i <= to; i++) {
            add(antenna, poses.antennaEastM(i), poses.antennaNorthM(i));
            add(drop, poses.dropEastM(i), poses.dropNorthM(i));
        }
        double leftM = analysis.rig().leftM();
        double rightM = analysis.rig().rightM();
        return new Turn(
                antenna,
                drop,
                outline(poses, from, before.endStep(), leftM, rightM),
                outline(poses, after.firstStep(), to, leftM, rightM));
    }

    private static int near(Poses poses, int from, int limit, int way) {
        int i = from;
        while (i != limit
                && Math.hypot(poses.dropEastM(i) - poses.dropEastM(from), poses.dropNorthM(i) - poses.dropNorthM(from))
                        < SHOWN_M) {
            i += way;
        }
        return i;
    }

    private static List<Double> outline(Poses poses, int from, int to, double leftM, double rightM) {
        List<Double> ring = new ArrayList<>();
        for (int i = from; i <= to; i++) {
            add(ring, poses.eastM(i, leftM), poses.northM(i, leftM));
        }
        for (int i = to; i >= from; i--) {
            add(ring, poses.eastM(i, rightM), poses.northM(i, rightM));
        }
        return ring;
    }

    private static void add(List<Double> path, double eastM, double northM) {
        path.add(Math.round(eastM * 100) / 100.0);
        path.add(Math.round(northM * 100) / 100.0);
    }
}
