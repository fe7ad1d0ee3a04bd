/** One request and its reply: access, media types, representations, problems. Begin with {@link loomwright.service.http.Request} and {@link loomwright.service.http.Representations}. */
@NullMarked
package loomwright.service.http;

import org.jspecify.annotations.NullMarked;
