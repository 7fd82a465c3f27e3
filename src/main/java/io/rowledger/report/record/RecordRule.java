package io.rowledger.report.record;

/**
 * Published rules on what a nutrient application record has to hold. Examples, never advice on which one binds: a reader's
 * own local rules do. How well each is known to us stands beside it; items asked for are in {@link RecordFields}.
 */
public enum RecordRule {
    /** For those who apply for hire or on more than 50 acres, from a certificate holder. */
    OHIO(
            "Ohio",
            "Ohio Administrative Code 901:5-4-04",
            "3 years",
            Status.CITED,
            "entries within 24 hours of the work, to the certificate holder within 10 days; applies above 50 acres"),
    /** Applicators for hire. */
    MARYLAND_HIRE("Maryland, for hire", "COMAR 15.20.06.05", "3 years", Status.CITED, ""),
    /** Farmers with a nutrient management plan. */
    MARYLAND_FARM(
            "Maryland, farm operators",
            "Maryland Department of Agriculture, nutrient management record keeping, 2003",
            "3 years; yields 5 years",
            Status.CITED,
            ""),
    /** Turf, for its address and label. */
    MARYLAND_TURF("Maryland, licensed turf work", "COMAR 15.20.10.13", "3 years", Status.CITED, "turf only"),
    /** What a customer is handed. */
    MINNESOTA_HIRE(
            "Minnesota, for hire",
            "Minnesota Department of Agriculture, answers on the fertilizer licence",
            "not stated there",
            Status.CITED,
            "a record handed to the customer"),
    /** Users above a yearly amount. */
    INDIANA(
            "Indiana",
            "355 IAC 8 (LSA 11-364)",
            "2 years (distributors)",
            Status.IN_PART,
            "read as proposed and in training notes; applies above 10 cubic yards or 4000 gallons a year"),
    /** Districts' yearly nitrogen reports. */
    NEBRASKA(
            "Nebraska, districts with nitrogen reports",
            "annual nitrogen report of the Central Platte and Lower Elkhorn Natural Resources Districts",
            "as the district says",
            Status.IN_PART,
            "phase 2 and 3 areas; due in March"),
    /** A yearly plan. */
    WISCONSIN(
            "Wisconsin",
            "Wis. Admin. Code ATCP 50.04(3)",
            "not stated there",
            Status.CITED,
            "a yearly plan for every field that meets NRCS Code 590"),
    /** Advice of an extension service along the lines of NRCS 590. */
    UTAH(
            "Utah",
            "Utah State University Extension, manure and waste-water application records",
            "not stated there",
            Status.CITED,
            "advice that follows NRCS Code 590, not a rule"),
    /** The practice standard behind many plans. */
    NRCS_590(
            "USDA NRCS",
            "Conservation Practice Standard Code 590, operation and maintenance",
            "5 years",
            Status.MEMORY,
            "from memory: look it up before you rely on it");

    /** How well a rule is known to the program's authors. */
    public enum Status {
        /** Read in the cited source. */
        CITED("cited"),
        /** Read in part, or as a proposal. */
        IN_PART("cited in part"),
        /** Not read for this program. */
        MEMORY("from memory");

        private final String words;

        Status(String words) {
            this.words = words;
        }

        /** As printed. */
        public String words() {
            return words;
        }
    }

    private final String place;
    private final String citation;
    private final String keep;
    private final Status status;
    private final String note;

    RecordRule(String place, String citation, String keep, Status status, String note) {
        this.place = place;
        this.citation = citation;
        this.keep = keep;
        this.status = status;
        this.note = note;
    }

    /** Whose rule it is, short. */
    public String place() {
        return place;
    }

    /** Where it stands. */
    public String citation() {
        return citation;
    }

    /** How long records are to be kept. */
    public String keep() {
        return keep;
    }

    /** How well it is known here. */
    public Status status() {
        return status;
    }

    /** To whom or what it applies, where that is narrow; may be empty. */
    public String note() {
        return note;
    }

    /** True where the source was read, wholly or in part. */
    public boolean cited() {
        return status != Status.MEMORY;
    }
}
