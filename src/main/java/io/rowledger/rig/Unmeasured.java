package io.rowledger.rig;

import io.rowledger.finding.UnusableInputException;
import java.util.ArrayList;
import java.util.List;

/** Places of a draft rig file where a figure is still to be written, all named in one message. */
public final class Unmeasured {
    /** What a draft has where a length is to be measured. */
    public static final String MEASURE = "measure this";
    /** What a draft has where somebody has to decide or look something up. */
    public static final String FILL_IN = "fill in";

    private Unmeasured() {}

    /** Refuses a rig file that still is a draft. */
    static void refuse(YamlMap top) {
        List<String> measure = new ArrayList<>();
        List<String> fillIn = new ArrayList<>();
        int first = 0;
        for (String block : List.of("rig", "rows", "products")) {
            for (YamlMap.Scalar scalar : top.scalars(block)) {
                boolean length = scalar.text().equals(MEASURE);
                if (length || scalar.text().equals(FILL_IN)) {
                    first = first == 0 ? scalar.line() : first;
                    (length ? measure : fillIn).add(scalar.path());
                }
            }
        }
        if (first > 0) {
            List<String> found = new ArrayList<>();
            if (!measure.isEmpty()) {
                found.add("lengths nobody has measured yet: " + String.join(", ", measure));
            }
            if (!fillIn.isEmpty()) {
                found.add("places still to be filled in: " + String.join(", ", fillIn));
            }
            throw top.inFile(UnusableInputException.found(String.join("; ", found))
                            .atLine(first))
                    .expected("a figure with its unit for each, such as 5.9 m or 19 ft 4 in")
                    .hint(
                            "measure the machine as the README shows and write each figure over the words that stand there");
        }
    }
}
