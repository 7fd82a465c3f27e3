package io.rowledger.log.taskdata;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What device descriptions say of a machine's measures, m; NaN where they don't. ISO 11783-10 measures from a device's
 * reference point, x forward, y to the right.
 *
 * @param antennaAheadM tractor's reference point (the middle of its rear axle) forward to the receiver
 * @param antennaRightM to the receiver, right of the middle
 * @param axleToHitchM tractor's reference point back to its connector
 * @param hitchToWheelsM the implement's connector back to the point about which it turns
 * @param hitchToDropM the implement's connector back to its sections
 * @param barRightM the middle of the bar, right of the connector
 * @param hitch pull-type or mounted; empty if unknown
 * @param leftM left edges of the outlets, right of the bar's middle; empty where not all are known
 * @param rightM right edges
 */
public record BarGeometry(
        double antennaAheadM,
        double antennaRightM,
        double axleToHitchM,
        double hitchToWheelsM,
        double hitchToDropM,
        double barRightM,
        String hitch,
        List<Double> leftM,
        List<Double> rightM) {
    /** Sections of one bar may lie so far behind each other and still be one line. */
    private static final double ONE_LINE_M = 0.05;

    /** Copies the lists. */
    public BarGeometry {
        leftM = List.copyOf(leftM);
        rightM = List.copyOf(rightM);
    }

    static BarGeometry of(ElementValues values, Task task, Layout layout) {
        Devices devices = values.devices();
        List<DeviceElement> outlets = layout.parts();
        String bar = outlets.get(0).device();
        DeviceElement coupled = null;
        DeviceElement coupling = null;
        for (Task.Connection connection : task.connections()) {
            DeviceElement a = devices.find(connection.first());
            DeviceElement b = devices.find(connection.second());
            if (a != null && b != null && a.device().equals(bar) != b.device().equals(bar)) {
                coupled = a.device().equals(bar) ? a : b;
                coupling = a.device().equals(bar) ? b : a;
            }
        }
        DeviceElement implementHitch =
                isConnector(coupled) ? coupled : only(devices, DeviceElement.CONNECTOR, bar, true, null);
        String tractor = coupling == null ? null : coupling.device();
        DeviceElement receiver = only(devices, DeviceElement.NAVIGATION, bar, false, tractor);
        DeviceElement tractorHitch = isConnector(coupling)
                ? coupling
                : receiver == null ? null : only(devices, DeviceElement.CONNECTOR, receiver.device(), true, null);
        double hitchX = values.lengthM(Ddi.OFFSET_X, implementHitch);
        double dropX = dropX(values, outlets);
        double[] edges = edges(values, outlets);
        boolean whole = edges.length == 2 * outlets.size() && edges.length > 0;
        double middle = whole ? (edges[0] + edges[edges.length - 1]) / 2 : Double.NaN;
        List<Double> left = new ArrayList<>();
        List<Double> right = new ArrayList<>();
        for (int r = 0; whole && r < outlets.size(); r++) {
            left.add(edges[2 * r] - middle);
            right.add(edges[2 * r + 1] - middle);
        }
        DeviceElement device = outlets.get(0).within(DeviceElement.DEVICE);
        return new BarGeometry(
                values.lengthM(Ddi.OFFSET_X, receiver),
                values.lengthM(Ddi.OFFSET_Y, receiver),
                -values.lengthM(Ddi.OFFSET_X, tractorHitch),
                hitchX - values.lengthM(Ddi.ROTATION_POINT_X, device),
                hitchX - dropX,
                middle - values.lengthM(Ddi.OFFSET_Y, implementHitch),
                hitch(values, implementHitch, tractorHitch),
                left,
                right);
    }

    private static boolean isConnector(@Nullable DeviceElement element) {
        return element != null && element.type() == DeviceElement.CONNECTOR;
    }

    /** The one element of a type on a device, or on any but it; null where there are none or several. */
    private static @Nullable DeviceElement only(
            Devices devices, int type, String device, boolean onIt, @Nullable String on) {
        List<DeviceElement> found = devices.all().stream()
                .filter(e -> e.type() == type && e.device().equals(device) == onIt)
                .filter(e -> on == null || e.device().equals(on))
                .toList();
        return found.size() == 1 ? found.get(0) : null;
    }

    private static double dropX(ElementValues values, List<DeviceElement> outlets) {
        double min = Double.POSITIVE_INFINITY;
        double max = Double.NEGATIVE_INFINITY;
        for (DeviceElement outlet : outlets) {
            double x = values.lengthM(Ddi.OFFSET_X, outlet);
            if (Double.isNaN(x)) {
                return Double.NaN;
            }
            min = Math.min(min, x);
            max = Math.max(max, x);
        }
        return max - min <= ONE_LINE_M ? (min + max) / 2 : Double.NaN;
    }

    /** Left and right edge of each outlet, right of the reference point; empty where not all are known. */
    private static double[] edges(ElementValues values, List<DeviceElement> outlets) {
        double[] edges = new double[2 * outlets.size()];
        for (int r = 0; r < outlets.size(); r++) {
            double atM = values.lengthM(Ddi.OFFSET_Y, outlets.get(r));
            double widthM = values.widthM(outlets.get(r));
            if (Double.isNaN(atM) || Double.isNaN(widthM)) {
                return new double[0];
            }
            edges[2 * r] = atM - widthM / 2;
            edges[2 * r + 1] = atM + widthM / 2;
        }
        return edges;
    }

    /** By the type of connector (DDI 157): drawbars, hooks and pins let the bar turn, a mounted three-point hitch does not. */
    private static String hitch(
            ElementValues values, @Nullable DeviceElement implement, @Nullable DeviceElement tractor) {
        for (DeviceElement element : new DeviceElement[] {implement, tractor}) {
            Integer type = values.fixed(Ddi.CONNECTOR_TYPE, element);
            if (type != null && type == MOUNTED) {
                return "mounted";
            }
            if (type != null && (type == DRAWBAR || type == PIVOT || (type >= HOOK && type <= BALL))) {
                return "pull-type";
            }
        }
        return "";
    }

    // Connector types as public transcriptions of the data base list them under DDI 157: 1 drawbar, 2 semi-mounted, 3
    // mounted,
    // 4 hook, 5 clevis, 6 piton, 7 CUNA, 8 ball, 9 chassis of a self-propelled machine, 10 pivot wagon hitch.
    private static final int DRAWBAR = 1;
    private static final int MOUNTED = 3;
    private static final int HOOK = 4;
    private static final int BALL = 8;
    private static final int PIVOT = 10;
}
