package loomwright.drawing.sheet;

import loomwright.comparison.PlanComparison.ItemChange;
import loomwright.message.Message;
import org.jspecify.annotations.Nullable;

/**
 * One step of the work.
 *
 * @param number from 1, in a safe order
 * @param message what to do
 * @param change what of the comparison it does; absent for what is done in every job
 */
record WorkStep(int number, Message message, @Nullable ItemChange change) {}
