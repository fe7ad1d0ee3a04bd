/**
 * Many lines at once: read one by one, answered by all processors, written in order, with bounded memory. Knows neither
 * HTTP nor JSON: it is handed the function that answers one line.
 *
 * <p>Reading list, in this order:
 *
 * <ol>
 *   <li>{@link loomwright.bulk.BulkRun}: the loop from line to answer
 *   <li>{@link loomwright.bulk.Line}, {@link loomwright.bulk.LineAnswer}: what goes into that function and comes out
 *   <li>{@link loomwright.bulk.LineSource}: where lines come from; {@link loomwright.bulk.LineReader} takes them from a
 *       stream, {@link loomwright.bulk.PlanFiles} from files
 *   <li>{@link loomwright.bulk.FairExecutor}: the processors, shared fairly by several runs
 *   <li>{@link loomwright.bulk.SummaryCounter}, {@link loomwright.bulk.Summary}: what is said at the end
 * </ol>
 */
@NullMarked
package loomwright.bulk;

import org.jspecify.annotations.NullMarked;
