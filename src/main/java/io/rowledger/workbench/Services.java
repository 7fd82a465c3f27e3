package io.rowledger.workbench;

import io.rowledger.document.text.Messages;
import io.rowledger.units.UnitFormat;
import io.rowledger.units.UnitSystem;
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

    Services(SeasonFolder folder, ScheduledExecutorService timer, Workbench.Settings settings) {
        this.folder = folder;
        this.settings = settings;
        this.events = new Events(timer, System::nanoTime);
        this.uploads = new Uploads(folder, timer, settings.uploads());
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
        routes.add(Route.of("PUT", "/api/fields/{}/files/{}", this::upload));
        return routes;
    }

    /** The words of the page. */
    record Words(String language, Map<String, String> words) {}

    private Words words() {
        Messages messages = Messages.english(new UnitFormat(UnitSystem.US, ZoneOffset.UTC));
        return new Words(messages.language().getLanguage(), messages.plain("workbench"));
    }

    private Map<String, String> about() {
        return Map.of("version", settings.version(), "folder", folder.root().toString());
    }

    private Object upload(Call call) throws java.io.IOException {
        List<String> place = new ArrayList<>(FieldNames.parts(call.parts().get(0)));
        place.add(call.parts().get(1));
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
