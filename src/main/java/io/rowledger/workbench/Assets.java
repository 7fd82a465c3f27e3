package io.rowledger.workbench;

import java.io.IOException;
import java.io.InputStream;
import java.util.LinkedHashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** The page's own files, from the jar: these and no others. */
final class Assets {
    private static final String OWN = "/io/rowledger/web/";
    private static final String LIBRARIES = "/META-INF/resources/webjars/";
    private static final String SCRIPT = "text/javascript; charset=utf-8";
    private static final String STYLE = "text/css; charset=utf-8";

    /** Names in the address to resources in the jar. */
    private static final Map<String, String> RESOURCES = resources();

    private Assets() {}

    private static Map<String, String> resources() {
        Map<String, String> all = new LinkedHashMap<>();
        all.put("leaflet.js", LIBRARIES + "leaflet/1.9.4/dist/leaflet.js");
        all.put("leaflet.css", LIBRARIES + "leaflet/1.9.4/dist/leaflet.css");
        all.put("review.css", OWN + "review.css");
        all.put("units.js", OWN + "units.js");
        for (String own : WorkbenchPage.FILES) {
            all.putIfAbsent(own, OWN + "workbench/" + own);
        }
        return all;
    }

    /** Sends a file; refuses a name that is not one of the page's. */
    static @Nullable Object send(Call call) throws IOException {
        String name = call.parts().get(0);
        String resource = RESOURCES.get(name);
        if (resource == null) {
            throw new HttpRefusal(HttpRefusal.NOT_FOUND, "refusals.nothing");
        }
        Answers.send(call.exchange(), 200, name.endsWith(".css") ? STYLE : SCRIPT, read(resource));
        return null;
    }

    static byte[] read(String resource) throws IOException {
        try (InputStream in = Assets.class.getResourceAsStream(resource)) {
            if (in == null) {
                throw new IllegalStateException("not in the jar: " + resource);
            }
            return in.readAllBytes();
        }
    }
}
