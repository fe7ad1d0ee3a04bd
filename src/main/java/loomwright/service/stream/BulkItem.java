package loomwright.service.stream;

import com.fasterxml.jackson.databind.JsonNode;
import loomwright.service.input.RequestInput;
import org.jspecify.annotations.Nullable;

/**
 * One line of many, taken apart.
 *
 * @param key the caller's own name for it, a text or a number
 */
public record BulkItem(@Nullable JsonNode key, RequestInput input) {}
