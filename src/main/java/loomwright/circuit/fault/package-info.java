/**
 * What may be wrong with a circuit that was drawn right. Begin with {@link loomwright.circuit.fault.SingleFault}: each of
 * its kinds is a small change to a copy of a plan; {@link loomwright.circuit.fault.SingleFaults} lists those that are
 * plausible for a given plan.
 */
@NullMarked
package loomwright.circuit.fault;

import org.jspecify.annotations.NullMarked;
