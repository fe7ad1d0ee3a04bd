/** Options and limits of the service. */
@NullMarked
package loomwright.service.limits;

import org.jspecify.annotations.NullMarked;
