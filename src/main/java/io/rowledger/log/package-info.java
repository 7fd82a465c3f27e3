/**
 * Logs in CSV and ISO 11783-10 task data ({@link io.rowledger.log.taskdata}) to one {@link LogTable} per job.
 *
 * <p>The path of a file: {@link LogReader} takes the paths; {@code source} unpacks, digests and splits into lines;
 * {@code header} maps the columns; {@code time} and {@code read} parse the records; {@code clean} removes impossible ones
 * and checks the rest; {@code LogJoiner} joins the files by time.
 *
 * <p>A map of areas with a rate each has no path: {@link AreaLog} reads it.
 *
 * <p>For other packages: {@link AreaLog}, {@link Inspection}, {@link LogCut}, {@link LogReader}, {@link LogReading}, {@link LogSurvey},
 * {@link LogTable}, {@link MapLog}, {@link Metering}.
 */
@NullMarked
package io.rowledger.log;

import org.jspecify.annotations.NullMarked;
