/** Answers about plans as tables. */
@NullMarked
package loomwright.service.plan;

import org.jspecify.annotations.NullMarked;
