package io.rowledger.diagnose.signal;

import java.util.List;
import java.util.Locale;

/** Turns of phrase that the detectors share. Percentages and times need no units of the reader's choice. */
public final class FindingPhrases {
    /** Goes before whatever touches the machine. */
    public static final String SAFE = "with the system shut, pressure released and protective equipment on, ";

    private FindingPhrases() {}

    public static String pct(double fraction) {
        return String.format(Locale.ROOT, Math.abs(fraction) < 0.0995 ? "%.1f%%" : "%.0f%%", 100 * fraction);
    }

    public static String seconds(double s) {
        return s < 10 ? String.format(Locale.ROOT, "%.1f s", s) : time(s);
    }

    public static String time(double s) {
        long whole = Math.round(s);
        return whole < 120 ? whole + " s" : whole < 7200 ? Math.round(s / 60) + " min" : Math.round(s / 3600) + " h";
    }

    /** Rows from 0 as people count them: "row 7", "rows 7 and 8", "rows 1 to 4 and 9". */
    public static String rows(List<Integer> rows) {
        if (rows.isEmpty()) {
            return "all rows";
        }
        StringBuilder b = new StringBuilder(rows.size() == 1 ? "row " : "rows ");
        for (int i = 0; i < rows.size(); i++) {
            int end = i;
            while (end + 1 < rows.size() && rows.get(end + 1) == rows.get(end) + 1) {
                end++;
            }
            if (i > 0) {
                b.append(end + 1 >= rows.size() ? " and " : ", ");
            }
            b.append(rows.get(i) + 1);
            if (end > i + 1) {
                b.append(" to ").append(rows.get(end) + 1);
                i = end;
            }
        }
        return b.toString();
    }

    public static String capital(String text) {
        return text.substring(0, 1).toUpperCase(Locale.ROOT) + text.substring(1);
    }

    /** Where the hose or group of these rows is to blame, its name. */
    public static String group(Evidence e, List<Integer> rows) {
        if (rows.size() < 2) {
            return "";
        }
        String group = e.ratios.rig.bands().get(rows.get(0)).section();
        for (int r : rows) {
            String other = e.ratios.rig.bands().get(r).section();
            if (group == null || !group.equals(other)) {
                return "; they began together, which points to a shared hose or valve";
            }
        }
        return "; they began together and are all of group " + group + ", which points to what that group shares";
    }

    public static String meterAgainstTotal(double mismatch, double deviation) {
        if (Double.isNaN(mismatch)) {
            return "";
        }
        return Math.abs(mismatch - deviation) < 0.5 * Math.abs(deviation)
                ? ", and the total meter did not follow"
                : ", and the total meter moved with it";
    }

    public static String pressure(double against) {
        if (Double.isNaN(against)) {
            return "";
        }
        return against > 1.05
                ? ", its pressure " + pct(against - 1) + " above the other rows'"
                : against < 0.95
                        ? ", its pressure " + pct(1 - against) + " below the other rows'"
                        : ", its pressure like the other rows'";
    }
}
