package io.rowledger.log.source;

/**
 * One log file: what it was and how much of it could be used.
 *
 * @param file the file name as given
 * @param sha256 digest of its bytes as they lie on disk, lower-case hex
 * @param records data records in the file
 * @param used records that went into the table
 * @param dropped records left out, by reason; {@code used + dropped.total() == records}
 * @param repeated of the duplicates those that hold nothing new: copies of the record before, and times another log covers
 */
public record LogSource(String file, String sha256, int records, int used, Dropped dropped, int repeated) {
    /** A file whose duplicates may each hold something new. */
    public LogSource(String file, String sha256, int records, int used, Dropped dropped) {
        this(file, sha256, records, used, dropped, 0);
    }

    /**
     * Records left out, by reason.
     *
     * @param noFix the receiver had no position
     * @param duplicate same time stamp as the record before
     * @param outOfOrder time runs backward
     * @param jump the position is farther than the tractor could have gone
     * @param frozen the position of the record before, though the machine moved
     * @param unreadable a needed field is empty or not a number
     */
    public record Dropped(int noFix, int duplicate, int outOfOrder, int jump, int frozen, int unreadable) {
        /** Without frozen positions. */
        public Dropped(int noFix, int duplicate, int outOfOrder, int jump, int unreadable) {
            this(noFix, duplicate, outOfOrder, jump, 0, unreadable);
        }

        /** All of them. */
        public int total() {
            return noFix + duplicate + outOfOrder + jump + frozen + unreadable;
        }
    }
}
