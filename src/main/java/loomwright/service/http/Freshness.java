package loomwright.service.http;

import com.google.common.hash.Hashing;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** Whether the copy of an answer that a client keeps is still good (RFC 9110, sections 8.8 and 13.1.2). */
public final class Freshness {
    private static final Pattern TAG = Pattern.compile("(?:W/)?(\"[^\"]*\")");

    private Freshness() {}

    /**
     * The same for the same bytes only. Weak (RFC 9110, section 8.8.1), as the bytes on the way may be compressed or not.
     */
    public static String tag(byte[] body) {
        return "W/\"" + Hashing.sha256().hashBytes(body) + "\"";
    }

    /**
     * Whether {@code If-None-Match} names a tag. Tags are compared weakly, as the section asks.
     *
     * @param header {@code *}, or tags with commas between them
     */
    public static boolean isNamed(@Nullable String header, String tag) {
        if (header == null) {
            return false;
        }
        if (header.strip().equals("*")) {
            return true;
        }
        Matcher known = TAG.matcher(tag);
        if (!known.matches()) {
            throw new IllegalArgumentException(tag);
        }
        return TAG.matcher(header).results().anyMatch(one -> one.group(1).equals(known.group(1)));
    }
}
