package io.rowledger.workbench;

import io.rowledger.log.LogSurvey;
import io.rowledger.log.header.LogOptions;
import io.rowledger.units.Dimension;
import io.rowledger.units.Quantity;
import io.rowledger.units.Reading;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.concurrent.Semaphore;
import org.jspecify.annotations.Nullable;

/** Surveys of logs, the last few kept: a person goes back and forth between screens. */
final class Surveys {
    /** Surveys kept; each holds some 1,200 samples of every column. */
    private static final int KEPT = 24;

    /** Row spacing while no rig file says it, m: 30 in, the usual one of corn. */
    private static final double DEFAULT_SPACING_M = 0.762;

    private final Map<Key, LogSurvey> kept = new LinkedHashMap<>(16, 0.75f, true);
    /** Logs read at a time: each may be large. */
    private final Semaphore places = new Semaphore(2);

    /** What a survey depends on. */
    private record Key(Path log, FileTime time, long size, LogOptions options, double spacingM) {}

    LogSurvey of(Path log, LogOptions options, double spacingM) throws IOException {
        Key key = new Key(log, Files.getLastModifiedTime(log), Files.size(log), options, spacingM);
        synchronized (kept) {
            LogSurvey before = kept.get(key);
            if (before != null) {
                return before;
            }
        }
        places.acquireUninterruptibly();
        try {
            LogSurvey survey = LogSurvey.of(log, options, spacingM);
            synchronized (kept) {
                kept.put(key, survey);
                if (kept.size() > KEPT) {
                    kept.remove(kept.keySet().iterator().next());
                }
            }
            return survey;
        } finally {
            places.release();
        }
    }

    /** The row spacing of a rig file, m; 30 in while it has none. */
    static double spacingM(RigTree rig) {
        return lengthM(rig.text("rows", "spacing"), DEFAULT_SPACING_M);
    }

    static double lengthM(@Nullable String text, double otherwiseM) {
        if (text == null) {
            return otherwiseM;
        }
        Reading reading = Quantity.read(text, Dimension.LENGTH);
        return reading instanceof Quantity quantity && quantity.si() > 0 ? quantity.si() : otherwiseM;
    }
}
