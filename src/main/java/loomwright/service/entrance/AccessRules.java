package loomwright.service.entrance;

import java.util.Optional;
import loomwright.answer.InputErrors;

/**
 * Who may ask, and how often.
 *
 * @param keys of the callers; {@link ApiKeys#NONE} lets in everybody
 * @param requestsPerSecond of each caller in the long run; 0 for no limit
 * @param burst how many requests a caller may send at once
 * @param trustedProxies how many proxies of the operator's own stand in front, 0 to {@value #MOST_PROXIES}. Each adds the
 *     address that asked it to {@code X-Forwarded-For}; what stands further left there comes from the caller and is not believed
 */
public record AccessRules(ApiKeys keys, double requestsPerSecond, int burst, int trustedProxies) {
    private static final int MOST_PROXIES = 16;

    /** Everybody, as often as they like. */
    public static final AccessRules OPEN = new AccessRules(ApiKeys.NONE, 0, 20, 0);

    public AccessRules {
        new InputErrors()
                .range("/requestsPerSecond", requestsPerSecond, 0, 1_000_000)
                .range("/burst", burst, 1, 1_000_000)
                .range("/trustedProxies", trustedProxies, 0, MOST_PROXIES)
                .reject();
    }

    /** A new pace by these rules; empty without a limit. */
    public Optional<RateLimiter> pace() {
        return requestsPerSecond > 0 ? Optional.of(new RateLimiter(requestsPerSecond, burst)) : Optional.empty();
    }
}
