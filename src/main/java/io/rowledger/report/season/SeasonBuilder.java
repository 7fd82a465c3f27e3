package io.rowledger.report.season;

import io.rowledger.finding.UnusableInputException;
import io.rowledger.rate.NutrientKg;
import io.rowledger.rig.Credit;
import io.rowledger.rig.EarlierApplication;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/** Adds jobs up, field by field. */
public final class SeasonBuilder {
    /** Boundaries of one field drawn twice agree within this. */
    private static final double SAME_BOUNDARY = 0.01;

    private final List<String> notes = new ArrayList<>();

    private SeasonBuilder() {}

    /**
     * The ledger of these jobs, each counted once.
     *
     * @throws UnusableInputException where two jobs share a part of their logs
     */
    public static Season build(List<SeasonJob> jobs) {
        return new SeasonBuilder().season(jobs);
    }

    private Season season(List<SeasonJob> given) {
        List<SeasonJob> jobs = new ArrayList<>(SeasonOnce.of(given, notes));
        jobs.sort(Comparator.comparingDouble(SeasonJob::startS).thenComparing(SeasonJob::folder));
        Map<String, List<SeasonJob>> groups = new TreeMap<>();
        for (SeasonJob job : jobs) {
            // Results of a field without a name are a field of their own: nobody can tell which they belong to.
            String name = plain(job.field()).isEmpty() ? "\uffff" + job.folder() : plain(job.field());
            groups.computeIfAbsent(plain(job.farm()) + "\u0000" + name, key -> new ArrayList<>())
                    .add(job);
        }
        List<SeasonField> fields = new ArrayList<>();
        groups.values().forEach(group -> fields.add(field(group)));
        sameNameTwice(fields);
        return new Season(fields, products(jobs), notes);
    }

    private static String plain(String name) {
        return name.strip().replaceAll("\\s+", " ").toLowerCase(Locale.ROOT);
    }

    private SeasonField field(List<SeasonJob> jobs) {
        SeasonJob last = jobs.get(jobs.size() - 1);
        String name = last.field().isBlank()
                ? "Field without a name (" + last.folder() + ")"
                : last.field().strip();
        double areaM2 = area(name, jobs);
        NutrientKg kg = NutrientKg.NONE;
        for (SeasonJob job : jobs) {
            kg = kg.plus(job.kg());
            if (Double.isNaN(job.nitrogenKg())) {
                notes.add(name + ": the nitrogen of " + job.folder()
                        + " is not known (its rig file lacks a density or an analysis), so no total with it is.");
            }
        }
        double creditKg = credits(name, jobs, areaM2);
        return new SeasonField(
                last.farm().strip(),
                name,
                jobs,
                areaM2,
                kg,
                earlier(name, jobs, areaM2),
                creditKg,
                latest(
                        name,
                        "plans",
                        jobs.stream().mapToDouble(SeasonJob::planKgPerM2).toArray()),
                latest(
                        name,
                        "caps",
                        jobs.stream().mapToDouble(SeasonJob::capKgPerM2).toArray()));
    }

    private double area(String name, List<SeasonJob> jobs) {
        if (jobs.size() == 1) {
            return jobs.get(0).coveredM2();
        }
        double least = Double.POSITIVE_INFINITY;
        double most = 0;
        for (SeasonJob job : jobs) {
            double m2 = job.boundaryM2();
            least = Double.isNaN(m2) ? Double.NaN : Math.min(least, m2);
            most = Math.max(most, m2);
            if (Double.isNaN(m2)) {
                break;
            }
        }
        if (most - least <= SAME_BOUNDARY * most) {
            return most;
        }
        notes.add(name + ": its " + jobs.size()
                + " jobs have no boundary in common, so nobody can tell whether they lie side"
                + " by side or on one another; pounds add up, the rate over the field is not known. Run report with"
                + " --boundary to have it.");
        return Double.NaN;
    }

    /** Nitrogen of what came before, each application once: not again where it is a job of this ledger itself. */
    private double earlier(String name, List<SeasonJob> jobs, double areaM2) {
        Map<String, EarlierApplication> seen = new HashMap<>();
        double sumKg = 0;
        for (SeasonJob job : jobs) {
            for (EarlierApplication one : job.earlier()) {
                String called = "\"" + one.what() + "\" of " + one.date();
                EarlierApplication before = seen.putIfAbsent(plain(one.date()) + "|" + plain(one.what()), one);
                if (before != null) {
                    notes.add(name + ": " + called + " was entered for more than one job and is counted once"
                            + (before.nitrogenKgPerM2() == one.nitrogenKgPerM2()
                                    ? "."
                                    : ", with the figure of the first; the figures differ."));
                    continue;
                }
                Optional<SeasonJob> itself = itself(one, job, jobs);
                if (itself.isPresent()) {
                    notes.add(name + ": " + called + " is taken to be the job of that day in "
                            + itself.get().folder() + " and is counted once.");
                    continue;
                }
                if (jobs.size() > 1 && day(one).isEmpty()) {
                    notes.add(name + ": " + called
                            + " has no date such as 2026-04-28 to compare; it is counted as entered. "
                            + "Make sure that it is none of the jobs here.");
                }
                sumKg += one.nitrogenKgPerM2() * (Double.isNaN(areaM2) ? job.coveredM2() : areaM2);
            }
        }
        if (Double.isNaN(sumKg)) {
            notes.add(name + ": an earlier application does not tell its nitrogen, so no total with it is known.");
        }
        return sumKg;
    }

    private static Optional<SeasonJob> itself(EarlierApplication one, SeasonJob of, List<SeasonJob> jobs) {
        return day(one).flatMap(day -> jobs.stream()
                .filter(job -> !job.digests().equals(of.digests()) && job.workedOn(day))
                .findFirst());
    }

    private static Optional<LocalDate> day(EarlierApplication one) {
        try {
            return Optional.of(LocalDate.parse(one.date().strip()));
        } catch (DateTimeParseException e) {
            return Optional.empty();
        }
    }

    private double credits(String name, List<SeasonJob> jobs, double areaM2) {
        Map<String, Credit> seen = new HashMap<>();
        double sumKg = 0;
        for (SeasonJob job : jobs) {
            for (Credit credit : job.credits()) {
                Credit before = seen.putIfAbsent(plain(credit.what()), credit);
                if (before == null) {
                    sumKg += credit.nitrogenKgPerM2() * (Double.isNaN(areaM2) ? job.coveredM2() : areaM2);
                } else {
                    notes.add(name + ": the credit \"" + credit.what()
                            + "\" was entered for more than one job and is counted"
                            + " once"
                            + (before.nitrogenKgPerM2() == credit.nitrogenKgPerM2()
                                    ? "."
                                    : ", with the figure of the first; the figures differ."));
                }
            }
        }
        return sumKg;
    }

    /** The last figure entered; a note where earlier ones were others. */
    private double latest(String name, String what, double[] kgPerM2) {
        double latest = Double.NaN;
        boolean differs = false;
        for (double one : kgPerM2) {
            if (!Double.isNaN(one)) {
                differs |= !Double.isNaN(latest) && one != latest;
                latest = one;
            }
        }
        if (differs) {
            notes.add(name + ": its jobs were given different " + what + "; the latest is held against the total.");
        }
        return latest;
    }

    private void sameNameTwice(List<SeasonField> fields) {
        for (SeasonField field : fields) {
            boolean another = field.farm().isEmpty()
                    && fields.stream()
                            .anyMatch(other -> !other.farm().isEmpty()
                                    && plain(other.field()).equals(plain(field.field())));
            if (another) {
                notes.add(field.field() + ": some jobs name a farm and some don't; they are counted as two fields.");
            }
        }
    }

    private static List<Season.Product> products(List<SeasonJob> jobs) {
        Map<String, Season.Product> byName = new TreeMap<>();
        for (SeasonJob job : jobs) {
            for (SeasonJob.Put put : job.products()) {
                byName.merge(
                        plain(put.name()),
                        new Season.Product(put.name(), 1, put.volumeL(), put.massKg(), put.kg()),
                        (a, b) -> new Season.Product(
                                a.name(),
                                a.jobs() + b.jobs(),
                                a.volumeL() + b.volumeL(),
                                a.massKg() + b.massKg(),
                                a.kg().plus(b.kg())));
            }
        }
        return List.copyOf(byName.values());
    }
}
