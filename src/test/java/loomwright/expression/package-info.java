/** Series and parallel resistors as a specification: expressions, then networks. */
@NullMarked
package loomwright.expression;

import org.jspecify.annotations.NullMarked;
