package io.rowledger.rig;

import io.rowledger.text.Message;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What the log can't know: the {@code job:} block of the rig file. Every key is optional and any key may stand there;
 * facts are kept and printed as entered, never inferred.
 *
 * @param facts every plain value as entered, in order; blocks have dotted keys, lists are joined by commas
 * @param earlier nutrients the field had before
 * @param credits nitrogen the plan counts on though nobody spread it
 * @param planKgPerM2 nitrogen the field was to have in all, kg/m²; NaN without a plan
 * @param capKgPerM2 nitrogen it may not go above, kg/m²; NaN without a cap
 * @param order product key to what was ordered
 * @param tickets what was delivered
 * @param prices product key to what it cost
 * @param notes entries of the block that look wrong
 */
public record Job(
        Map<String, String> facts,
        List<EarlierApplication> earlier,
        List<Credit> credits,
        double planKgPerM2,
        double capKgPerM2,
        Map<String, Amount> order,
        List<LoadTicket> tickets,
        Map<String, Price> prices,
        List<Message> notes) {
    /** A rig file without a job block. */
    public static final Job NONE = of(Map.of());

    /** Facts that are one line of text, and that a record looks for by these keys. */
    static final List<String> FACTS = List.of(
            "farm",
            "field",
            "tract",
            "county",
            "state",
            "address",
            "operator",
            "landlord",
            "customer",
            "company",
            "applicator",
            "certificate",
            "certificate_holder",
            "date",
            "crop",
            "stage",
            "planted",
            "harvested",
            "yield_goal",
            "yield",
            "soil",
            "soil_moisture",
            "soil_test",
            "manure_test",
            "water_test",
            "weather",
            "temperature",
            "wind",
            "precipitation",
            "forecast",
            "frozen_or_snow",
            "method",
            "depth",
            "knives",
            "incorporation",
            "source",
            "derived_from",
            "receipts",
            "plan_review",
            "reason",
            "notes",
            "zone",
            "season");

    /** Keys with figures that the program calculates with. */
    static final List<String> FIGURES = List.of("plan", "cap", "earlier", "credits", "order", "tickets", "price");

    /** Copies the lists. */
    public Job {
        facts = Collections.unmodifiableMap(new LinkedHashMap<>(facts));
        earlier = List.copyOf(earlier);
        credits = List.copyOf(credits);
        order = Collections.unmodifiableMap(new LinkedHashMap<>(order));
        tickets = List.copyOf(tickets);
        prices = Collections.unmodifiableMap(new LinkedHashMap<>(prices));
        notes = List.copyOf(notes);
    }

    /** A job with facts and no figures. */
    public static Job of(Map<String, String> facts) {
        return new Job(facts, List.of(), List.of(), Double.NaN, Double.NaN, Map.of(), List.of(), Map.of(), List.of());
    }

    /** Every key the program looks for, facts first. */
    public static List<String> keys() {
        return java.util.stream.Stream.concat(FACTS.stream(), FIGURES.stream()).toList();
    }

    /** A fact as entered; where it stands inside a block ({@code weather: {wind: 8 mph}}) the block's value. */
    public Optional<String> fact(String key) {
        String direct = facts.get(key);
        if (direct != null) {
            return Optional.of(direct);
        }
        return facts.entrySet().stream()
                .filter(entry -> entry.getKey().endsWith("." + key))
                .map(Map.Entry::getValue)
                .findFirst();
    }

    /** The zone printed times are in; UTC where none was entered. */
    public ZoneId zone() {
        String zone = facts.get("zone");
        return zone == null ? ZoneOffset.UTC : ZoneId.of(zone);
    }
}
