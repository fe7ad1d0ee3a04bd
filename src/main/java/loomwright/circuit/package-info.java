/**
 * The plan document: one vehicle's circuit as parts and wires, and the conditions it works in.
 *
 * <p>Reading list: {@link loomwright.circuit.Plan} is the whole document; {@link loomwright.circuit.Part} is the closed
 * set of what can be wired, {@link loomwright.circuit.Consumer} those of them that should be live at some time;
 * {@link loomwright.circuit.Wire} and {@link loomwright.circuit.Connector} join terminals;
 * {@link loomwright.circuit.PlanCheck} says what is wrong with a plan as a whole. Records that check themselves, no
 * physics.
 */
@NullMarked
package loomwright.circuit;

import org.jspecify.annotations.NullMarked;
