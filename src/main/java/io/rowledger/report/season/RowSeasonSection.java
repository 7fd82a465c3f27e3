package io.rowledger.report.season;

import io.rowledger.document.text.Messages;
import io.rowledger.finding.RegularFile;
import io.rowledger.report.season.RowSeason.Drift;
import io.rowledger.report.season.RowSeason.OfJob;
import io.rowledger.report.season.SeasonLedger.BarSection;
import io.rowledger.report.season.SeasonLedger.RowCells;
import io.rowledger.text.Message;
import io.rowledger.units.UnitFormat;
import java.util.ArrayList;
import java.util.List;

/** Words and figures of how each row did over a season. */
final class RowSeasonSection {
    /** Jobs that fit beside one another on a page; with more, the last ones are shown. */
    private static final int MAX_JOBS = 8;
    /** Jobs from which on a drift can be told. */
    private static final int MIN_JOBS = 3;

    private final Messages messages;
    private final UnitFormat f;

    RowSeasonSection(Messages messages) {
        this.messages = messages;
        this.f = messages.units();
    }

    BarSection of(BarSeason bar, int number) {
        int first = Math.max(0, bar.jobs().size() - MAX_JOBS);
        List<String> heads = new ArrayList<>();
        for (SeasonJob job : bar.jobs().subList(first, bar.jobs().size())) {
            heads.add(messages.text(
                    "season.rows.job",
                    new LedgerCells(messages).day(job, job.startS()),
                    job.field().isBlank()
                            ? RegularFile.name(job.folder())
                            : job.field().strip()));
        }
        List<RowCells> rows = new ArrayList<>();
        for (RowSeason row : bar.rows()) {
            rows.add(row(row, first, bar.rows().size()));
        }
        return new BarSection(
                "rows/" + number,
                bar.rig(),
                bar.product(),
                heads,
                rows,
                calibrate(bar),
                bar.jobs().size() < MIN_JOBS
                        ? messages.text("season.rows.fewJobs", MIN_JOBS)
                        : messages.text("season.rows.driftNote"),
                first > 0
                        ? messages.text(
                                "season.rows.lastJobs", MAX_JOBS, bar.jobs().size())
                        : "");
    }

    private RowCells row(RowSeason row, int first, int rows) {
        List<String> ratios = new ArrayList<>();
        List<String> responses = new ArrayList<>();
        for (OfJob job : row.jobs().subList(first, row.jobs().size())) {
            String mark = job.findings().isEmpty() ? "" : "*";
            ratios.add(Double.isNaN(job.shown()) ? LedgerCells.NONE : f.signedPercent((job.shown() - 1) * 100) + mark);
            responses.add(Double.isNaN(job.responseS()) ? LedgerCells.NONE : f.fixed(job.responseS(), 1));
        }
        Drift ratio = row.ratioDrift(rows);
        Drift response = row.responseDrift(rows);
        return new RowCells(
                row.row(),
                ratios,
                responses,
                Double.isNaN(ratio.change())
                        ? LedgerCells.NONE
                        : messages.text(
                                "season.rows.change",
                                f.signedPercent(ratio.change() * 100),
                                f.fixed(ratio.uncertainty() * 100, 1)),
                ratio.told(),
                response.told() ? messages.text("season.rows.slower", seconds(response)) : "");
    }

    private static Message seconds(Drift response) {
        return Message.of(
                "season.rows.seconds",
                Message.decimal(response.change(), 1),
                Message.decimal(response.uncertainty(), 1));
    }

    /** Which meters to check before the next season, and why; one sentence if there is none. */
    private List<String> calibrate(BarSeason bar) {
        List<String> lines = new ArrayList<>();
        int rows = bar.rows().size();
        for (RowSeason row : bar.rows()) {
            List<Message> why = new ArrayList<>();
            if (row.meterFindings() > 0) {
                why.add(Message.of(
                        "season.rows.why.findings",
                        row.meterFindings(),
                        row.jobs().size()));
            }
            Drift drift = row.ratioDrift(rows);
            if (drift.told()) {
                why.add(Message.of(
                        "season.rows.why.drift",
                        f.signedPercent(drift.change() * 100),
                        Message.decimal(drift.uncertainty() * 100, 1)));
            }
            if (row.standsApart()) {
                why.add(Message.of("season.rows.why.apart", f.signedPercent((row.last() - 1) * 100)));
            }
            if (!why.isEmpty()) {
                lines.add(messages.text("season.rows.calibrate", row.row(), String.join(". ", messages.texts(why))));
            }
        }
        return lines.isEmpty() ? List.of(messages.text("season.rows.none")) : lines;
    }
}
