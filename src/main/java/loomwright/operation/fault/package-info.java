/**
 * What may be wrong with a circuit that was drawn right. Begin with {@link loomwright.operation.fault.SingleFault}: each of
 * its kinds is a small change to a copy of a plan; {@link loomwright.operation.fault.SingleFaults} lists those that are
 * plausible for a given plan.
 */
@NullMarked
package loomwright.operation.fault;

import org.jspecify.annotations.NullMarked;
