/**
 * The workbench: a local page over a season folder, for people who use no command line. A thin view: what it shows is computed
 * by the packages that the command line uses, and what it saves are the plain files that the command line reads.
 *
 * <p>A request passes {@link io.rowledger.workbench.Gate} (Host, Origin, cookie), {@link io.rowledger.workbench.Router} and a
 * {@link io.rowledger.workbench.Route} of {@link io.rowledger.workbench.Services}; every path goes through
 * {@link io.rowledger.workbench.SeasonFolder}. A screen is a script in {@code web/workbench} and a class here.
 *
 * <p>The calls; {@code FIELD} is the name of a field with {@code /} written {@code %2F}, bodies and answers are JSON, a refusal is
 * {@code {"status": N, "problem": "found ...; expected .... Hint: ..."}}:
 *
 * <table>
 *   <caption>Calls</caption>
 *   <tr><th>call</th><th>does</th></tr>
 *   <tr><td>{@code GET /?token=KEY}</td><td>takes a link's key for the cookie</td></tr>
 *   <tr><td>{@code GET /api/events}</td><td>server-sent events: {@code work} with the queue</td></tr>
 *   <tr><td>{@code GET /api/about}, {@code GET /api/words?language=es}</td><td>frame and words of the page</td></tr>
 *   <tr><td>{@code GET /api/season}, {@code POST /api/fields {name}}</td><td>all fields; a new one</td></tr>
 *   <tr><td>{@code GET /api/fields/FIELD}, {@code .../picture}</td><td>a field with its results; its small map</td></tr>
 *   <tr><td>{@code PUT /api/fields/FIELD/files/NAME?replace=true}</td><td>takes a file, streamed; 409 if another is there</td></tr>
 *   <tr><td>{@code POST /api/fields/FIELD/files/NAME/away}</td><td>moves a file to the dated folder</td></tr>
 *   <tr><td>{@code GET .../logs}, {@code GET|PUT .../columns}, {@code POST .../check}</td><td>logs, columns, row check</td></tr>
 *   <tr><td>{@code POST .../split}</td><td>makes a field of each place that the work lies in</td></tr>
 *   <tr><td>{@code GET|PUT .../rig {blocks}}</td><td>blocks of the rig file as typed</td></tr>
 *   <tr><td>{@code POST .../rig/consider}, {@code .../rig/drive}</td><td>what blocks come to; the field driven by them. Nothing is saved</td></tr>
 *   <tr><td>{@code POST .../bar {name}}</td><td>takes a saved bar</td></tr>
 *   <tr><td>{@code GET .../maps}, {@code GET .../boundary/around}, {@code PUT .../boundary {ring}},
 *       {@code PUT .../setback {setback}}</td><td>maps</td></tr>
 *   <tr><td>{@code GET .../facts}</td><td>facts of the record by state</td></tr>
 *   <tr><td>{@code GET|POST /api/work {fields}}, {@code POST /api/work/stop}</td><td>the queue; null for the whole season</td></tr>
 *   <tr><td>{@code POST /api/compare {before, after}}, {@code POST /api/sample}, {@code POST .../show}</td><td>two jobs; the
 *       samples; the folder in the system's window</td></tr>
 *   <tr><td>{@code GET /results/FIELD/FILE}</td><td>a file of the results</td></tr>
 * </table>
 *
 * <p>For other packages: {@link Workbench}.
 */
@NullMarked
package io.rowledger.workbench;

import org.jspecify.annotations.NullMarked;
