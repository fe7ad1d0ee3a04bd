/**
 * Who may ask and how often, of a service whose operator cares: {@link loomwright.service.entrance.ApiKeys} knows the
 * callers, {@link loomwright.service.entrance.RateLimiter} how fast each may go; {@link loomwright.service.entrance.AccessRules}
 * is what the operator says at start. Knows nothing of HTTP.
 */
@NullMarked
package loomwright.service.entrance;

import org.jspecify.annotations.NullMarked;
