package io.rowledger.log.time;

import io.rowledger.finding.RefusalKind;
import io.rowledger.finding.RegularFile;
import io.rowledger.finding.UnusableInputException;
import java.time.ZoneOffset;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** A zone that stands in the name of a log whose times have none: {@code North40_CDT.csv}, {@code log UTC-5.csv}. */
public final class FileNameZone {
    private static final Pattern ZONE =
            Pattern.compile("(?<![A-Za-z])((?:UTC|GMT)[+\\-]\\d{1,2}(?::?\\d{2})?|[A-Z]{3,4})(?![A-Za-z0-9])");

    private FileNameZone() {}

    /** Refuses a log without zones whose name holds one, other than that of UTC itself. */
    public static void refuse(String file, int line, String header) {
        String name = RegularFile.name(file);
        Matcher zone = ZONE.matcher(name);
        while (zone.find()) {
            double offsetS = ZoneLetters.offsetS(zone.group(1));
            if (!Double.isNaN(offsetS) && offsetS != 0) {
                throw UnusableInputException.found("times without a zone, and " + zone.group(1) + " in the file's name")
                        .kind(RefusalKind.ZONE)
                        .inFile(file)
                        .atLine(line)
                        .atColumn(header)
                        .expected("the zone of the times")
                        .hint("write log: {zone: \"" + ZoneOffset.ofTotalSeconds((int) offsetS)
                                + "\"} in the rig file if that is their zone, log: {zone: UTC} if they are in UTC");
            }
        }
    }
}
