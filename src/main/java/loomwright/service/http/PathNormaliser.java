package loomwright.service.http;

import com.google.common.base.CharMatcher;
import org.eclipse.jetty.http.HttpFields;
import org.eclipse.jetty.http.HttpURI;
import org.eclipse.jetty.server.HttpConfiguration;
import org.eclipse.jetty.server.Request;
import org.jspecify.annotations.Nullable;

/**
 * Reads letters and digits of a path that are written as percent escapes as what they are: such paths are the same (RFC
 * 3986, section 6.2.2.2), and routes are distinguished by the text. Nothing that divides, begins or ends a path is touched,
 * nor is a dot, and nothing is decoded twice: an escaped percent sign stays one.
 */
public final class PathNormaliser implements HttpConfiguration.Customizer {
    private static final int HEX = 16;
    private static final int ESCAPE = 3;
    private static final CharMatcher PLAIN = CharMatcher.inRange('a', 'z')
            .or(CharMatcher.inRange('A', 'Z'))
            .or(CharMatcher.inRange('0', '9'))
            .or(CharMatcher.anyOf("-_~"));

    @Override
    public Request customize(Request request, HttpFields.Mutable headers) {
        HttpURI uri = request.getHttpURI();
        String path = uri.getPath();
        String plain = in(path);
        return path == null || path.equals(plain)
                ? request
                : Request.serveAs(request, HttpURI.build(uri).path(plain));
    }

    /** The web server has seen to it that each percent sign begins an escape; one that does not is left as it is. */
    static String in(@Nullable String path) {
        if (path == null || path.indexOf('%') < 0) {
            return path == null ? "" : path;
        }
        StringBuilder plain = new StringBuilder(path.length());
        for (int i = 0; i < path.length(); i++) {
            char c = path.charAt(i);
            char escaped = c == '%' && i + ESCAPE <= path.length() ? escaped(path, i) : '%';
            if (PLAIN.matches(escaped)) {
                plain.append(escaped);
                i += ESCAPE - 1;
            } else {
                plain.append(c);
            }
        }
        return plain.toString();
    }

    private static char escaped(String path, int at) {
        int high = Character.digit(path.charAt(at + 1), HEX);
        int low = Character.digit(path.charAt(at + 2), HEX);
        return high < 0 || low < 0 ? '%' : (char) (high * HEX + low);
    }
}
