/**
 * A plan as a person writes it: tables of wires, parts and settings, as text or as a workbook. Reading goes from
 * {@link loomwright.list.TextList} or {@link loomwright.list.Workbooks} (cells) by {@link loomwright.list.ListTables} (which
 * table, which column) to {@link loomwright.list.PlanList} (the plan document, with what was assumed and what must be asked).
 * {@link loomwright.list.ListWriter} goes the other way. Nothing here calculates.
 */
@NullMarked
package loomwright.list;

import org.jspecify.annotations.NullMarked;
