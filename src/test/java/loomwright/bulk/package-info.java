/**
 * Many lines, from simple to compound.
 *
 * <ol>
 *   <li>{@link loomwright.bulk.B01_LineReaderTest}: a stream as lines
 *   <li>{@link loomwright.bulk.B02_PlanFilesTest}: files as lines
 *   <li>{@link loomwright.bulk.B03_FairExecutorTest}: threads shared fairly
 *   <li>{@link loomwright.bulk.B04_OrderTest}: each line answered once and in order, and counted
 *   <li>{@link loomwright.bulk.B05_StreamingTest}: promptness, bounded reading ahead, senders and readers that vanish
 *   <li>{@link loomwright.bulk.B06_GivingUpTest}: no work for readers who have gone
 * </ol>
 */
@NullMarked
package loomwright.bulk;

import org.jspecify.annotations.NullMarked;
