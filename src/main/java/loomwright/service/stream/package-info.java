/** Many lines by the same calculations: {@link loomwright.service.stream.Bulk}, {@link loomwright.service.stream.LineWork}, and lines as JSON and CSV. */
@NullMarked
package loomwright.service.stream;

import org.jspecify.annotations.NullMarked;
