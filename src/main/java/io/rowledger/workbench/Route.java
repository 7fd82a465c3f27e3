package io.rowledger.workbench;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A kind of request and what answers it.
 *
 * @param method GET, PUT or POST
 * @param path its parts; {@code {}} stands for any one part, {@code **} at the end for all that follow
 * @param endpoint makes the answer
 */
record Route(String method, List<String> path, Endpoint endpoint) {
    /** Copies the list. */
    Route {
        path = List.copyOf(path);
    }

    /** Makes the answer to a request. */
    @FunctionalInterface
    interface Endpoint {
        /**
         * Returns a value to be sent as JSON, or null if the endpoint sent an answer itself.
         *
         * @throws HttpRefusal if the request can't be answered
         */
        @Nullable
        Object answer(Call call) throws IOException;
    }

    /** A route for a path such as {@code /api/fields/{}}. */
    static Route of(String method, String path, Endpoint endpoint) {
        return new Route(method, List.of(path.substring(1).split("/", -1)), endpoint);
    }

    /** Returns the parts that stand for the braces, or null if the path is another. */
    @Nullable
    List<String> match(List<String> parts) {
        boolean open = path.get(path.size() - 1).equals("**");
        int fixed = open ? path.size() - 1 : path.size();
        if (open ? parts.size() <= fixed : parts.size() != fixed) {
            return null;
        }
        List<String> found = new ArrayList<>();
        for (int i = 0; i < fixed; i++) {
            if (path.get(i).equals("{}")) {
                found.add(parts.get(i));
            } else if (!path.get(i).equals(parts.get(i))) {
                return null;
            }
        }
        found.addAll(parts.subList(fixed, parts.size()));
        return found;
    }
}
