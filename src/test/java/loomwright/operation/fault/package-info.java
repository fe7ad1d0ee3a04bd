/** Single faults as changes to a plan. */
@NullMarked
package loomwright.operation.fault;

import org.jspecify.annotations.NullMarked;
