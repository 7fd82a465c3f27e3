package io.rowledger.report.season;

import io.rowledger.finding.RegularFile;
import io.rowledger.finding.UnusableInputException;
import io.rowledger.rate.NutrientKg;
import io.rowledger.report.findings.FindingFacts;
import io.rowledger.report.findings.FindingTitles;
import io.rowledger.rig.Credit;
import io.rowledger.rig.EarlierApplication;
import io.rowledger.text.Message;
import io.rowledger.uncertainty.Interval;
import io.rowledger.units.QuantityKind;
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

/** Sums the jobs of a season, field by field. */
public final class SeasonBuilder {
    /** Largest relative difference in area between two boundaries of one field; common practice, no source. */
    private static final double MAX_BOUNDARY_DIFFERENCE = 0.01;
    /** Sorts after all names: jobs of unnamed fields come last. */
    private static final String LAST = "\uffff";

    /** Ratio of the distances of both bounds from which on an interval is one-sided: working meters give about 1. */
    private static final double MIN_ONE_SIDED = 2;

    private final List<Message> notes = new ArrayList<>();

    private SeasonBuilder() {}

    /**
     * The sums over these jobs, each counted once.
     *
     * @throws UnusableInputException if two jobs share only a part of their logs
     */
    public static Season build(List<SeasonJob> jobs) {
        return new SeasonBuilder().season(jobs);
    }

    private Season season(List<SeasonJob> given) {
        List<SeasonJob> jobs = new ArrayList<>(DistinctJobs.of(given, notes));
        jobs.sort(Comparator.comparingDouble(SeasonJob::startS).thenComparing(SeasonJob::folder));
        Map<String, List<SeasonJob>> groups = new TreeMap<>();
        for (SeasonJob job : jobs) {
            // Results without a field's name are a field of their own: nobody can tell which field it is.
            String name = plain(job.field()).isEmpty() ? LAST + job.folder() : plain(job.field());
            groups.computeIfAbsent(plain(job.farm()) + "\u0000" + name, key -> new ArrayList<>())
                    .add(job);
        }
        List<SeasonField> fields = new ArrayList<>();
        groups.values().forEach(group -> fields.add(field(group)));
        noteFieldsWithAndWithoutFarm(fields);
        return new Season(fields, products(jobs), notes);
    }

    private static String plain(String name) {
        return name.strip().replaceAll("\\s+", " ").toLowerCase(Locale.ROOT);
    }

    /**
     * True if a bound lies much farther from the figure than the other: the errors of working meters are even, so a meter in
     * question or a flow missing in the log makes it.
     */
    private static boolean oneSided(Interval nitrogen) {
        double up = nitrogen.high() - nitrogen.value();
        double down = nitrogen.value() - nitrogen.low();
        return Math.max(up, down) > MIN_ONE_SIDED * Math.min(up, down);
    }

    private SeasonField field(List<SeasonJob> jobs) {
        SeasonJob last = jobs.get(jobs.size() - 1);
        String name = last.field().isBlank()
                ? FindingFacts.filed(Message.of("season.field.unnamed", RegularFile.name(last.folder())))
                : last.field().strip();
        double areaM2 = area(name, jobs);
        NutrientKg kg = NutrientKg.NONE;
        for (SeasonJob job : jobs) {
            kg = kg.plus(job.kg());
            if (Double.isNaN(job.nitrogenKg())) {
                notes.add(Message.of("season.note.nitrogenUnknown", name, RegularFile.name(job.folder())));
            } else if (oneSided(job.nitrogenWithin())) {
                notes.add(Message.of(
                        "season.note.nitrogenUnsure",
                        name,
                        RegularFile.name(job.folder()),
                        Message.value(QuantityKind.NITROGEN, job.nitrogenKg()),
                        Message.value(
                                QuantityKind.NITROGEN, job.nitrogenWithin().low()),
                        Message.value(
                                QuantityKind.NITROGEN, job.nitrogenWithin().high())));
            }
            noteFindings(name, job);
        }
        double creditKg = credits(name, jobs, areaM2);
        double earlierKg = earlier(name, jobs, areaM2);
        Latest plan = Latest.of(jobs.stream().map(SeasonJob::planKgPerM2).toList());
        Latest cap = Latest.of(jobs.stream().map(SeasonJob::capKgPerM2).toList());
        if (plan.differs()) {
            notes.add(Message.of("season.note.plansDiffer", name));
        }
        if (cap.differs()) {
            notes.add(Message.of("season.note.capsDiffer", name));
        }
        return new SeasonField(
                last.farm().strip(), name, jobs, areaM2, kg, earlierKg, creditKg, plan.kgPerM2(), cap.kgPerM2());
    }

    /** The amounts of a job whose machine may not have worked right are as metered all the same. */
    private void noteFindings(String name, SeasonJob job) {
        List<JobFinding> findings = job.findings().stream()
                .filter(JobFinding::isNamed)
                .filter(finding -> !FindingFacts.onlySetup(finding.kind()))
                .toList();
        if (!findings.isEmpty()) {
            JobFinding first = findings.get(0);
            notes.add(Message.of(
                    "season.note.findings",
                    name,
                    RegularFile.name(job.folder()),
                    FindingTitles.of(first.kind(), first.rows(), first.meters()),
                    findings.size() - 1));
        }
    }

    private double area(String name, List<SeasonJob> jobs) {
        if (jobs.size() == 1) {
            return jobs.get(0).coveredM2();
        }
        double minM2 = Double.POSITIVE_INFINITY;
        double maxM2 = 0;
        for (SeasonJob job : jobs) {
            // NaN once is NaN for all: Math.min and Math.max keep it.
            minM2 = Math.min(minM2, job.boundaryM2());
            maxM2 = Math.max(maxM2, job.boundaryM2());
        }
        if (maxM2 - minM2 <= MAX_BOUNDARY_DIFFERENCE * maxM2) {
            return maxM2;
        }
        notes.add(Message.of("season.note.noCommonBoundary", name, jobs.size()));
        return Double.NaN;
    }

    /** Nitrogen of earlier applications, kg: each once, and not if it is a job of this ledger itself. */
    private double earlier(String name, List<SeasonJob> jobs, double areaM2) {
        Map<String, EarlierApplication> seen = new HashMap<>();
        double sumKg = 0;
        for (SeasonJob job : jobs) {
            for (EarlierApplication one : job.earlier()) {
                EarlierApplication before = seen.putIfAbsent(plain(one.date()) + "|" + plain(one.what()), one);
                if (before != null) {
                    boolean same = before.nitrogenKgPerM2() == one.nitrogenKgPerM2();
                    notes.add(
                            same
                                    ? Message.of("season.note.earlierTwice", name, one.what(), one.date())
                                    : Message.of("season.note.earlierTwiceDiffers", name, one.what(), one.date()));
                } else if (isCounted(name, one, job, jobs)) {
                    sumKg += one.nitrogenKgPerM2() * (Double.isNaN(areaM2) ? job.coveredM2() : areaM2);
                }
            }
        }
        if (Double.isNaN(sumKg)) {
            notes.add(Message.of("season.note.earlierUnknown", name));
        }
        return sumKg;
    }

    /** False if an earlier application is one of the jobs; adds a note if that is so or can't be told. */
    private boolean isCounted(String name, EarlierApplication one, SeasonJob of, List<SeasonJob> jobs) {
        Optional<LocalDate> day = day(one);
        Optional<SeasonJob> itself = day.flatMap(date -> jobs.stream()
                .filter(job -> !job.digests().equals(of.digests()) && job.workedOn(date))
                .findFirst());
        if (itself.isPresent()) {
            notes.add(Message.of(
                    "season.note.earlierIsJob",
                    name,
                    one.what(),
                    one.date(),
                    RegularFile.name(itself.get().folder())));
            return false;
        }
        if (jobs.size() > 1 && day.isEmpty()) {
            notes.add(Message.of("season.note.earlierWithoutDate", name, one.what(), one.date()));
        }
        return true;
    }

    private static Optional<LocalDate> day(EarlierApplication one) {
        try {
            return Optional.of(LocalDate.parse(one.date().strip()));
        } catch (DateTimeParseException e) {
            return Optional.empty();
        }
    }

    /** Nitrogen credits, kg, each once. */
    private double credits(String name, List<SeasonJob> jobs, double areaM2) {
        Map<String, Credit> seen = new HashMap<>();
        double sumKg = 0;
        for (SeasonJob job : jobs) {
            for (Credit credit : job.credits()) {
                Credit before = seen.putIfAbsent(plain(credit.what()), credit);
                if (before == null) {
                    sumKg += credit.nitrogenKgPerM2() * (Double.isNaN(areaM2) ? job.coveredM2() : areaM2);
                } else {
                    boolean same = before.nitrogenKgPerM2() == credit.nitrogenKgPerM2();
                    notes.add(
                            same
                                    ? Message.of("season.note.creditTwice", name, credit.what())
                                    : Message.of("season.note.creditTwiceDiffers", name, credit.what()));
                }
            }
        }
        return sumKg;
    }

    /**
     * The last figure entered.
     *
     * @param kgPerM2 kg/m²; NaN if none was entered
     * @param differs true if an earlier job was given another figure
     */
    private record Latest(double kgPerM2, boolean differs) {
        static Latest of(List<Double> entered) {
            double latest = Double.NaN;
            boolean differs = false;
            for (double one : entered) {
                if (!Double.isNaN(one)) {
                    differs |= !Double.isNaN(latest) && one != latest;
                    latest = one;
                }
            }
            return new Latest(latest, differs);
        }
    }

    private void noteFieldsWithAndWithoutFarm(List<SeasonField> fields) {
        for (SeasonField field : fields) {
            boolean another = field.farm().isEmpty()
                    && fields.stream()
                            .anyMatch(other -> !other.farm().isEmpty()
                                    && plain(other.field()).equals(plain(field.field())));
            if (another) {
                notes.add(Message.of("season.note.farmMissing", field.field()));
            }
        }
    }

    private static List<Season.Product> products(List<SeasonJob> jobs) {
        Map<String, Season.Product> byName = new TreeMap<>();
        for (SeasonJob job : jobs) {
            for (SeasonJob.AppliedProduct one : job.products()) {
                byName.merge(
                        plain(one.name()),
                        new Season.Product(one.name(), 1, one.volumeL(), one.massKg(), one.kg()),
                        Season.Product::plus);
            }
        }
        return List.copyOf(byName.values());
    }
}
