package io.rowledger.parallel;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Collections;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ValuesComputedLaterTest {
    @Test
    void a_lazy_value_is_computed_once_for_all_threads() {
        AtomicInteger calls = new AtomicInteger();
        Lazy<Integer> lazy = new Lazy<>(calls::incrementAndGet);
        assertEquals(0, calls.get());
        assertEquals(Collections.nCopies(20, 1), ParallelTasks.map(20, 4, i -> lazy.get()));
    }

    @Test
    void a_lazy_value_whose_computation_failed_is_computed_again() {
        AtomicInteger calls = new AtomicInteger();
        Lazy<Integer> lazy = new Lazy<>(() -> {
            if (calls.incrementAndGet() == 1) {
                throw new IllegalStateException("the first");
            }
            return 7;
        });
        assertThrows(IllegalStateException.class, lazy::get);
        assertEquals(7, lazy.get());
    }

    @Test
    void with_one_thread_a_value_ahead_is_computed_by_the_thread_that_takes_it() {
        AtomicInteger calls = new AtomicInteger();
        Ahead<Thread> ahead = Ahead.of(1, () -> {
            calls.incrementAndGet();
            return Thread.currentThread();
        });
        assertEquals(0, calls.get());
        assertSame(Thread.currentThread(), ahead.get());
        ahead.get();
        assertEquals(1, calls.get());
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2})
    void what_a_computation_ahead_threw_is_thrown_where_its_value_is_taken(int threads) {
        IllegalStateException thrown = new IllegalStateException("no value");
        Ahead<Integer> ahead = Ahead.of(threads, () -> {
            throw thrown;
        });
        assertSame(thrown, assertThrows(IllegalStateException.class, ahead::get));
    }

    @Test
    void blocks_cover_every_entry_once_for_any_number_of_entries_and_threads() {
        for (int n : List.of(0, 1, 15, 16, 17, 1000)) {
            for (int threads : List.of(1, 3)) {
                int[] visits = new int[n];
                ParallelTasks.inBlocks(n, threads, (from, end) -> {
                    for (int i = from; i < end; i++) {
                        visits[i]++;
                    }
                });
                assertArrayEquals(IntStream.generate(() -> 1).limit(n).toArray(), visits);
            }
        }
    }
}
