/** Two plans compared, as a specification. */
@NullMarked
package loomwright.comparison;

import org.jspecify.annotations.NullMarked;
