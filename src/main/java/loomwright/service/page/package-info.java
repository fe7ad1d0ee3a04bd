/** Pages and examples that are served as they are. */
@NullMarked
package loomwright.service.page;

import org.jspecify.annotations.NullMarked;
