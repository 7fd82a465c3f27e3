package io.rowledger.batch;

import io.rowledger.report.common.Audience;
import io.rowledger.report.common.ReportOptions;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;

/** What of a call a job's results depend on, besides its files, as the ledger keeps it. */
public final class BatchOptions {
    private BatchOptions() {}

    /**
     * Returns the options as text, by name. Templates of the user's own count by their bytes.
     */
    public static Map<String, String> of(ReportOptions look, Set<Audience> audiences, boolean applySetupCheck) {
        Map<String, String> options = new TreeMap<>();
        options.put("units", look.units().name().toLowerCase(Locale.ROOT));
        options.put("paper", look.paper().css());
        options.put(
                "for",
                String.join(
                        ",",
                        new TreeSet<>(audiences.stream().map(Audience::word).toList())));
        options.put("apply-setup-check", Boolean.toString(applySetupCheck));
        options.put("language", look.language().getLanguage());
        Path templates = look.templateFolder();
        if (templates != null) {
            options.put("templates", Digests.of(templates));
        }
        return options;
    }
}
