package io.rowledger.report.map;

import static org.junit.jupiter.api.Assertions.assertEquals;

import io.rowledger.document.text.Messages;
import io.rowledger.units.UnitFormat;
import io.rowledger.units.UnitSystem;
import java.time.ZoneOffset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class DeviationClassesTest {
    private static final Messages MESSAGES = Messages.english(new UnitFormat(UnitSystem.US, ZoneOffset.UTC));

    @ParameterizedTest
    @CsvSource({
        "-1, 0",
        "-0.201, 0",
        "-0.2, 0",
        "-0.19, 1",
        "-0.095, 2",
        "0, 3",
        "0.05, 3",
        "0.051, 4",
        "0.1, 4",
        "0.3, 6"
    })
    void a_deviation_has_the_class_whose_upper_bound_it_does_not_exceed(double deviation, int expected) {
        assertEquals(expected, DeviationClasses.of(deviation));
    }

    @ParameterizedTest
    @CsvSource({
        "0, more than 20% under, > 20% under",
        "1, 10 to 20% under, 10 to 20% under",
        "2, 5 to 10% under, 5 to 10% under",
        "3, within 5% of target, within 5%",
        "4, 5 to 10% over, 5 to 10% over",
        "5, 10 to 20% over, 10 to 20% over",
        "6, more than 20% over, > 20% over"
    })
    void names_print_the_bounds_that_decide(int i, String name, String shortName) {
        assertEquals(name, MESSAGES.text(DeviationClasses.name(i, true)));
        assertEquals(shortName, MESSAGES.text(DeviationClasses.shortName(i)));
    }

    @Test
    void without_a_target_the_middle_class_names_the_mean() {
        assertEquals("within 5% of the mean", MESSAGES.text(DeviationClasses.name(DeviationClasses.ON_TARGET, false)));
    }
}
