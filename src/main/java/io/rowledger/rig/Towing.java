package io.rowledger.rig;

/** How the bar follows the tractor. */
public enum Towing {
    /** On its own wheels, pivoting at the hitch pin. */
    DRAWN,
    /** Rigid behind the tractor. */
    CARRIED
}
