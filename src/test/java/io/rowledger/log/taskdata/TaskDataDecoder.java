package io.rowledger.log.taskdata;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import net.sf.geographiclib.Geodesic;

/** A second reader of one task's time log, apart from the program's: rate on the tank, width on the device. */
public final class TaskDataDecoder {
    private TaskDataDecoder() {}

    /** Volume, L, and area, m², by rate (DDI 2 of DET-685) × width (DDI 67 of DET-667) × distance between positions. */
    public static double[] volumeAndArea(Path folder, String name) throws IOException {
        List<String> elements = new ArrayList<>();
        Matcher dlv = Pattern.compile("<DLV A=\"(\\w+)\" B=\"\" C=\"(DET-\\d+)\"")
                .matcher(Files.readString(folder.resolve(name + ".XML")));
        while (dlv.find()) {
            elements.add(Integer.parseInt(dlv.group(1), 16) + " " + dlv.group(2));
        }
        int rate = elements.indexOf("2 DET-685");
        int width = elements.indexOf("67 DET-667");
        ByteBuffer in = ByteBuffer.wrap(Files.readAllBytes(folder.resolve(name + ".BIN")))
                .order(ByteOrder.LITTLE_ENDIAN);
        int[] now = new int[elements.size()];
        double[] sum = new double[2];
        double lat0 = Double.NaN;
        double lon0 = Double.NaN;
        double rate0 = 0;
        double width0 = 0;
        while (in.hasRemaining()) {
            in.getInt();
            in.getShort();
            double lat = in.getInt() * 1e-7;
            double lon = in.getInt() * 1e-7;
            // Up, PDOP, HDOP, satellites, UTC time and day; the status is fixed in the header.
            in.position(in.position() + 4 + 2 + 2 + 1 + 4 + 2);
            for (int n = in.get() & 0xFF; n > 0; n--) {
                int place = in.get() & 0xFF;
                now[place] = in.getInt();
            }
            if (!Double.isNaN(lat0)) {
                double metres = Geodesic.WGS84.Inverse(lat0, lon0, lat, lon).s12;
                sum[0] += rate0 * 1e-8 * width0 / 1000 * metres;
                sum[1] += rate0 > 0 ? width0 / 1000 * metres : 0;
            }
            lat0 = lat;
            lon0 = lon;
            rate0 = now[rate];
            width0 = now[width];
        }
        return sum;
    }
}
