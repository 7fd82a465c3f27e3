package io.rowledger.log.taskdata;

import io.rowledger.log.taskdata.ControllerTotals.Sum;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The controller's totals at the end of each of a task's times (elements TIM and DLV, ISO 11783-10): DDI 80 or 351, volume, and
 * DDI 116, area. Some controllers carry a total on from time to time, others start it over; where the last one or the sum of all
 * agrees with the flows, nothing is said.
 *
 * @param volumeL volume at the end of each time, L; empty if there is none, or several elements have one
 * @param areaM2 area at the end of each time, m²; empty likewise
 */
record TaskTotals(List<Double> volumeL, List<Double> areaM2) {
    /** No totals. */
    static final TaskTotals NONE = new TaskTotals(List.of(), List.of());

    /** Type of a time that was worked (ISO 11783-10, attribute D of TIM). */
    private static final String EFFECTIVE = "4";

    private static final double L_PER_ML = 1e-3;

    TaskTotals {
        volumeL = List.copyOf(volumeL);
        areaM2 = List.copyOf(areaM2);
    }

    /** Reads the totals of a task's times. */
    static TaskTotals of(List<XmlElement> times) {
        List<Double> liters = ofOneElement(times, Ddi.TOTAL_VOLUME, 1);
        return new TaskTotals(
                liters.isEmpty() ? ofOneElement(times, Ddi.TOTAL_VOLUME_ML, L_PER_ML) : liters,
                ofOneElement(times, Ddi.TOTAL_AREA, 1));
    }

    private static List<Double> ofOneElement(List<XmlElement> times, int ddi, double factor) {
        Map<String, List<Double>> byElement = new HashMap<>();
        for (XmlElement time : times) {
            if (!time.text("D").equals(EFFECTIVE)) {
                continue;
            }
            for (XmlElement value : time.children("DLV")) {
                // One that can't be read is not needed: the flows stand without it.
                double total = factor * whole(value.text("B"), 10);
                if (whole(value.text("A"), 16) == ddi && total >= 0) {
                    byElement
                            .computeIfAbsent(value.text("C"), key -> new ArrayList<>())
                            .add(total);
                }
            }
        }
        return byElement.size() == 1 ? byElement.values().iterator().next() : List.of();
    }

    private static int whole(String text, int radix) {
        try {
            return Integer.parseInt(text, radix);
        } catch (NumberFormatException e) {
            return -1;
        }
    }

    /** Returns the totals beside what the flows of all the task's logs add up to; empty if the task has none. */
    Optional<ControllerTotals> against(String file, Sum added) {
        if (volumeL.isEmpty() && areaM2.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(new ControllerTotals(
                file, new Sum(nearest(volumeL, added.volumeL()), nearest(areaM2, added.areaM2())), added));
    }

    /** Returns the last total or the sum of all, whichever is nearer to a value; NaN without totals. */
    private static double nearest(List<Double> totals, double value) {
        if (totals.isEmpty()) {
            return Double.NaN;
        }
        double last = totals.get(totals.size() - 1);
        double sum = totals.stream().mapToDouble(Double::doubleValue).sum();
        return Math.abs(Math.log(last / value)) <= Math.abs(Math.log(sum / value)) ? last : sum;
    }
}
