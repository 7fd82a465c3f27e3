package io.rowledger.report.common;

import io.rowledger.document.text.Messages;
import io.rowledger.finding.Finding;
import io.rowledger.finding.FindingKind;
import io.rowledger.text.Message;
import io.rowledger.units.QuantityKind;
import io.rowledger.units.UnitFormat;
import io.rowledger.units.UnitSystem;
import java.time.ZoneOffset;

/** The figures of a finding as every document prints them: how sure it is and what it cost. */
public final class FindingFacts {
    private FindingFacts() {}

    /** Text as files keep it: US English, US units, times in UTC. */
    public static String filed(Message message) {
        return Messages.english(new UnitFormat(UnitSystem.US, ZoneOffset.UTC)).text(message);
    }

    /** {@code 97% sure}. */
    public static String sure(double confidence, UnitFormat f) {
        return f.fixed(confidence * 100, 0) + "% sure";
    }

    /** Ground, liquid and nitrogen with the direction in words. */
    public static String cost(Finding finding, FindingUncertainty doubt, UnitFormat f) {
        IntervalPhrases words = new IntervalPhrases(f);
        StringBuilder text = new StringBuilder(
                finding.areaM2() > 0
                        ? words.anyArea(finding.areaM2(), doubt.areaM2()) + " of ground"
                        : "no ground of its own");
        if (onlySetup(finding.kind())) {
            return text + " shown in the wrong place, no liquid lost by that";
        }
        String way =
                (finding.volumeL() < 0 ? " too little" : " too much") + (onlyRecorded(finding) ? " in the record" : "");
        if (Double.isFinite(finding.volumeL()) && finding.volumeL() != 0) {
            text.append(", ")
                    .append(words.size(QuantityKind.VOLUME, doubt.volumeL()))
                    .append(way);
            if (Double.isFinite(finding.nitrogenKg())) {
                text.append(" (")
                        .append(words.size(QuantityKind.NITROGEN, doubt.nitrogenKg()))
                        .append(")");
            }
        } else if (finding.volumeL() == 0) {
            text.append(", no liquid lost or wasted");
        } else {
            text.append(", liquid ").append(UnitFormat.UNKNOWN);
        }
        return text.toString();
    }

    /** A wrong line in the rig file costs nothing in the field: it is the report that is off. */
    public static boolean onlySetup(FindingKind kind) {
        return switch (kind) {
            case FLOW_LAG, DROP_OFFSET, SIDE_OFFSET -> true;
            default -> false;
        };
    }

    /** A meter that reads wrong spoils the record; the ground may have got its liquid all the same. */
    private static boolean onlyRecorded(Finding finding) {
        return switch (finding.kind()) {
            case METER_DROPOUT, METER_STUCK, METER_SCALE -> true;
            default -> false;
        };
    }
}
