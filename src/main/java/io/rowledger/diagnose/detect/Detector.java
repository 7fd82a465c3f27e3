package io.rowledger.diagnose.detect;

import io.rowledger.diagnose.signal.Case;
import io.rowledger.diagnose.signal.Evidence;
import java.util.List;

/** Looks for one kind of fault. */
public interface Detector {
    /** What it finds in the evidence; empty where there is nothing of its kind. */
    List<Case> find(Evidence evidence);
}
