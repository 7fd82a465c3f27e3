package io.rowledger.workbench;

import io.rowledger.document.text.Messages;
import io.rowledger.units.UnitFormat;
import io.rowledger.units.UnitSystem;
import java.io.IOException;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ScheduledExecutorService;

/** What the workbench offers: the routes of all screens. */
final class Services implements AutoCloseable {
    private final SeasonFolder folder;
    private final Events events;
    private final Uploads uploads;
    private final Workbench.Settings settings;
    private final Messages words = Messages.english(new UnitFormat(UnitSystem.US, ZoneOffset.UTC));
    private final FieldStore store;
    private final FieldResults results;
    private final SeasonView season;
    private final LogView logs;
    private final ColumnView columns;

    Services(SeasonFolder folder, ScheduledExecutorService timer, Workbench.Settings settings) {
        this.folder = folder;
        this.settings = settings;
        this.events = new Events(timer, System::nanoTime);
        this.uploads = new Uploads(folder, timer, settings.uploads());
        Surveys surveys = new Surveys();
        this.store = new FieldStore(folder);
        this.results = new FieldResults(folder);
        this.season = new SeasonView(store, results, new SavedBars(folder));
        this.logs = new LogView(store, surveys);
        this.columns = new ColumnView(store, surveys, words);
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
            events.open(call.exchange());
            return null;
        }));
        routes.add(Route.of("GET", "/api/words", call -> words()));
        routes.add(Route.of("GET", "/api/about", call -> about()));
        routes.add(Route.of("GET", "/api/season", call -> season.season()));
        routes.add(Route.of("POST", "/api/fields", call -> season.make(call.json(SeasonView.NewField.class))));
        routes.add(Route.of(
                "GET", "/api/fields/{}", call -> season.field(call.parts().get(0))));
        routes.add(Route.of(
                "GET",
                "/api/fields/{}/picture",
                call -> results.picture(call.parts().get(0))));
        routes.add(Route.of("PUT", "/api/fields/{}/files/{}", this::upload));
        routes.add(Route.of("POST", "/api/fields/{}/files/{}/away", this::putAway));
        routes.add(Route.of(
                "GET", "/api/fields/{}/logs", call -> logs.logs(call.parts().get(0))));
        routes.add(Route.of(
                "GET",
                "/api/fields/{}/columns",
                call -> columns.columns(call.parts().get(0))));
        routes.add(Route.of(
                "PUT",
                "/api/fields/{}/columns",
                call -> columns.choose(call.parts().get(0), call.json(ColumnView.Choices.class))));
        routes.add(Route.of(
                "POST",
                "/api/fields/{}/check",
                call -> columns.check(call.parts().get(0))));
        ResultFiles files = new ResultFiles(folder);
        routes.add(Route.of("GET", "/results/{}/**", files::send));
        return routes;
    }

    /** The words of the page. */
    record Words(String language, Map<String, String> words) {}

    private Words words() {
        return new Words(words.language().getLanguage(), words.plain("workbench"));
    }

    private Map<String, String> about() {
        return Map.of("version", settings.version(), "folder", folder.root().toString());
    }

    private static List<String> place(Call call) {
        List<String> place = new ArrayList<>(FieldNames.parts(call.parts().get(0)));
        place.add(call.parts().get(1));
        return place;
    }

    /** Moves a file to the dated folder. */
    private Object putAway(Call call) throws IOException {
        folder.putAway(folder.inside(place(call)));
        return Router.done();
    }

    private Object upload(Call call) throws IOException {
        List<String> place = place(call);
        return uploads.take(call.exchange(), place, "true".equals(call.query().get("replace")));
    }

    boolean isIdle(int idleS) {
        return events.quietS() > idleS;
    }

    @Override
    public void close() {
        events.close();
    }
}
