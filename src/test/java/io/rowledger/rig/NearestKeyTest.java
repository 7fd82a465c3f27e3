package io.rowledger.rig;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class NearestKeyTest {
    @Test
    void distances_count_single_edits_and_swapped_neighbors() {
        // The textbook pairs of the edit distance: kitten-sitting 3, Saturday-Sunday 3; "ca"-"abc" is 3 where no letter
        // may be edited twice (restricted Damerau-Levenshtein). From memory.
        assertEquals(3, NearestKey.distance("kitten", "sitting"));
        assertEquals(3, NearestKey.distance("Saturday", "Sunday"));
        assertEquals(3, NearestKey.distance("ca", "abc"));
        assertEquals(1, NearestKey.distance("prodcuts", "products"));
        assertEquals(5, NearestKey.distance("", "towed"));
    }

    @Test
    void only_a_key_that_is_alike_is_proposed() {
        List<String> keys = List.of("towing", "hitch_to_drop", "hitch_to_wheels");
        assertEquals(Optional.of("hitch_to_wheels"), NearestKey.of("hitch_to_wheel", keys));
        assertEquals(Optional.of("towing"), NearestKey.of("Towing", keys));
        assertEquals(Optional.empty(), NearestKey.of("paint", keys));
    }
}
