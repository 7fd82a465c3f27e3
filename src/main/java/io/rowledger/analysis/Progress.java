package io.rowledger.analysis;

/** Hears what the pipeline is doing. */
@FunctionalInterface
public interface Progress {
    /** Hears nothing. */
    Progress SILENT = (phase, detail) -> {};

    /**
     * A phase begins.
     *
     * @param phase what is done, such as "reading"
     * @param detail on how much, such as "2 logs, 35.1 MB"; may be empty
     */
    void begins(String phase, String detail);
}
