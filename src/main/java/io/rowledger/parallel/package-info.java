/**
 * Parallel execution of independent tasks, with results that don't depend on the number of threads.
 *
 * <p>For other packages: {@link Ahead}, {@link Lazy}, {@link ParallelTasks}.
 */
@NullMarked
package io.rowledger.parallel;

import org.jspecify.annotations.NullMarked;
