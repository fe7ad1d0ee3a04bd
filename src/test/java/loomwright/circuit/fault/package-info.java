/** Single faults as changes to a plan. */
@NullMarked
package loomwright.circuit.fault;

import org.jspecify.annotations.NullMarked;
