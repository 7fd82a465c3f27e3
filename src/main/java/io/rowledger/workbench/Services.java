package io.rowledger.workbench;

import io.rowledger.batch.FieldFiles;
import io.rowledger.document.pdf.Paper;
import io.rowledger.document.text.Messages;
import io.rowledger.report.common.ReportOptions;
import io.rowledger.units.UnitFormat;
import io.rowledger.units.UnitSystem;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.ScheduledExecutorService;
import java.util.function.Consumer;

/** What the workbench offers: the routes of all screens. */
final class Services implements AutoCloseable {
    /** Time zones of the United States, shown first. */
    private static final List<String> US_ZONES = List.of(
            "America/Chicago",
            "America/New_York",
            "America/Denver",
            "America/Los_Angeles",
            "America/Phoenix",
            "America/Detroit",
            "America/Indiana/Indianapolis");

    private final SeasonFolder folder;
    private final Events events;
    private final Uploads uploads;
    private final Workbench.Settings settings;
    private final FieldStore store;
    private final FieldResults results;
    private final SeasonView season;
    private final LogView logs;
    private final FieldSplit splits;
    private final ColumnView columns;
    private final RigView rigs;
    private final Drive drive;
    private final MapView maps;
    private final FactView facts;
    private final Runs runs;
    private final Samples samples;
    private final CompareView comparisons;

    Services(SeasonFolder folder, ScheduledExecutorService timer, Workbench.Settings settings) {
        this.folder = folder;
        this.settings = settings;
        this.events = new Events(timer, System::nanoTime);
        this.uploads = new Uploads(folder, timer, settings.uploads());
        Surveys surveys = new Surveys();
        this.store = new FieldStore(folder);
        this.results = new FieldResults(folder);
        SavedBars bars = new SavedBars(folder);
        this.season = new SeasonView(store, results, bars);
        this.logs = new LogView(store, surveys, bars);
        this.splits = new FieldSplit(store, surveys);
        this.columns = new ColumnView(store, surveys);
        this.rigs = new RigView(store, surveys, bars);
        this.drive = new Drive(store);
        this.maps = new MapView(store, surveys);
        this.facts = new FactView(store);
        this.samples = new Samples(folder);
        this.comparisons = new CompareView(results, folder, this::look);
        this.runs = new Runs(store, this::look, settings.version(), events, settings.failures());
    }

    /** How reports look: as those of a call of {@code report} or {@code batch} without options. */
    private ReportOptions look(ZoneId zone) {
        return new ReportOptions(UnitSystem.US, Paper.LETTER, zone, null, settings.version());
    }

    /** Starts what runs beside the requests. */
    void start() {
        events.start();
    }

    List<Route> routes() {
        List<Route> routes = new ArrayList<>();
        routes.add(Route.of("GET", "/", WorkbenchPage::send));
        routes.add(Route.of("GET", "/web/{}", Assets::send));
        routes.add(Route.of("GET", "/api/events", call -> {
            events.open(call);
            return null;
        }));
        routes.add(Route.of("GET", "/api/words", Services::words));
        routes.add(Route.of("GET", "/api/about", call -> about()));
        routes.add(Route.of("GET", "/api/season", call -> season.season(call.reader())));
        routes.add(Route.of("POST", "/api/fields", call -> season.make(call.json(SeasonView.NewField.class))));
        routes.add(Route.of(
                "GET", "/api/fields/{}", call -> season.field(call.parts().get(0), call.reader())));
        routes.add(Route.of(
                "GET",
                "/api/fields/{}/picture",
                call -> results.picture(call.parts().get(0))));
        routes.add(Route.of("PUT", "/api/fields/{}/files/{}", this::upload));
        routes.add(Route.of("POST", "/api/fields/{}/files/{}/away", this::putAway));
        routes.add(Route.of(
                "GET", "/api/fields/{}/logs", call -> logs.logs(call.parts().get(0))));
        routes.add(Route.of(
                "POST",
                "/api/fields/{}/split",
                call -> splits.split(call.parts().get(0))));
        routes.add(Route.of(
                "GET",
                "/api/fields/{}/columns",
                call -> columns.columns(call.parts().get(0), call.reader().messages())));
        routes.add(Route.of(
                "PUT",
                "/api/fields/{}/columns",
                call -> columns.choose(
                        call.parts().get(0),
                        call.json(ColumnView.Choices.class),
                        call.reader().messages())));
        routes.add(Route.of(
                "POST",
                "/api/fields/{}/check",
                call -> columns.check(call.parts().get(0), call.reader().messages())));
        routes.addAll(setup());
        routes.add(Route.of("GET", "/api/work", call -> runs.work()));
        routes.add(Route.of("POST", "/api/work", call -> runs.start(call.json(Runs.Wanted.class))));
        routes.add(Route.of("POST", "/api/work/stop", call -> runs.stop()));
        routes.add(Route.of("POST", "/api/sample", call -> samples.unpack()));
        routes.add(Route.of(
                "POST", "/api/compare", call -> comparisons.compare(call.json(CompareView.Two.class), call.reader())));
        routes.add(Route.of("POST", "/api/fields/{}/show", this::show));
        ResultFiles files = new ResultFiles(folder);
        routes.add(Route.of("GET", "/results/**", files::send));
        return routes;
    }

    /** Routes of the screens of bar, lengths, product, maps and facts. */
    private List<Route> setup() {
        return List.of(
                Route.of(
                        "GET",
                        "/api/fields/{}/rig",
                        call -> rigs.state(call.parts().get(0))),
                Route.of(
                        "PUT",
                        "/api/fields/{}/rig",
                        call -> rigs.save(call.parts().get(0), call.json(RigView.Blocks.class))),
                Route.of(
                        "POST",
                        "/api/fields/{}/rig/consider",
                        call -> rigs.consider(call.parts().get(0), call.json(RigView.Blocks.class))),
                Route.of(
                        "POST",
                        "/api/fields/{}/rig/drive",
                        call -> drive.drive(
                                call.parts().get(0),
                                call.json(RigView.Blocks.class),
                                look(ZoneOffset.UTC)
                                        .in(call.reader().language())
                                        .in(call.reader().units()))),
                Route.of(
                        "POST",
                        "/api/fields/{}/bar",
                        call -> rigs.take(call.parts().get(0), call.json(RigView.BarName.class))),
                Route.of(
                        "GET",
                        "/api/fields/{}/maps",
                        call -> maps.maps(call.parts().get(0))),
                Route.of(
                        "GET",
                        "/api/fields/{}/boundary/around",
                        call -> maps.around(call.parts().get(0))),
                Route.of(
                        "PUT",
                        "/api/fields/{}/boundary",
                        call -> maps.saveBoundary(call.parts().get(0), call.json(MapView.Ring.class))),
                Route.of(
                        "PUT",
                        "/api/fields/{}/setback",
                        call -> maps.setback(call.parts().get(0), call.json(MapView.Distance.class))),
                Route.of(
                        "GET",
                        "/api/fields/{}/facts",
                        call -> facts.facts(call.parts().get(0), call.reader().messages())));
    }

    /** The words of the page. */
    record Words(String language, Map<String, String> words) {}

    private static Words words(Call call) {
        Map<String, String> words = new TreeMap<>(
                Messages.english(new UnitFormat(UnitSystem.US, ZoneOffset.UTC)).plain("workbench"));
        Messages messages = call.reader().messages();
        words.putAll(messages.plain("workbench"));
        return new Words(messages.language().getLanguage(), words);
    }

    /** What the page's frame shows, the largest file that it can send, bytes, and the time zones to choose from. */
    record About(String version, String folder, boolean opens, long maxBytes, List<String> zones) {}

    private About about() {
        List<String> zones = new ArrayList<>(US_ZONES);
        ZoneId.getAvailableZoneIds().stream()
                .filter(zone -> zone.contains("/") && !zones.contains(zone) && !zone.startsWith("Etc/"))
                .sorted()
                .forEach(zones::add);
        return new About(
                settings.version(),
                folder.root().toString(),
                settings.opener() != null,
                settings.uploads().maxBytes(),
                zones);
    }

    /** Shows the results of a field in the system's own window. */
    private Object show(Call call) {
        Consumer<Path> opener = settings.opener();
        Path place = results.folder(call.parts().get(0));
        if (opener == null || !Files.isDirectory(place)) {
            throw new HttpRefusal(HttpRefusal.CONFLICT, "refusals.resultsIn", place.toString());
        }
        opener.accept(place);
        return Router.done();
    }

    private static List<String> place(Call call) {
        List<String> place = new ArrayList<>(FieldNames.parts(call.parts().get(0)));
        place.add(call.parts().get(1));
        return place;
    }

    /** Moves a file to the dated folder. */
    private Object putAway(Call call) throws IOException {
        List<String> place = place(call);
        Path file = folder.inside(place);
        FieldFiles field = store.field(call.parts().get(0));
        // Task data that lies in the field's folder is a log by the folder's name; a shapefile has several parts.
        Path log =
                file.getFileName().equals(field.folder().getFileName()) && !Files.exists(file) ? field.folder() : file;
        for (Path part : field.logs().contains(log) ? field.parts(log) : List.of(file)) {
            folder.putAway(part);
        }
        return Router.done();
    }

    private Object upload(Call call) throws IOException {
        List<String> place = place(call);
        return uploads.take(call.exchange(), place, "true".equals(call.query().get("replace")));
    }

    boolean isIdle(Duration idle) {
        return events.quiet().compareTo(idle) > 0 && !runs.work().busy();
    }

    @Override
    public void close() {
        runs.close();
        events.close();
    }
}
