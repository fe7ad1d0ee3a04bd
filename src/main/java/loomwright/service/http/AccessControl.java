package loomwright.service.http;

import static loomwright.message.Arg.arg;

import com.google.common.base.CharMatcher;
import com.google.common.net.InetAddresses;
import io.javalin.http.Context;
import java.util.Collections;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import loomwright.service.entrance.AccessRules;
import loomwright.service.entrance.ApiKeys;
import loomwright.service.entrance.RateLimiter;
import loomwright.service.input.Contract.Operation;
import loomwright.service.problem.ProblemException;
import loomwright.service.problem.ProblemText;
import loomwright.service.problem.ProblemType;
import org.eclipse.jetty.http.QuotedCSV;
import org.eclipse.jetty.util.HostPort;
import org.jspecify.annotations.Nullable;

/** Turns away whom the operator does not know or who asks too often, before anything of the request is read. */
public final class AccessControl {
    public static final String KEY_HEADER = "X-Api-Key";

    private static final String BEARER = "Bearer ";
    /** Who has an address of version 6 has all that share its first half. */
    private static final int ADDRESS_BYTES = 8;

    private final ApiKeys keys;
    private final Optional<RateLimiter> pace;
    private final int trustedProxies;

    public AccessControl(AccessRules rules) {
        this.trustedProxies = rules.trustedProxies();
        this.keys = rules.keys();
        this.pace = rules.pace();
    }

    /**
     * Lets a request in.
     *
     * @throws ProblemException 429 if its caller, the holder of a key or else an address, asks too often; 401 without a known key
     */
    public void admit(Context context, Operation operation) {
        if (operation.isOpen() || (!keys.areAskedFor() && pace.isEmpty())) {
            return;
        }
        Optional<String> holder = Optional.ofNullable(key(context)).flatMap(keys::findHolder);
        // Whoever guesses keys is slowed down as well.
        pace.ifPresent(p -> take(context, p, holder.map(name -> "key " + name).orElseGet(() -> address(context))));
        if (keys.areAskedFor() && holder.isEmpty()) {
            throw new ProblemException(
                    ProblemType.UNKNOWN_CALLER,
                    ProblemText.KEY_NEEDED.with(arg("header", KEY_HEADER)),
                    List.of(),
                    Map.of("WWW-Authenticate", "Bearer realm=\"loomwright\""));
        }
    }

    /** Headers of draft-ietf-httpapi-ratelimit-headers, revision 10 (from memory): what is left, and when all is there again. */
    private static void take(Context context, RateLimiter pace, String caller) {
        RateLimiter.Taken taken = pace.take(caller);
        context.header("RateLimit-Policy", "\"caller\";q=" + pace.burst() + ";w=" + pace.windowS());
        context.header("RateLimit", "\"caller\";r=" + taken.remaining() + ";t=" + taken.fullInS());
        if (!taken.isGranted()) {
            throw new ProblemException(
                    ProblemType.TOO_MANY_REQUESTS,
                    ProblemText.TOO_OFTEN.with(arg("seconds", taken.retryAfterS())),
                    List.of(),
                    Map.of("Retry-After", String.valueOf(taken.retryAfterS())));
        }
    }

    private static @Nullable String key(Context context) {
        String given = context.header(KEY_HEADER);
        String authorization = context.header("Authorization");
        return given != null || authorization == null
                ? given
                : authorization.regionMatches(true, 0, BEARER, 0, BEARER.length())
                        ? authorization.substring(BEARER.length()).strip()
                        : null;
    }

    private String address(Context context) {
        // Version 6 comes in brackets.
        String told = CharMatcher.anyOf("[]").trimFrom(told(context));
        // What a proxy tells may be no address at all; such callers are one.
        byte[] bytes = InetAddresses.isInetAddress(told)
                ? InetAddresses.forString(told).getAddress()
                : new byte[0];
        return "address " + HexFormat.of().formatHex(bytes, 0, Math.min(bytes.length, ADDRESS_BYTES));
    }

    /** Counted from the right, where the nearest proxy adds; who came past the proxies is known by the connection. */
    private String told(Context context) {
        QuotedCSV hops = new QuotedCSV(false);
        Collections.list(context.req().getHeaders("X-Forwarded-For")).forEach(hops::addValue);
        List<String> addresses = hops.getValues();
        return trustedProxies == 0 || addresses.size() < trustedProxies
                ? context.req().getRemoteAddr()
                : withoutPort(addresses.get(addresses.size() - trustedProxies));
    }

    /** Some proxies add the port of the caller. */
    private static String withoutPort(String hop) {
        try {
            return new HostPort(hop).getHost();
        } catch (IllegalArgumentException e) {
            return "";
        }
    }
}
