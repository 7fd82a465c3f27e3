package io.rowledger.results;

import com.fasterxml.jackson.core.JsonGenerator;
import io.rowledger.analysis.Analysis;
import io.rowledger.coverage.sections.ShutOffCase;
import io.rowledger.rate.TurnShift;
import io.rowledger.report.review.WhatIfFigures;
import io.rowledger.rig.Price;
import io.rowledger.whatif.WhatIf;
import java.io.IOException;
import java.util.List;
import java.util.Locale;

/** {@code field.what_if} of the summary: the same drive with other machinery or another speed. */
final class WhatIfJson {
    private static final int SECONDS = 1;
    private static final int SHARE = 3;
    private static final int MONEY = 2;
    private static final int SPEED = 3;

    private final Analysis a;
    private final WhatIfFigures figures;
    private final JsonGenerator json;

    private WhatIfJson(Analysis a, JsonGenerator json) {
        this.a = a;
        this.figures = new WhatIfFigures(
                a.rig(), a.coverage(), a.intervals(), a.rates().sweptAreaM2());
        this.json = json;
    }

    /** Writes the field into the open object of the field. */
    static void write(Analysis a, JsonGenerator json) throws IOException {
        new WhatIfJson(a, json).object();
    }

    private void object() throws IOException {
        WhatIf whatIf = a.whatIf();
        json.writeObjectFieldStart("what_if");
        area("least_difference_m2", figures.halfM2());
        json.writeArrayFieldStart("shut_offs");
        for (ShutOffCase one : whatIf.shutOffs()) {
            shutOff(one);
        }
        json.writeEndArray();
        json.writeObjectFieldStart("turn_compensation");
        for (int p = 0; p < whatIf.turns().size(); p++) {
            json.writeObjectFieldStart(a.rig().products().get(p).key());
            turn(whatIf.turns().get(p));
            json.writeEndObject();
        }
        json.writeEndObject();
        json.writeArrayFieldStart("speeds");
        for (WhatIf.Slower one : whatIf.speeds()) {
            json.writeStartObject();
            JsonNumbers.field(json, "holds_mps", one.holdsMps(), SPEED);
            JsonNumbers.field(json, "usual_mps", one.drivenMps(), SPEED);
            area("area_m2", one.areaM2());
            JsonNumbers.field(json, "extra_s", one.extraS(), SECONDS);
            products(saved(one.product(), -one.gainedL()));
            json.writeEndObject();
        }
        json.writeEndArray();
        json.writeArrayFieldStart("in_time");
        for (WhatIf.InTime one : whatIf.inTime()) {
            json.writeStartObject();
            json.writeStringField("kind", one.kind().jsonName());
            rows("rows", one.rows());
            area("area_m2", one.areaM2());
            products(saved(one.product(), -one.gainedL()));
            json.writeEndObject();
        }
        json.writeEndArray();
        json.writeEndObject();
    }

    private double[] saved(int product, double litres) {
        double[] saved = new double[a.rig().products().size()];
        saved[product] = litres;
        return saved;
    }

    private void shutOff(ShutOffCase one) throws IOException {
        json.writeStartObject();
        json.writeStringField("grouping", one.grouping().kind().name().toLowerCase(Locale.ROOT));
        json.writeArrayFieldStart("groups");
        for (List<Integer> group : one.grouping().rows()) {
            json.writeStartArray();
            for (int row : group) {
                json.writeNumber(row);
            }
            json.writeEndArray();
        }
        json.writeEndArray();
        json.writeNumberField("reaction_s", 0);
        json.writeBooleanField("shown", figures.shows(one));
        area("overlap_area_m2", one.overlapM2());
        area("overlap_less_m2", one.overlapLessM2());
        area("outside_boundary_less_m2", one.outsideLessM2());
        area("left_bare_m2", one.uncoveredM2());
        area("off_m2", one.offM2());
        area("off_unsettled_m2", one.offUnsettledM2());
        area("on_m2", one.onM2());
        products(one.savedL());
        json.writeEndObject();
    }

    private void turn(TurnShift turn) throws IOException {
        JsonNumbers.field(json, "turning_s", turn.turningS(), SECONDS);
        JsonNumbers.field(json, "taken_out", turn.takenOut(), SHARE);
        json.writeBooleanField("shown", figures.shows(turn));
        volume("moved_l", turn.movedL());
        area("beyond_5_pct_m2", turn.beyond5M2());
        area("beyond_10_pct_m2", turn.beyond10M2());
        json.writeArrayFieldStart("row_change_l");
        for (double litres : turn.rowChangeL()) {
            json.writeNumber(JsonNumbers.of(litres, JsonNumbers.VOLUME_L));
        }
        json.writeEndArray();
    }

    private void products(double[] savedL) throws IOException {
        json.writeObjectFieldStart("products");
        for (int p = 0; p < savedL.length; p++) {
            Price price = a.rig().job().prices().get(a.rig().products().get(p).key());
            json.writeObjectFieldStart(a.rig().products().get(p).key());
            volume("saved_l", savedL[p]);
            double kg =
                    savedL[p] == 0 ? 0 : savedL[p] * a.rig().products().get(p).nitrogenKgPerL();
            JsonNumbers.field(json, "saved_nitrogen_kg", kg, JsonNumbers.NITROGEN_KG);
            JsonNumbers.field(json, "saved_money", figures.money(p, savedL[p]), MONEY);
            json.writeStringField("currency", price == null ? null : price.currency());
            json.writeEndObject();
        }
        json.writeEndObject();
    }

    private void rows(String name, List<Integer> rows) throws IOException {
        json.writeArrayFieldStart(name);
        for (int row : rows) {
            json.writeNumber(row);
        }
        json.writeEndArray();
    }

    private void area(String name, double areaM2) throws IOException {
        JsonNumbers.field(json, name, areaM2, JsonNumbers.AREA_M2);
    }

    private void volume(String name, double volumeL) throws IOException {
        JsonNumbers.field(json, name, volumeL, JsonNumbers.VOLUME_L);
    }
}
