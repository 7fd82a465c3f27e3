package io.rowledger.report.common;

import io.rowledger.document.text.Messages;
import io.rowledger.units.UnitFormat;
import io.rowledger.units.UnitSystem;
import java.time.ZoneOffset;
import java.util.List;

// BRIDGE
public final class Caution {
    private static final Messages ENGLISH = Messages.english(new UnitFormat(UnitSystem.US, ZoneOffset.UTC));

    public static final String RULES = ENGLISH.text(Cautions.RULES);
    public static final String METERS = ENGLISH.text(Cautions.METERS);

    private Caution() {}

    public static List<String> opening() {
        return ENGLISH.texts(Cautions.opening());
    }

    public static List<String> guards() {
        return ENGLISH.texts(Cautions.guards());
    }
}
