package io.rowledger.batch;

/** What makes a job. */
public enum JobGrouping {
    /** Each folder of logs; where that is not plain, it is asked for. */
    UNSAID,
    /** Each folder of logs, whatever lies in it. */
    FOLDER,
    /** Each log. */
    LOG
}
