package io.rowledger.cli;

import io.rowledger.report.season.BatchOutcome;
import io.rowledger.report.season.BatchReport;
import io.rowledger.report.season.BatchReport.Line;
import io.rowledger.report.season.BatchReport.Said;
import java.io.PrintStream;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;

/** The summary of a batch as a table of text. */
final class BatchTable {
    private BatchTable() {}

    /** Prints it; why a job could not be done goes with the errors. */
    static void print(List<BatchOutcome> outcomes, BatchReport report, PrintStream out) {
        report.answer().forEach(out::println);
        List<List<String>> lines = new ArrayList<>();
        lines.add(List.of(
                "job",
                "result",
                report.units().area(),
                report.units().volume(),
                report.units().mass() + " N",
                "skipped",
                "doubled",
                "findings"));
        Iterator<Line> withResults = report.lines().iterator();
        for (BatchOutcome outcome : outcomes) {
            lines.add(
                    outcome.figures() == null
                            ? List.of(outcome.name(), outcome.result().words(), "", "", "", "", "", "")
                            : cells(outcome.name(), withResults.next()));
        }
        lines.add(cells("", report.total()));
        out.println();
        print(lines, out);
        out.println();
        print("Skipped", report.left(), out);
        print("To look at", report.faults(), out);
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

    private static void print(String title, List<Said> said, PrintStream out) {
        for (Said one : said) {
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
