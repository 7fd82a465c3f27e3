package io.rowledger.cli;

import io.rowledger.document.text.Messages;
import io.rowledger.report.season.BatchOutcome;
import io.rowledger.report.season.BatchSummary;
import io.rowledger.report.season.BatchSummary.JobText;
import io.rowledger.report.season.BatchSummary.Line;
import java.io.PrintStream;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;

/** The summary of a batch as a table of text. */
final class BatchTable {
    private BatchTable() {}

    /** Prints it; why a job could not be done goes with the errors. */
    static void print(List<BatchOutcome> outcomes, BatchSummary summary, Messages messages, PrintStream out) {
        summary.answer().forEach(out::println);
        List<List<String>> lines = new ArrayList<>();
        lines.add(List.of(
                "job",
                "result",
                summary.units().area(),
                summary.units().volume(),
                summary.units().mass() + " N",
                "skipped",
                "overlap",
                "findings"));
        Iterator<Line> withResults = summary.lines().iterator();
        for (BatchOutcome outcome : outcomes) {
            lines.add(
                    outcome.figures() == null
                            ? List.of(
                                    outcome.name(),
                                    messages.text(outcome.result().text()),
                                    "",
                                    "",
                                    "",
                                    "",
                                    "",
                                    "")
                            : cells(outcome.name(), withResults.next()));
        }
        lines.add(cells("", summary.total()));
        out.println();
        print(lines, out);
        out.println();
        print("Skipped", summary.skipped(), out);
        print("To look at", summary.faults(), out);
    }

    private static List<String> cells(String job, Line line) {
        return List.of(
                job,
                line.result(),
                line.area(),
                line.volume(),
                line.nitrogen(),
                line.skipped(),
                line.overlap(),
                line.found());
    }

    private static void print(String title, List<JobText> texts, PrintStream out) {
        for (JobText one : texts) {
            out.println(title + ", " + one.job() + ": " + String.join(" ", one.text()));
        }
    }

    /** Two columns of words to the left, figures to the right. */
    private static void print(List<List<String>> lines, PrintStream out) {
        int columns = lines.get(0).size();
        int[] widths = new int[columns];
        for (List<String> line : lines) {
            for (int i = 0; i < columns; i++) {
                widths[i] = Math.max(widths[i], line.get(i).length());
            }
        }
        for (List<String> line : lines) {
            StringBuilder text = new StringBuilder();
            for (int i = 0; i < columns; i++) {
                String space = " ".repeat(widths[i] - line.get(i).length());
                text.append(i < 2 ? line.get(i) + space : space + line.get(i)).append("  ");
            }
            out.println(text.toString().stripTrailing());
        }
    }
}
