package io.rowledger.report.sections;

import io.rowledger.document.text.Messages;
import io.rowledger.document.text.Wording;
import io.rowledger.field.KeepOutReader;
import io.rowledger.finding.RegularFile;
import io.rowledger.geo.LocalPlane;
import io.rowledger.rig.Product;
import io.rowledger.setback.Setback;
import io.rowledger.setback.Setback.Worst;
import io.rowledger.setback.Setbacks;
import io.rowledger.text.Message;
import io.rowledger.units.Factor;
import io.rowledger.units.QuantityKind;
import io.rowledger.units.UnitFormat;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What was applied within the setbacks of the user's places, rounded and in words.
 *
 * @param summary the answer in a sentence
 * @param lines per place, in the file's order
 * @param details per place within whose setback anything was applied, where most of it lies, in a sentence
 * @param anythingInside true where anything was applied within a setback
 * @param basis whose distances these are and what the values include
 */
public record SetbackSection(
        String summary, List<Line> lines, List<String> details, boolean anythingInside, String basis) {
    /** Places named in the summary; the rest is counted. */
    private static final int NAMED = 3;

    /** Copies the lists. */
    public SetbackSection {
        lines = List.copyOf(lines);
        details = List.copyOf(details);
    }

    /**
     * One place.
     *
     * @param number its place in the file
     * @param name as the user wrote it
     * @param setback the user's distance
     * @param closest how near a delivering strip came
     * @param applied volume inside, product by product, or "none"
     * @param nitrogen in it
     * @param ground covered inside
     * @param when first to last
     * @param passes those that applied inside
     * @param rows those that applied inside
     * @param mark "act" where anything was applied inside, else empty
     */
    public record Line(
            String number,
            String name,
            String setback,
            String closest,
            String applied,
            String nitrogen,
            String ground,
            String when,
            String passes,
            String rows,
            String mark) {}

    /** The section, or null where no keep-out file was given. */
    public static @Nullable SetbackSection of(
            @Nullable Setbacks setbacks, List<Product> products, LocalPlane plane, Messages messages) {
        return setbacks == null ? null : new Writer(products, plane, messages, messages.units()).section(setbacks);
    }

    /** Writes the section. */
    private record Writer(List<Product> products, LocalPlane plane, Messages messages, UnitFormat f) {
        SetbackSection section(Setbacks setbacks) {
            List<Line> lines = new ArrayList<>();
            List<String> details = new ArrayList<>();
            for (Setback place : setbacks.places()) {
                lines.add(line(place));
                if (place.worst() != null) {
                    details.add(most(place, place.worst()));
                }
            }
            return new SetbackSection(
                    summary(setbacks),
                    lines,
                    details,
                    !setbacks.touched().isEmpty(),
                    messages.text("words.setback.basis", RegularFile.name(setbacks.file())));
        }

        private String summary(Setbacks setbacks) {
            int all = setbacks.places().size();
            List<Setback> touched = setbacks.touched();
            List<Message> sentences = new ArrayList<>();
            if (touched.isEmpty()) {
                sentences.add(
                        all == 1 ? Message.of("words.setback.nothingOne") : Message.of("words.setback.nothing", all));
            } else {
                sentences.add(
                        all == 1
                                ? Message.of("words.setback.insideOne", named(touched))
                                : Message.of("words.setback.inside", named(touched), touched.size(), all));
            }
            long far = setbacks.places().stream().filter(Setback::notReached).count();
            if (far > 0) {
                double awayM = KeepOutReader.MAX_AWAY_M;
                sentences.add(Message.of(
                        "words.setback.far",
                        far,
                        Math.round(awayM / 1000),
                        Math.round(awayM / Factor.METRES_PER_MILE)));
            }
            return String.join(" ", messages.texts(sentences));
        }

        private List<Message> named(List<Setback> touched) {
            List<Message> named = new ArrayList<>();
            for (Setback place : touched.subList(0, Math.min(NAMED, touched.size()))) {
                named.add(Message.of("words.setback.place", place.keepOut().name(), applied(place)));
            }
            if (touched.size() > NAMED) {
                named.add(Message.of("words.setback.more", touched.size() - NAMED));
            }
            return named;
        }

        private Line line(Setback place) {
            boolean inside = place.anythingInside();
            String dash = "\u2013";
            String none = messages.text("words.none");
            return new Line(
                    Integer.toString(place.keepOut().number()),
                    place.keepOut().name(),
                    f.text(QuantityKind.LENGTH, place.keepOut().setbackM()),
                    place.notReached()
                            ? messages.text("words.setback.notReached")
                            : f.text(QuantityKind.LENGTH, place.closestM()),
                    inside ? applied(place) : none,
                    inside ? atLeast(QuantityKind.NITROGEN, place.totalNitrogenKg()) : none,
                    place.coveredM2() > 0 && inside ? f.anyArea(place.coveredM2()) : none,
                    inside ? f.clock(place.firstS()) + "\u2013" + f.clock(place.lastS()) : dash,
                    inside ? Wording.ranges(place.passes()) : dash,
                    inside ? Wording.ranges(place.rows()) : dash,
                    inside ? "act" : "");
        }

        /** {@code 7.3 gal}, or of several products {@code 7.3 gal UAN, 1.0 gal ATS}. */
        private String applied(Setback place) {
            List<String> parts = new ArrayList<>();
            double[] volumeL = place.volumeL();
            for (int p = 0; p < volumeL.length; p++) {
                if (volumeL[p] > 0) {
                    parts.add(atLeast(QuantityKind.VOLUME, volumeL[p])
                            + (volumeL.length > 1 ? " " + products.get(p).name() : ""));
                }
            }
            return String.join(", ", parts);
        }

        /** A value above zero is never printed as 0.0. */
        private String atLeast(QuantityKind measure, double si) {
            double least = measure.toSi(0.1, f.system());
            boolean tiny = si > 0 && si < least / 2;
            return tiny ? messages.text("words.setback.atMost", Message.value(measure, least)) : f.text(measure, si);
        }

        private String most(Setback place, Worst worst) {
            double[] latLon = new double[2];
            plane.inverse(worst.eastM(), worst.northM(), latLon);
            return messages.text(
                    "words.setback.most",
                    place.keepOut().name(),
                    atLeast(QuantityKind.VOLUME, worst.volumeL()),
                    worst.pass(),
                    Message.time(worst.timeS()),
                    Message.place(latLon[0], latLon[1]));
        }
    }
}
