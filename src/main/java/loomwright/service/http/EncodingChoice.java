package loomwright.service.http;

import java.util.List;
import java.util.Locale;
import org.eclipse.jetty.http.HttpFields;
import org.eclipse.jetty.http.HttpHeader;
import org.eclipse.jetty.server.HttpConfiguration;
import org.eclipse.jetty.server.Request;

/**
 * Reads {@code Accept-Encoding} with its weights (RFC 9110, section 12.5.3) and says it plainly to what compresses answers,
 * which understands the word {@code gzip} alone.
 */
public final class EncodingChoice implements HttpConfiguration.Customizer {
    /** What the header says after this if the answer is to be compressed. */
    public static final String GZIP = "gzip";

    @Override
    public Request customize(Request request, HttpFields.Mutable headers) {
        if (!request.getHeaders().contains(HttpHeader.ACCEPT_ENCODING)) {
            return request;
        }
        HttpFields.Mutable plain = HttpFields.build(request.getHeaders());
        plain.put(HttpHeader.ACCEPT_ENCODING, isGzipWanted(request.getHeaders()) ? GZIP : "identity");
        HttpFields fields = plain.asImmutable();
        return new Request.Wrapper(request) {
            @Override
            public HttpFields getHeaders() {
                return fields;
            }
        };
    }

    /** Whether, of what there is, gzip is what the client likes best. */
    static boolean isGzipWanted(HttpFields headers) {
        boolean isNamed = headers.getValuesList(HttpHeader.ACCEPT_ENCODING).stream()
                .anyMatch(value -> value.toLowerCase(Locale.ROOT).contains(GZIP));
        // The best first; what has a weight of 0 is not among them.
        List<String> wanted = headers.getQualityCSV(HttpHeader.ACCEPT_ENCODING);
        for (String name : wanted) {
            switch (name.toLowerCase(Locale.ROOT)) {
                case GZIP, "x-gzip" -> {
                    return true;
                }
                case "identity" -> {
                    return false;
                }
                case "*" -> {
                    return !isNamed;
                }
                default -> {
                    // One that does not exist here.
                }
            }
        }
        return false;
    }
}
