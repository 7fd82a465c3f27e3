package io.rowledger.diagnose;

import java.util.List;

/** Looks for one kind of fault. */
interface Detector {
    /** What it finds in the evidence; empty where there is nothing of its kind. */
    List<Case> find(Evidence evidence);
}
