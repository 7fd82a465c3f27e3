package io.rowledger.report.common;

import io.rowledger.analysis.JobClock;
import io.rowledger.document.text.Messages;
import io.rowledger.document.text.TextTruncation;
import io.rowledger.document.text.Wording;
import io.rowledger.rig.Rig;
import io.rowledger.text.Message;
import io.rowledger.units.QuantityKind;
import io.rowledger.units.UnitFormat;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** Title and particulars, the same on every report of a job. */
public final class ReportHeaders {
    private static final int SECONDS_PER_HOUR = 3600;

    private ReportHeaders() {}

    /** The header of a report of this kind, such as "Pass review". */
    public static ReportHeader of(String kind, Rig rig, JobTimes times, ReportOptions options) {
        Messages messages = options.messages();
        UnitFormat f = messages.units();
        double startS = times.startS();
        double endS = times.endS();
        String field = rig.job().facts().getOrDefault("field", "").strip();
        boolean named = !field.isEmpty();
        List<Fact> facts = new ArrayList<>();
        for (Map.Entry<String, String> entry : rig.job().facts().entrySet()) {
            if (!"field".equals(entry.getKey())) {
                facts.add(new Fact(Wording.label(entry.getKey()), entry.getValue()));
            }
        }
        return new ReportHeader(
                title(kind, named ? TextTruncation.title(field) : "", startS, messages),
                named ? TextTruncation.value(field) : messages.text("words.header.noField"),
                when(times, messages),
                messages.text(
                        "words.header.machine",
                        rig.name(),
                        rig.rows(),
                        Message.value(QuantityKind.LENGTH, rig.widthM())),
                endS,
                facts,
                new UnitLabels(
                        f.unit(QuantityKind.AREA),
                        f.unit(QuantityKind.LENGTH),
                        f.unit(QuantityKind.VOLUME),
                        f.unit(QuantityKind.RATE),
                        f.unit(QuantityKind.NITROGEN_RATE),
                        f.unit(QuantityKind.SPEED)),
                messages.text("words.header.program", options.programVersion()));
    }

    /** The kind of report with the field and the date, where they are known. */
    private static String title(String kind, String field, double startS, Messages messages) {
        if (!UnitFormat.isKnown(startS)) {
            return field.isEmpty() ? kind : messages.text("words.header.titleUndated", kind, field);
        }
        return field.isEmpty()
                ? messages.text("words.header.titleNoField", kind, Message.time(startS))
                : messages.text("words.header.title", kind, field, Message.time(startS));
    }

    /** Local day and hours, with the zone, and with what was assumed of the log's own zone. */
    public static String when(JobTimes times, Messages messages) {
        String when = when(times.startS(), times.endS(), messages);
        return times.zoneAssumed() && UnitFormat.isKnown(times.startS())
                ? messages.text("words.header.zoneAssumed", when)
                : when;
    }

    /** Local day and hours, with the zone. */
    public static String when(double startS, double endS, Messages messages) {
        UnitFormat f = messages.units();
        if (!UnitFormat.isKnown(startS)) {
            return messages.text("words.header.noTimes");
        }
        boolean sameDay = f.date(startS).equals(f.date(endS));
        if (JobTimes.isDay(startS, f.zone()) && JobTimes.isDay(endS, f.zone())) {
            return messages.text(
                    sameDay ? "words.header.day" : "words.header.days", Message.time(startS), Message.time(endS));
        }
        return messages.text(
                sameDay ? "words.header.when" : "words.header.whenDays",
                Message.time(startS),
                Message.time(endS),
                zoneNote(messages));
    }

    private static String zoneNote(Messages messages) {
        UnitFormat f = messages.units();
        if (JobClock.isBySun(f.zone())) {
            return messages.text("words.header.bySun", zone(f));
        }
        return f.zone().equals(ZoneOffset.UTC) ? messages.text("words.header.utc") : zone(f);
    }

    /** The name of the time zone; {@code UTC}, or {@code UTC−6}, for one that is only an offset. */
    public static String zone(UnitFormat f) {
        boolean named = !JobClock.isBySun(f.zone()) && !(f.zone() instanceof ZoneOffset);
        if (named) {
            return f.zone().getId();
        }
        ZoneOffset offset = f.zone().getRules().getOffset(Instant.EPOCH);
        int seconds = offset.getTotalSeconds();
        if (seconds % SECONDS_PER_HOUR != 0) {
            return "UTC" + offset.getId();
        }
        return seconds == 0 ? "UTC" : "UTC" + (seconds < 0 ? "−" : "+") + Math.abs(seconds / SECONDS_PER_HOUR);
    }
}
