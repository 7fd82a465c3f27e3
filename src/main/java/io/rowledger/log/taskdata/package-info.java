/**
 * ISO 11783-10 task data to logs with a column for each quantity. {@link io.rowledger.log.taskdata.TaskData#read} is the
 * way in; nothing here knows what the columns are used for.
 *
 * <p>The path: {@code TaskFiles} finds the files, in a folder or a zip file, and digests them. {@code TaskXml} parses the
 * XML to a small tree, {@code Devices} and {@code Task} take from it what is needed. {@code LogHeader} says what the bytes
 * of a time log are, {@code TimeLog} turns them into columns of whole numbers, {@code RawTimeLog} joins logs with the same
 * time stamps, {@code LayoutFinder} finds which value is whose flow, state and width, {@code TaskLog} puts the decimal
 * points in, {@code LogClock} converts the terminal's local time to UTC, {@code ControllerTotals} holds the controller's
 * totals against the flows.
 *
 * <p>A value holds for its element and the elements below it: a rate on the tank is the rate of the whole bar. Widths and
 * offsets are looked up from the element to its parents; those that the description leaves open are the first that the
 * log has.
 *
 * <p>Sources: record layout, elements, their attributes and the numbers of device element types and position states: ISO
 * 11783-10, in part from memory ({@code TimeLogTest} says which); numbers, units and resolutions: the on-line data base of
 * ISO 11783-11 (isobus.net). Sections are numbered from the left, y runs to the right. A device value presentation (DVP)
 * is for a terminal's screen and changes no figure.
 *
 * <p>By hand, the example record of ISO 11783-10 (2005-05-02T16:32:00, 51.00678 N, 6.03489 E, status 1, two values: number
 * 0 is 10, number 1 is 15; {@code TimeLogTest} asserts it):
 *
 * <pre>
 * 00 34 8c 03      time of day 0x038c3400 = 59,520,000 ms = 16:32:00
 * 25 24            day 0x2425 = 9253 after 1980-01-01 = 2005-05-02
 * 58 04 67 1e      north 0x1e670458 = 510,067,800 of 1e-7 degrees
 * e4 d9 98 03      east 0x0398d9e4 = 60,348,900
 * 01               status: GNSS
 * 02               two values
 * 00 0a 00 00 00   number 0 is 10
 * 01 0f 00 00 00   number 1 is 15
 * </pre>
 *
 * <p>For other packages: {@link TaskData}, {@link TaskLog}, {@link ReadFile}, {@link BarGeometry},
 * {@link ControllerTotals}.
 */
@NullMarked
package io.rowledger.log.taskdata;

import org.jspecify.annotations.NullMarked;
