package io.rowledger.workbench;

import io.rowledger.batch.FieldFiles;
import io.rowledger.finding.UnusableInputException;
import io.rowledger.log.LogSurvey;
import io.rowledger.rig.Product;
import io.rowledger.rig.Rig;
import io.rowledger.rig.RigReader;
import io.rowledger.units.Dimension;
import io.rowledger.units.Quantity;
import io.rowledger.units.Reading;
import java.io.IOException;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** The screens of the bar, its lengths and its product: the rig file as typed, and what its texts come to. */
final class RigView {
    /** Lengths by their path in the rig file, with the largest that is common, m (common practice, no source). */
    private static final Map<String, Double> LENGTHS = lengths();

    /** A drop line farther ahead of the wheels than this is asked about, m: no common bar is built so. */
    private static final double MAX_AHEAD_OF_WHEELS_M = 1;

    private final FieldStore store;
    private final Surveys surveys;
    private final SavedBars bars;

    RigView(FieldStore store, Surveys surveys, SavedBars bars) {
        this.store = store;
        this.surveys = surveys;
        this.bars = bars;
    }

    private static Map<String, Double> lengths() {
        Map<String, Double> all = new LinkedHashMap<>();
        all.put("rig.antenna.ahead_of_axle", 4.0);
        all.put("rig.antenna.right_of_center", 1.0);
        all.put("rig.axle_to_hitch", 3.0);
        all.put("rig.hitch_to_wheels", 12.0);
        all.put("rig.hitch_to_drop", 14.0);
        all.put("rig.bar_right_of_center", 1.0);
        all.put("rows.spacing", 1.1);
        return all;
    }

    /**
     * The rig file of a field.
     *
     * @param tree its blocks as typed
     * @param values what its texts come to, SI (m, kg/L, L/m²), by path
     * @param problems why a text can't be used, by path
     * @param cautions what is unusual, by path
     * @param wants what is missing or wrong in the file as a whole; nothing if it is complete
     * @param wantsKey the key of the rig file that {@code wants} is about, or empty
     * @param nitrogen of the first product; null while it is unknown
     * @param logRows number of rows with a flow in the log
     * @param zone proposed from the position; empty if none is
     * @param zoneless true if the log's times are written without a time zone
     * @param startS start of the log, epoch seconds; null if unknown
     * @param endS end of the log, epoch seconds; null if unknown
     * @param bars saved bars
     */
    record RigState(
            Map<String, Object> tree,
            Map<String, Double> values,
            Map<String, ProblemText> problems,
            Map<String, String> cautions,
            ProblemText wants,
            String wantsKey,
            @Nullable Nitrogen nitrogen,
            int logRows,
            String zone,
            boolean zoneless,
            @Nullable Double startS,
            @Nullable Double endS,
            List<SavedBars.SavedBar> bars) {}

    /**
     * Nitrogen of a product.
     *
     * @param kgPerL in the liquid
     * @param kgPerM2 at the target rate; null without one
     */
    record Nitrogen(double kgPerL, @Nullable Double kgPerM2) {}

    /** Blocks of a rig file that take the place of those there. */
    record Blocks(Map<String, Object> blocks) {}

    /** The name of a saved bar. */
    record BarName(String name) {}

    RigState state(String name) throws IOException {
        FieldFiles field = store.field(name);
        return state(field, store.rig(field));
    }

    /** What the blocks would come to; nothing is saved. */
    RigState consider(String name, Blocks blocks) throws IOException {
        FieldFiles field = store.field(name);
        return state(field, store.rig(field).with(blocks.blocks()));
    }

    RigState save(String name, Blocks blocks) throws IOException {
        FieldFiles field = store.field(name);
        RigTree rig = named(store.rig(field).with(blocks.blocks()), field);
        store.save(field, rig);
        RigState state = state(store.field(name), rig);
        if (state.wants().equals(ProblemText.NONE)) {
            bars.save(rig);
        }
        return state;
    }

    /** Takes a saved bar for the field; what the field's own file says of the job stays. */
    RigState take(String name, BarName bar) throws IOException {
        FieldFiles field = store.field(name);
        SavedBars.SavedBar saved = bars.all().bars().stream()
                .filter(each -> each.name().equals(bar.name()))
                .findFirst()
                .orElseThrow(() -> new HttpRefusal(HttpRefusal.NOT_FOUND, "refusals.noBar", bar.name()));
        RigTree rig = named(store.rig(field).with(saved.tree()), field);
        LogSurvey survey = survey(field, rig);
        if (survey != null && !survey.zone().isEmpty() && rig.text("job", "zone") == null) {
            Map<String, Object> job = rig.block("job");
            job.put("zone", survey.zone());
            rig = rig.with("job", job);
        }
        store.save(field, rig);
        return state(name);
    }

    /** The field's folder gives the name that its records print, until somebody enters another. */
    private static RigTree named(RigTree rig, FieldFiles field) {
        if (rig.text("job", "field") != null) {
            return rig;
        }
        Map<String, Object> job = rig.block("job");
        job.put("field", field.name());
        return rig.with("job", job);
    }

    private @Nullable LogSurvey survey(FieldFiles field, RigTree rig) throws IOException {
        if (field.logs().isEmpty()) {
            return null;
        }
        try {
            return surveys.of(field.logs().get(0), FieldStore.logOptions(field), Surveys.spacingM(rig));
        } catch (UnusableInputException e) {
            // The screens of the logs and columns say what is wrong with it.
            return null;
        }
    }

    private RigState state(FieldFiles field, RigTree rig) throws IOException {
        Map<String, Double> values = new LinkedHashMap<>();
        Map<String, ProblemText> problems = new LinkedHashMap<>();
        LENGTHS.keySet().forEach(path -> read(rig, path, Dimension.LENGTH, values, problems));
        for (String product : rig.block("products").keySet()) {
            read(rig, "products." + product + ".density", Dimension.DENSITY, values, problems);
            read(rig, "products." + product + ".density_at", Dimension.TEMPERATURE, values, problems);
            read(rig, "products." + product + ".target", Dimension.RATE, values, problems);
        }
        ProblemText wants = ProblemText.NONE;
        Rig whole = null;
        try {
            whole = RigReader.ofText(FieldStore.RIG, rig.yaml());
        } catch (UnusableInputException e) {
            wants = ProblemText.of(e);
        }
        LogSurvey survey = survey(field, rig);
        double[] timeS = survey == null ? new double[0] : survey.timeS();
        return new RigState(
                rig.tree(),
                values,
                problems,
                cautions(rig, values),
                wants,
                wants.key(),
                whole == null ? null : nitrogen(whole.products().get(0)),
                survey == null ? 0 : survey.rows(),
                survey == null ? "" : survey.zone(),
                survey != null && survey.zoneless(),
                timeS.length == 0 ? null : timeS[0],
                timeS.length == 0 ? null : timeS[timeS.length - 1],
                bars.all().bars());
    }

    private static @Nullable Nitrogen nitrogen(Product product) {
        double kgPerL = product.nitrogenKgPerL();
        double kgPerM2 = product.nitrogenKgPerM2(product.targetLPerM2());
        return Double.isFinite(kgPerL) ? new Nitrogen(kgPerL, Double.isFinite(kgPerM2) ? kgPerM2 : null) : null;
    }

    private static void read(
            RigTree rig,
            String path,
            Dimension dimension,
            Map<String, Double> values,
            Map<String, ProblemText> problems) {
        String text = rig.text(path.split("\\.", -1));
        if (text == null || text.isBlank()) {
            return;
        }
        Reading reading = Quantity.read(text, dimension);
        if (reading instanceof Quantity quantity) {
            values.put(path, quantity.si());
        } else {
            problems.put(path, ProblemText.of("refusals.figure." + dimension.name(), text));
        }
    }

    /** Lengths that no common machine has: feet typed where inches were meant, or meters where feet were. */
    private static Map<String, String> cautions(RigTree rig, Map<String, Double> values) {
        Map<String, String> cautions = new LinkedHashMap<>();
        LENGTHS.forEach((path, most) -> {
            Double lengthM = values.get(path);
            if (lengthM != null && Math.abs(lengthM) > most) {
                cautions.put(path, "longer");
            } else if (lengthM != null && isTooShort(path, lengthM)) {
                cautions.put(path, "shorter");
            }
        });
        Double wheels = values.get("rig.hitch_to_wheels");
        Double drop = values.get("rig.hitch_to_drop");
        boolean towed = "pull-type".equals(rig.text("rig", "hitch"));
        if (towed && wheels != null && drop != null && drop < wheels - MAX_AHEAD_OF_WHEELS_M) {
            cautions.put("rig.hitch_to_drop", "aheadOfWheels");
        }
        return cautions;
    }

    private static boolean isTooShort(String path, double lengthM) {
        return switch (path) {
            case "rig.hitch_to_wheels", "rig.hitch_to_drop" -> lengthM < 1;
            case "rows.spacing" -> lengthM < 0.35;
            default -> false;
        };
    }
}
