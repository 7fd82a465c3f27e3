package io.rowledger.report.findings;

import io.rowledger.document.text.Messages;
import io.rowledger.finding.Finding;
import io.rowledger.finding.FindingKind;
import io.rowledger.text.Argument;
import io.rowledger.text.Message;
import io.rowledger.uncertainty.Interval;
import io.rowledger.units.QuantityKind;
import io.rowledger.units.UnitFormat;
import io.rowledger.units.UnitSystem;
import java.time.ZoneOffset;

/** Confidence and cost of a finding as every document prints them. */
public final class FindingFacts {
    private FindingFacts() {}

    /** Text as files keep it: US English, US units, times in UTC. */
    public static String filed(Message message) {
        return Messages.english(new UnitFormat(UnitSystem.US, ZoneOffset.UTC)).text(message);
    }

    /** {@code 97% confidence}. */
    public static Message confidence(double confidence) {
        return Message.of("findings.confidence", Message.decimal(confidence * 100, 0));
    }

    /** Ground, liquid and nitrogen, with the direction in words: a clause without a full stop. */
    public static Message cost(Finding finding, FindingUncertainty uncertainty) {
        Interval areaM2 = uncertainty.areaM2();
        Message ground = finding.areaM2() > 0
                ? Message.of("findings.cost.ground", Message.areaWithin(finding.areaM2(), areaM2.low(), areaM2.high()))
                : Message.of("findings.cost.noGround");
        if (onlySetup(finding.kind())) {
            return Message.of("findings.cost.setup", ground);
        }
        if (finding.volumeL() == 0) {
            return Message.of("findings.cost.none", ground);
        }
        if (!Double.isFinite(finding.volumeL())) {
            return Message.of("findings.cost.unknown", ground);
        }
        if (straddlesZero(uncertainty.volumeL())) {
            double mostL =
                    Math.max(-uncertainty.volumeL().low(), uncertainty.volumeL().high());
            return Message.of("findings.cost.open", ground, Message.value(QuantityKind.VOLUME, mostL));
        }
        return Message.of(
                costKey(finding),
                ground,
                magnitude(QuantityKind.VOLUME, uncertainty.volumeL()),
                Double.isFinite(finding.nitrogenKg())
                        ? Message.of(
                                "findings.cost.nitrogen", magnitude(QuantityKind.NITROGEN, uncertainty.nitrogenKg()))
                        : "");
    }

    /** Liquid and ground in a short clause without a full stop: the first page has no room for bounds. */
    public static Message shortCost(Finding finding, FindingUncertainty uncertainty) {
        if (onlySetup(finding.kind()) || finding.volumeL() == 0 || !Double.isFinite(finding.volumeL())) {
            return cost(finding, uncertainty);
        }
        Interval volumeL = uncertainty.volumeL();
        if (straddlesZero(volumeL)) {
            return Message.of(
                    finding.rows().size() == 1 ? "words.action.cost.open" : "words.action.cost.evened",
                    Message.area(finding.areaM2()));
        }
        boolean under = finding.volumeL() < 0;
        Argument liquid = magnitude(QuantityKind.VOLUME, volumeL);
        if (onlyRecorded(finding)) {
            return Message.of(under ? "words.action.cost.underRecorded" : "words.action.cost.overRecorded", liquid);
        }
        return Message.of(
                under ? "words.action.cost.under" : "words.action.cost.over", liquid, Message.area(finding.areaM2()));
    }

    private static boolean straddlesZero(Interval volumeL) {
        return volumeL.known() && volumeL.low() < 0 && volumeL.high() > 0;
    }

    private static String costKey(Finding finding) {
        boolean under = finding.volumeL() < 0;
        if (onlyRecorded(finding)) {
            return under ? "findings.cost.underRecorded" : "findings.cost.overRecorded";
        }
        return under ? "findings.cost.under" : "findings.cost.over";
    }

    /** The size of a value whose sign is told in words, with its bounds. */
    private static Argument magnitude(QuantityKind kind, Interval interval) {
        double sign = interval.value() < 0 ? -1 : 1;
        double a = sign * interval.low();
        double b = sign * interval.high();
        return Message.within(kind, sign * interval.value(), Math.min(a, b), Math.max(a, b));
    }

    /** True for a wrong line in the rig file, which costs nothing in the field: only the report is off. */
    public static boolean onlySetup(FindingKind kind) {
        return switch (kind) {
            case FLOW_LAG, DROP_OFFSET, SIDE_OFFSET -> true;
            default -> false;
        };
    }

    /** True for a meter that reads wrong: the ground may have got its liquid all the same. */
    private static boolean onlyRecorded(Finding finding) {
        return switch (finding.kind()) {
            case METER_DROPOUT, METER_STUCK, METER_SCALE -> true;
            default -> false;
        };
    }
}
