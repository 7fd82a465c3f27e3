package io.rowledger.fuzz;

import java.nio.file.Path;
import java.util.Random;

/**
 * A kind of file that people hand in.
 *
 * @param name what the printed table calls it
 * @param perMille its share of all inputs
 * @param made makes a damaged one
 * @param reader reads it
 * @param whole takes one that can be read through the whole program
 */
record Kind(String name, int perMille, Maker made, Reader reader, Reader whole) {
    /** Damages one file of its corpus. */
    interface Maker {
        Input make(Random random);
    }

    /** Reads what lies there, as one of the things it may be given as. */
    interface Reader {
        void read(Path input, Random random);
    }

    @Override
    public String toString() {
        return name;
    }
}
