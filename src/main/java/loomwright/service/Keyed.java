package loomwright.service;

import com.fasterxml.jackson.databind.JsonNode;
import org.jspecify.annotations.Nullable;

/**
 * One line of many, taken apart.
 *
 * @param key the caller's own name for it, a text or a number
 */
record Keyed(@Nullable JsonNode key, Input input) {}
