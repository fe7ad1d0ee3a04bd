/** Start of the service; the packages below each hold one part of the job and import one way only. */
@NullMarked
package loomwright;

import org.jspecify.annotations.NullMarked;
