package io.rowledger.log.header;

import io.rowledger.units.Dimension;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** A quantity that a log can have a column for, with the column names recognized for it. */
public enum LogQuantity {
    TIME(
            "time",
            Dimension.TIME,
            "",
            Per.LOG,
            "time timestamp datetime date/time dateandtime utc utctime utcdatetime timeutc gpstime gnsstime isotime epoch "
                    + "epochtime unixtime unix localtime timelocal localdatetime timeofday clocktime logtime recordtime "
                    + "recordedat loggedat"),
    DATE(
            "date",
            null,
            "",
            Per.LOG,
            "date utcdate dateutc gpsdate gnssdate localdate datelocal logdate recorddate datestamp gpsdatestamp "
                    + "dateofrecord datelogged dategps"),
    HALF_DAY("am_pm", null, "", Per.LOG, "ampm am/pm amorpm meridiem meridian"),
    GPS_WEEK("gps_week", null, "", Per.LOG, "gpsweek gnssweek gpswk week weeknumber gpsweeknumber weekno wn"),
    TIME_OF_WEEK(
            "time_of_week",
            Dimension.TIME,
            "s",
            Per.LOG,
            "timeofweek gpstimeofweek tow gpstow itow secondsofweek secondofweek secofweek sow gpsseconds gpssow gpssecond "
                    + "secondsoftheweek"),
    LAT(
            "lat",
            Dimension.ANGLE,
            "deg",
            Per.LOG,
            "lat latitude gpslat gpslatitude gnsslat gnsslatitude latgps latitudegps poslat positionlat positionlatitude "
                    + "antennalat antennalatitude wgs84lat wgs84latitude latwgs84 latitudewgs84 latdd latitudedd",
            "y gpsy posy ypos"),
    LAT_SIDE(
            "lat_side",
            null,
            "",
            Per.LOG,
            "latside lathemisphere lathemi latdir latdirection latns latitudens latitudehemisphere latitudedir "
                    + "latituderef latref ns n/s latitudedirection northsouth north/south hemispherens"),
    LON(
            "lon",
            Dimension.ANGLE,
            "deg",
            Per.LOG,
            "lon long lng longitude gpslon gpslong gpslng gpslongitude gnsslon gnsslongitude longps longitudegps poslon "
                    + "poslong positionlon positionlong positionlongitude antennalon antennalong antennalongitude wgs84lon "
                    + "wgs84longitude lonwgs84 longitudewgs84 londd longitudedd",
            "x gpsx posx xpos"),
    LON_SIDE(
            "lon_side",
            null,
            "",
            Per.LOG,
            "lonside lonhemisphere lonhemi londir londirection lonew longitudeew longitudehemisphere longitudedir "
                    + "longituderef lonref ew e/w longitudedirection eastwest east/west hemisphereew longew longdir"),
    FLOW(
            "flow",
            Dimension.FLOW,
            null,
            Per.OUTLET,
            "flow flowrate actualflow meteredflow actualflowrate measuredflow measuredflowrate flowactual flowrateactual "
                    + "flowmeter",
            "rate actualrate measuredrate"),
    ROW_RATE(
            "rate",
            Dimension.RATE,
            null,
            Per.OUTLET,
            "rate appliedrate actualrate measuredrate applicationrate rateapplied rateactual flowrate asappliedrate "
                    + "actualapplicationrate appliedvolumerate volumerate apprate appliedrat productrate",
            "applied"),
    ROW_NITROGEN_RATE(
            "nitrogen_rate",
            Dimension.MASS_PER_AREA,
            null,
            Per.OUTLET,
            "nitrogenrate nrate nitrogen appliednitrogen nitrogenapplied actualnitrogen ratenitrogen raten",
            "n"),
    BAR_FLOW(
            "flow",
            Dimension.FLOW,
            null,
            Per.PRODUCT,
            "flow flowrate actualflow meteredflow actualflowrate measuredflow measuredflowrate flowactual flowrateactual "
                    + "flowmeter productflow productflowrate",
            "rate actualrate measuredrate"),
    // Shapefiles cut names at ten characters: applicatio(n_rate), actual_rat(e), asappliedr(ate).
    BAR_RATE(
            "rate",
            Dimension.RATE,
            null,
            Per.PRODUCT,
            "rate appliedrate actualrate measuredrate applicationrate rateapplied rateactual flowrate asappliedrate "
                    + "actualapplicationrate appliedvolumerate volumerate barrate apprate appliedrat applicatio "
                    + "actualrat asappliedr rateapplie productrate",
            "applied"),
    BAR_NITROGEN_RATE(
            "nitrogen_rate",
            Dimension.MASS_PER_AREA,
            null,
            Per.PRODUCT,
            "nitrogenrate nrate nitrogen appliednitrogen nitrogenapplied actualnitrogen ratenitrogen raten",
            "n"),
    VOLUME_SINCE_LAST(
            "volume_since_last",
            Dimension.VOLUME,
            null,
            Per.OUTLET,
            "volumesincelast volsincelast sincelast volumesincelastrecord volumeincrement deltavolume volumedelta "
                    + "intervalvolume volumestep incrementalvolume"),
    VOLUME_TOTAL(
            "volume_total",
            Dimension.VOLUME,
            null,
            Per.OUTLET,
            "volumetotal totalvolume total totalizer totaliser cumulativevolume volumecumulative cumulative "
                    + "accumulatedvolume accumulated cumulativetotal totalflow flowtotal runningtotal"),
    VOLUME("volume", Dimension.VOLUME, null, Per.OUTLET, "volume vol amount quantity applied appliedvolume dispensed"),
    COUNT_SINCE_LAST(
            "count_since_last",
            null,
            "",
            Per.OUTLET,
            "countsincelast countssincelast pulsessincelast pulsecountsincelast countincrement deltacount countdelta "
                    + "deltapulses"),
    COUNT_TOTAL(
            "count_total",
            null,
            "",
            Per.OUTLET,
            "counttotal totalcount totalcounts totalpulses pulsetotal pulsestotal cumulativecount cumulativepulses"),
    COUNT("count", null, "", Per.OUTLET, "count counts pulse pulses pulsecount ticks flowcount flowpulses flowcounts"),
    TARGET(
            "target",
            Dimension.RATE,
            null,
            Per.PRODUCT,
            "target targetrate setpoint setpointrate setrate prescription prescribedrate desiredrate commandedrate "
                    + "plannedrate prescriptionrate targetapplicationrate desiredapplicationrate ratetarget ratesetpoint"),
    WIDTH(
            "width",
            Dimension.LENGTH,
            null,
            Per.LOG,
            "width swathwidth swath workingwidth activewidth appliedwidth coveredwidth barwidth implementwidth "
                    + "widthactive widthworking"),
    SPEED(
            "speed",
            Dimension.SPEED,
            null,
            Per.LOG,
            "speed groundspeed gpsspeed gnssspeed speedoverground sog gs gndspeed vehiclespeed tractorspeed travelspeed "
                    + "speedgps implementspeed",
            "velocity"),
    COURSE(
            "course",
            Dimension.ANGLE,
            "deg",
            Per.LOG,
            "course cog courseoverground gpscourse gnsscourse trackmadegood tmg coursemadegood ctmg truecourse "
                    + "coursetrue trackoverground trackangle",
            "heading headingtrue trueheading gpsheading"),
    DOWN(
            "down",
            null,
            "",
            Per.LOG,
            "down bardown lowered implementdown workstate working toolbardown workstatus workingstate workingstatus "
                    + "implementstate implementstatus implementlowered barstate barlowered toolbarlowered toolbarstate "
                    + "inwork inground workswitch"),
    ON("on", null, "", Per.OUTLET, "on commandedon command valve state status onoff on/off switch active enabled"),
    ROW(
            "row",
            null,
            "",
            Per.LOG,
            "row rownumber rowno rownum outlet outletnumber outletno nozzle nozzlenumber nozzleno section sectionnumber "
                    + "sectionno channel channelnumber knife knifenumber knifeno coulter drop meternumber rowid outletid "
                    + "row# nozzleid sectionid"),
    FIX(
            "fix",
            null,
            "",
            Per.LOG,
            "fix fixtype fixquality gpsfix gpsquality gnssfix gnssquality quality gpsfixtype gnssfixtype fixstatus "
                    + "positionquality ggaquality fixindicator qualityindicator"),
    HDOP("hdop", null, "", Per.LOG, "hdop horizontaldop gpshdop"),
    YAW_RATE("yaw_rate", Dimension.TURN_RATE, null, Per.LOG, "yawrate turnrate rateofturn"),
    ROLL("roll", Dimension.ANGLE, null, Per.LOG, "roll rollangle"),
    PRESSURE(
            "pressure",
            Dimension.PRESSURE,
            null,
            Per.LOG_OR_OUTLET,
            "pressure press supplypressure linepressure manifoldpressure systempressure"),
    FLOW_TOTAL(
            "flow_total",
            Dimension.FLOW,
            null,
            Per.PRODUCT,
            "flowtotal totalflow mainflow totalflowrate totalmeter mainflowrate bulkflow barflow flowratetotal"),
    BAR_VOLUME_SINCE_LAST(
            "volume_since_last",
            Dimension.VOLUME,
            null,
            Per.PRODUCT,
            "volumesincelast volsincelast sincelast volumesincelastrecord volumeincrement deltavolume volumedelta "
                    + "intervalvolume volumestep incrementalvolume"),
    BAR_VOLUME_TOTAL(
            "volume_total",
            Dimension.VOLUME,
            null,
            Per.PRODUCT,
            "volumetotal totalvolume total totalizer totaliser cumulativevolume volumecumulative cumulative "
                    + "accumulatedvolume accumulated cumulativetotal totalflow flowtotal runningtotal totalapplied "
                    + "appliedtotal totalvolumeapplied totalappliedvolume appliedvolumetotal volumeappliedtotal "
                    + "cumulativeapplied totaldispensed totalproduct totalproductapplied productappliedtotal"),
    BAR_VOLUME(
            "volume",
            Dimension.VOLUME,
            null,
            Per.PRODUCT,
            "volume vol amount quantity applied appliedvolume volumeapplied amountapplied productapplied dispensed");

    /** How often a log can have the column. */
    enum Per {
        LOG,
        PRODUCT,
        OUTLET,
        LOG_OR_OUTLET
    }

    private final String canonical;
    private final @Nullable Dimension dimension;
    private final @Nullable String impliedUnit;
    private final Per per;
    private final String names;
    private final String weakNames;

    LogQuantity(String canonical, @Nullable Dimension dimension, @Nullable String impliedUnit, Per per, String names) {
        this(canonical, dimension, impliedUnit, per, names, "");
    }

    LogQuantity(
            String canonical,
            @Nullable Dimension dimension,
            @Nullable String impliedUnit,
            Per per,
            String names,
            String weakNames) {
        this.canonical = canonical;
        this.dimension = dimension;
        this.impliedUnit = impliedUnit;
        this.per = per;
        this.names = names;
        this.weakNames = weakNames;
    }

    /** Returns the canonical column name, without row number and unit. */
    public String canonical() {
        return canonical;
    }

    /** Returns the dimension of its values; null for states, digits and ratios. */
    @Nullable
    public Dimension dimension() {
        return dimension;
    }

    /** Returns the default unit: null if the header must have one, empty if there is no unit. */
    @Nullable
    String impliedUnit() {
        return impliedUnit;
    }

    Per per() {
        return per;
    }

    /** Returns the recognized names, normalized by {@link ColumnName#plain}. */
    List<String> names() {
        return List.of(names.split(" ", -1));
    }

    /** Returns ambiguous names, used only if the log has no column with one of {@link #names}. */
    List<String> weakNames() {
        return weakNames.isEmpty() ? List.of() : List.of(weakNames.split(" ", -1));
    }

    /** Returns true for columns of one product. */
    boolean ofProduct() {
        return this == TARGET || this == FLOW_TOTAL || isFlowSource();
    }

    /** Returns true for a quantity that gives the flow of a row, a meter or the whole bar. */
    public boolean isFlowSource() {
        return metersFlow() || isRate() || this == BAR_FLOW || isBarVolume();
    }

    /** Returns true for a rate per area, which becomes a flow through width and speed. */
    public boolean isRate() {
        return this == ROW_RATE || this == BAR_RATE || isNitrogenRate();
    }

    /** Returns true for a weight of nitrogen per area. */
    public boolean isNitrogenRate() {
        return this == ROW_NITROGEN_RATE || this == BAR_NITROGEN_RATE;
    }

    /** Returns true for a quantity of the whole bar that gives its flow. */
    public boolean isOfBar() {
        return this == BAR_FLOW || this == BAR_RATE || this == BAR_NITROGEN_RATE || isBarVolume();
    }

    /** Returns true if a log can be used without the column: its faults are noted, not refused. */
    public boolean isOptional() {
        return switch (this) {
            case SPEED, COURSE, YAW_RATE, ROLL, PRESSURE, FLOW_TOTAL, HDOP, FIX, WIDTH -> true;
            default -> false;
        };
    }

    /** Returns true for states and the fix digit: small whole numbers. */
    public boolean isState() {
        return this == DOWN || this == ON || this == FIX;
    }

    /** Returns true for a column that only helps to read another one and is not in the table. */
    public boolean isHelper() {
        return this == DATE
                || this == HALF_DAY
                || this == GPS_WEEK
                || this == TIME_OF_WEEK
                || this == LAT_SIDE
                || this == LON_SIDE
                || this == ROW;
    }

    /** Returns true for a flow, volume or pulse count of an outlet. */
    boolean metersFlow() {
        return this == FLOW || (isVolume() && !isBarVolume()) || isCount();
    }

    /** Returns true for a volume of an outlet or of the whole bar. */
    public boolean isVolume() {
        return this == VOLUME || this == VOLUME_SINCE_LAST || this == VOLUME_TOTAL || isBarVolume();
    }

    /** Returns true for a volume of the whole bar. */
    public boolean isBarVolume() {
        return this == BAR_VOLUME || this == BAR_VOLUME_SINCE_LAST || this == BAR_VOLUME_TOTAL;
    }

    /** Returns true for a pulse count of an outlet. */
    public boolean isCount() {
        return this == COUNT || this == COUNT_SINCE_LAST || this == COUNT_TOTAL;
    }
}
