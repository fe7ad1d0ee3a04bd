package loomwright.service.entrance;

import java.util.Optional;
import loomwright.answer.InputErrors;

/**
 * Who may ask, and how often.
 *
 * @param keys of the callers; {@link ApiKeys#NONE} lets in everybody
 * @param requestsPerSecond of each caller in the long run; 0 for no limit
 * @param burst how many requests a caller may send at once
 * @param behindProxy whether a proxy in front tells the address of the caller, {@code X-Forwarded-For} or
 *     {@code Forwarded} (RFC 7239); without a proxy that overwrites them, callers could call themselves anything
 */
public record AccessRules(ApiKeys keys, double requestsPerSecond, int burst, boolean behindProxy) {
    /** Everybody, as often as they like. */
    public static final AccessRules OPEN = new AccessRules(ApiKeys.NONE, 0, 20, false);

    public AccessRules {
        new InputErrors()
                .range("/requestsPerSecond", requestsPerSecond, 0, 1_000_000)
                .range("/burst", burst, 1, 1_000_000)
                .reject();
    }

    /** A new pace by these rules; empty without a limit. */
    public Optional<RateLimiter> pace() {
        return requestsPerSecond > 0 ? Optional.of(new RateLimiter(requestsPerSecond, burst)) : Optional.empty();
    }
}
