package io.rowledger.batch;

import io.rowledger.document.pdf.Paper;
import io.rowledger.report.common.Audience;
import io.rowledger.units.UnitSystem;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;

/** What of a call a job's results depend on, besides its files, as the ledger keeps it. */
public final class BatchOptions {
    private BatchOptions() {}

    /**
     * As words, by option.
     *
     * @param templates the user's own, or null; all of their bytes count
     */
    public static Map<String, String> of(
            UnitSystem units, Paper paper, Set<Audience> audiences, boolean applySetupCheck, @Nullable Path templates) {
        Map<String, String> options = new TreeMap<>();
        options.put("units", units.name().toLowerCase(Locale.ROOT));
        options.put("paper", paper.css());
        options.put(
                "for",
                String.join(
                        ",",
                        new TreeSet<>(audiences.stream().map(Audience::word).toList())));
        options.put("apply-setup-check", Boolean.toString(applySetupCheck));
        if (templates != null) {
            options.put("templates", Digests.of(templates));
        }
        return options;
    }
}
