/** Reading: the contract as the judge of bodies, queries and lines, and JSON as text. Begin with {@link loomwright.service.input.Contract}. */
@NullMarked
package loomwright.service.input;

import org.jspecify.annotations.NullMarked;
