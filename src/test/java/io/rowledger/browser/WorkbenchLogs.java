package io.rowledger.browser;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** The sample log as a console without names would have written it. */
final class WorkbenchLogs {
    private WorkbenchLogs() {}

    /** Writes the sample with the headers {@code Ch1} to {@code Ch12} and {@code Speed}, without units. */
    static Path unknownHeaders(Path folder) throws IOException {
        List<String> lines = Files.readAllLines(Path.of("sample-logs/plugged-row/log.csv"));
        String[] headers = lines.get(0).split(",", -1);
        List<Integer> kept = new ArrayList<>();
        List<String> names = new ArrayList<>();
        for (int i = 0; i < headers.length; i++) {
            String header = headers[i];
            if (header.startsWith("flow_") && !header.startsWith("flow_total")) {
                names.add("Ch" + Integer.parseInt(header.substring(5, 7)));
                kept.add(i);
            } else if (header.startsWith("speed")) {
                names.add("Speed");
                kept.add(i);
            } else if (List.of("time", "lat", "lon", "fix", "down").contains(header)) {
                names.add(header);
                kept.add(i);
            }
        }
        StringBuilder text = new StringBuilder(String.join(",", names)).append('\n');
        for (String line : lines.subList(1, lines.size())) {
            String[] fields = line.split(",", -1);
            for (int k = 0; k < kept.size(); k++) {
                text.append(k == 0 ? "" : ",").append(fields[kept.get(k)]);
            }
            text.append('\n');
        }
        return Files.writeString(folder.resolve("North 40.csv"), text);
    }
}
