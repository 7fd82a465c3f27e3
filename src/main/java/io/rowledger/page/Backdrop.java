package io.rowledger.page;

import java.util.Base64;

/**
 * A picture of the ground under the map, north up in the job's plane.
 *
 * @param bounds west, south, east and north of its edges, m
 * @param mediaType of the bytes
 * @param bytes the picture
 */
public record Backdrop(double[] bounds, String mediaType, byte[] bytes) {
    /** The picture as an address that holds all of it (RFC 2397). */
    String dataUri() {
        return "data:" + mediaType + ";base64," + Base64.getEncoder().encodeToString(bytes);
    }
}
