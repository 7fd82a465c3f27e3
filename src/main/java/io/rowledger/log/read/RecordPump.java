package io.rowledger.log.read;

import io.rowledger.log.source.Line;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import org.jspecify.annotations.Nullable;

/**
 * Parses records on a second thread while the first one splits the file into fields: both cost about the same. One
 * worker takes the batches in order, so the result equals that of one thread.
 */
final class RecordPump implements AutoCloseable {
    private static final int BATCH_RECORDS = 512;
    /** Length of the queue, batches. */
    private static final int BATCHES = 4;

    private static final Batch END = new Batch();

    private final RecordReader reader;
    private final BlockingQueue<Batch> queue = new ArrayBlockingQueue<>(BATCHES);
    private final Thread worker;
    private Batch batch = new Batch();
    private boolean ended;
    private @Nullable Throwable failure;

    private static final class Batch {
        final Line[] lines = new Line[BATCH_RECORDS];
        int size;
    }

    RecordPump(RecordReader reader) {
        this.reader = reader;
        worker = new Thread(this::drain, "rowledger-log-figures");
        worker.setDaemon(true);
        worker.start();
    }

    /** Queues one record. */
    void add(Line line) {
        batch.lines[batch.size++] = line;
        if (batch.size == BATCH_RECORDS) {
            put(batch);
            batch = new Batch();
        }
    }

    /** Waits until every record is parsed; rethrows a failure of the worker. */
    void finish() {
        put(batch);
        close();
        if (failure instanceof Error error) {
            throw error;
        }
        if (failure instanceof RuntimeException exception) {
            throw exception;
        }
    }

    /** Stops the worker. */
    @Override
    public void close() {
        if (ended) {
            return;
        }
        ended = true;
        put(END);
        try {
            worker.join();
        } catch (InterruptedException e) {
            throw interrupted();
        }
    }

    private void put(Batch full) {
        try {
            queue.put(full);
        } catch (InterruptedException e) {
            throw interrupted();
        }
    }

    private static IllegalStateException interrupted() {
        Thread.currentThread().interrupt();
        return new IllegalStateException("interrupted while reading a log");
    }

    /** Takes batches until the end; after a failure it discards them so that the producer never blocks. */
    @SuppressWarnings("ReferenceEquality") // END is a sentinel object, not an empty batch.
    private void drain() {
        try {
            for (Batch next = queue.take(); next != END; next = queue.take()) {
                for (int i = 0; i < next.size && failure == null; i++) {
                    read(next.lines[i]);
                }
            }
        } catch (InterruptedException e) {
            failure = new IllegalStateException("interrupted while reading a log", e);
        }
    }

    private void read(Line line) {
        try {
            reader.read(line.fields(), line.number());
        } catch (RuntimeException | Error e) {
            failure = e;
        }
    }
}
