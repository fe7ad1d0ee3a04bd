/** Questions of the bench as tables. */
@NullMarked
package loomwright.service.workshop;

import org.jspecify.annotations.NullMarked;
