package io.rowledger.rig;

/** How the bar follows the tractor: the value of {@code hitch} in the rig file. */
public enum Hitch {
    /** On its own wheels, pivoting at the hitch pin. */
    PULL_TYPE("pull-type"),
    /** Rigid behind the tractor. */
    MOUNTED("mounted");

    private final String word;

    Hitch(String word) {
        this.word = word;
    }

    /** The word in rig files, JSON and reports. */
    public String word() {
        return word;
    }
}
