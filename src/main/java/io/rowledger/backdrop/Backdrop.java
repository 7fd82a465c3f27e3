package io.rowledger.backdrop;

import java.util.Base64;

/**
 * A picture of the ground, north up in the job's plane.
 *
 * @param bounds west, south, east and north of its edges, m
 * @param jpeg the picture (ISO/IEC 10918-1)
 */
public record Backdrop(double[] bounds, byte[] jpeg) {
    /** Returns the picture as an address that holds all of it (RFC 2397). */
    public String dataUri() {
        return "data:image/jpeg;base64," + Base64.getEncoder().encodeToString(jpeg);
    }
}
