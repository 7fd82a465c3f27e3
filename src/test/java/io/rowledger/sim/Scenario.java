package io.rowledger.sim;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** A job to simulate: every part can be exchanged, then {@link #run()}. The same scenario gives the same bytes. */
public final class Scenario {
    private final long seed;
    private final SimRig rig;
    private final FieldPlan.Layout layout;
    private List<SimProduct> products = List.of(SimProduct.uan32(42));
    private TargetMap targets = TargetMap.constant();
    private TractorModel tractor = TractorModel.guided();
    private MeteringModel metering = MeteringModel.perRow();
    private GnssModel gnss = GnssModel.rtk(5);
    private LogFormat format = LogFormat.customaryUnits();
    private SimSite site = SimSite.prairie();
    private final List<SimFault> faults = new ArrayList<>();
    private final List<SimKeepOut> keepOuts = new ArrayList<>();
    private Map<String, String> job = new LinkedHashMap<>(Map.of("field", "North bottom"));
    private boolean raster = true;
    private SimRig statedRig;
    private int shutOffTogether = 1;
    private boolean fineShutOff;
    private boolean shutOffOutside;
    private boolean steeredByReceiver;
    private double[][] meterScale = {};
    private Console console = Console.NONE;
    private int stops;
    private double stopS;

    /** A job of this machine in this field. */
    public Scenario(long seed, SimRig rig, FieldPlan.Layout layout) {
        this.seed = seed;
        this.rig = rig;
        this.layout = layout;
    }

    /** Other receiver. */
    public Scenario gnss(GnssModel value) {
        gnss = value;
        return this;
    }

    /** Other metering. */
    public Scenario metering(MeteringModel value) {
        metering = value;
        return this;
    }

    /** Other driver. */
    public Scenario tractor(TractorModel value) {
        tractor = value;
        return this;
    }

    /** Other products. */
    public Scenario products(SimProduct... values) {
        products = List.of(values);
        return this;
    }

    /** Other targets. */
    public Scenario targets(TargetMap value) {
        targets = value;
        return this;
    }

    /** Other look of the log. */
    public Scenario format(LogFormat value) {
        format = value;
        return this;
    }

    /** Other place and time. */
    public Scenario site(SimSite value) {
        site = value;
        return this;
    }

    /** One more fault. */
    public Scenario fault(SimFault value) {
        faults.add(value);
        return this;
    }

    /** One more place to watch: it keeps the truth of what was put down near it. */
    public Scenario keepOut(SimKeepOut value) {
        keepOuts.add(value);
        return this;
    }

    /** The job block of the rig file. */
    public Scenario job(Map<String, String> value) {
        job = new LinkedHashMap<>(value);
        return this;
    }

    /** Another machine in the rig file than the one that drives: a tape measure's errors. */
    public Scenario statedRig(SimRig value) {
        statedRig = value;
        return this;
    }

    /** So many neighboring rows hang on one shut-off valve, counted from the left. */
    public Scenario shutOffTogether(int rows) {
        shutOffTogether = rows;
        return this;
    }

    /** A shut-off that knows covered ground to a decimeter and looks at a row's whole band: as good as can be. */
    public Scenario withFineShutOff() {
        fineShutOff = true;
        return this;
    }

    /** A shut-off that knows the field's boundary as well: rows are off outside of it. */
    public Scenario withShutOffOutside() {
        shutOffOutside = true;
        return this;
    }

    /**
     * The receiver that writes the log steers too, and tells the shut-off where covered ground lies: its drift is in the ground
     * and the log shows a line driven true. Otherwise the tractor drives true and the drift is in the log.
     */
    public Scenario steeredByReceiver() {
        steeredByReceiver = true;
        return this;
    }

    /** What each meter shows of the truth, by product and row: its calibration. */
    public Scenario meterScale(double[][] value) {
        meterScale = value;
        return this;
    }

    /** What the console in the cab makes of it. */
    public Scenario console(Console value) {
        console = value;
        return this;
    }

    /** The tractor stops so often while the bar is lowered, each time for so long. */
    public Scenario stops(int times, double eachS) {
        stops = times;
        stopS = eachS;
        return this;
    }

    /** Leaves the ground raster out: its truth is NaN, the run is faster. */
    public Scenario withoutGround() {
        raster = false;
        return this;
    }

    /** What will be driven. */
    public FieldPlan plan() {
        return layout.lay(rig);
    }

    /** Simulates the job and keeps its records. */
    public SimResult run() {
        return runFor(gnss).get(0);
    }

    /** One drive that several receivers log, each as if it were alone; {@link Simulation} says on what terms. */
    public List<SimResult> runFor(GnssModel... receivers) {
        Simulation simulation = new Simulation(this, List.of(receivers));
        List<List<SimRecord>> logs = new ArrayList<>();
        List<Simulation.Sink> sinks = new ArrayList<>();
        for (GnssModel ignored : receivers) {
            List<SimRecord> log = new ArrayList<>();
            logs.add(log);
            sinks.add(log::add);
        }
        List<Truth> truths = simulation.run(sinks);
        List<SimResult> results = new ArrayList<>();
        for (int i = 0; i < receivers.length; i++) {
            List<SimRecord> written = console.write(logs.get(i), format.customary());
            results.add(new SimResult(this, written, truths.get(i), simulation.plan()));
        }
        return results;
    }

    long seed() {
        return seed;
    }

    /** The machine. */
    public SimRig rig() {
        return rig;
    }

    /** The machine the rig file describes. */
    SimRig statedRig() {
        return statedRig == null ? rig : statedRig;
    }

    FieldPlan.Layout layout() {
        return layout;
    }

    /** The products. */
    public List<SimProduct> products() {
        return products;
    }

    TargetMap targets() {
        return targets;
    }

    TractorModel tractor() {
        return tractor;
    }

    /** The metering. */
    public MeteringModel metering() {
        return metering;
    }

    /** The receiver. */
    public GnssModel gnss() {
        return gnss;
    }

    /** The look of the log. */
    public LogFormat format() {
        return format;
    }

    /** Place and time. */
    public SimSite site() {
        return site;
    }

    List<SimFault> faults() {
        return List.copyOf(faults);
    }

    List<SimKeepOut> keepOuts() {
        return keepOuts;
    }

    Map<String, String> job() {
        return job;
    }

    boolean isSteeredByReceiver() {
        return steeredByReceiver;
    }

    double meterScale(int p, int row0) {
        return meterScale.length == 0 ? 1 : meterScale[p][row0];
    }

    boolean shutOffOutside() {
        return shutOffOutside;
    }

    boolean fineShutOff() {
        return fineShutOff;
    }

    int shutOffTogether() {
        return shutOffTogether;
    }

    int stops() {
        return stops;
    }

    double stopS() {
        return stopS;
    }

    boolean raster() {
        return raster;
    }
}
