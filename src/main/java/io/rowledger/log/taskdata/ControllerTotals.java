package io.rowledger.log.taskdata;

import io.rowledger.finding.RegularFile;
import io.rowledger.text.Message;
import io.rowledger.units.QuantityKind;
import java.util.ArrayList;
import java.util.List;

/**
 * The controller's own totals of a task beside what its flows or rates and widths add up to.
 *
 * @param file the time log
 * @param controller volume and area by the controller's totals (DDI 80, 351, 116); NaN where it logs none
 * @param added volume and area by the logged flows or rates
 */
public record ControllerTotals(String file, Sum controller, Sum added) {
    /** A volume, L, and an area, m². */
    public record Sum(double volumeL, double areaM2) {}

    /** Totals below these say nothing: controllers write whole liters and square meters, and only now and then. */
    private static final double MIN_VOLUME_L = 20;

    private static final double MIN_AREA_M2 = 500;
    /** Difference above which totals and rates disagree (1): totals are written up to half a minute late. */
    private static final double MAX_DIFFERENCE = 0.15;
    /** Ratio of the two from which it is no calibration error but another scale or unit (1). */
    private static final double MAX_RATIO = 2;

    /**
     * The rise of the totals over the time log.
     *
     * @param values of the time log
     * @param layout of the same log
     */
    static ControllerTotals of(String file, ElementValues values, Layout layout, Sum added) {
        DeviceElement firstOutlet = layout.groups().get(0).outlets().get(0).element();
        boolean several = layout.groups().get(0).outlets().size() > 1;
        double liters = increase(values, Ddi.TOTAL_VOLUME, firstOutlet, several);
        double milliliters = increase(values, Ddi.TOTAL_VOLUME_ML, firstOutlet, several);
        double volumeL = layout.groups().size() > 1 ? Double.NaN : Double.isNaN(liters) ? milliliters / 1000 : liters;
        return new ControllerTotals(
                file, new Sum(volumeL, increase(values, Ddi.TOTAL_AREA, firstOutlet, several)), added);
    }

    /**
     * Increase of a total over the log, resets counted from 0. Looks at the given outlet's element, then at each parent; NaN if none has
     * the total. A total of a single section is passed over where there are several.
     */
    private static double increase(ElementValues values, int ddi, DeviceElement firstOutlet, boolean several) {
        for (DeviceElement at = several ? firstOutlet.parent() : firstOutlet; at != null; at = at.parent()) {
            int column = values.column(ddi, at);
            if (column >= 0) {
                return increaseAcrossResets(values.log().values[column], values.log().records);
            }
        }
        return Double.NaN;
    }

    /** A total that falls began anew: then it rose from 0. */
    private static double increaseAcrossResets(int[] total, int records) {
        double rise = Double.NaN;
        int before = -1;
        for (int i = 0; i < records; i++) {
            if (total[i] < 0 || total[i] == Integer.MAX_VALUE) {
                continue;
            }
            double step = before < 0 ? 0 : total[i] >= before ? total[i] - before : total[i];
            rise = (Double.isNaN(rise) ? 0 : rise) + step;
            before = total[i];
        }
        return rise;
    }

    /** True if volume or area differ by more than the totals' own resolution explains. */
    public boolean disagree() {
        return volumesDisagree() || areasDisagree();
    }

    /** Volume by the totals over volume by the flows; NaN if the totals are too small to tell. */
    public double volumeRatio() {
        return controller.volumeL >= MIN_VOLUME_L ? controller.volumeL / added.volumeL : Double.NaN;
    }

    /** Area by the totals over area by width and speed; NaN if the totals are too small to tell. */
    public double areaRatio() {
        return controller.areaM2 >= MIN_AREA_M2 ? controller.areaM2 / added.areaM2 : Double.NaN;
    }

    /** True if the volumes differ by more than the totals' own resolution explains. */
    public boolean volumesDisagree() {
        return differs(volumeRatio());
    }

    /**
     * True if the volumes differ so much that the logged rates are on another scale than the liquid: what they say of a row
     * against its target means nothing.
     */
    public boolean offScale() {
        double ratio = volumeRatio();
        return ratio > MAX_RATIO || ratio < 1 / MAX_RATIO;
    }

    /** True if the areas differ by more than the totals' own resolution explains. */
    public boolean areasDisagree() {
        return differs(areaRatio());
    }

    private static boolean differs(double ratio) {
        return ratio > 1 + MAX_DIFFERENCE || ratio < 1 / (1 + MAX_DIFFERENCE);
    }

    /** The disagreements, for a person; empty if there are none. */
    List<Message> notes() {
        List<Message> notes = new ArrayList<>();
        if (volumesDisagree()) {
            double ratio = Math.max(volumeRatio(), 1 / volumeRatio());
            notes.add(Message.of(
                    volumeRatio() > 1 ? "notes.totals.volume.less" : "notes.totals.volume.more",
                    RegularFile.name(file),
                    Message.value(QuantityKind.VOLUME, controller.volumeL),
                    Message.value(QuantityKind.VOLUME, added.volumeL),
                    Message.decimal(ratio, ratio < 10 ? 1 : 0)));
        }
        if (areasDisagree()) {
            notes.add(Message.of(
                    "notes.totals.area",
                    RegularFile.name(file),
                    Message.value(QuantityKind.AREA, controller.areaM2),
                    Message.value(QuantityKind.AREA, added.areaM2)));
        }
        return notes;
    }
}
