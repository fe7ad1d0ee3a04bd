/** Problem documents (RFC 9457) and the exception that carries one. */
@NullMarked
package loomwright.service.problem;

import org.jspecify.annotations.NullMarked;
