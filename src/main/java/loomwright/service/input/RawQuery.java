package loomwright.service.input;

import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import loomwright.service.problem.ProblemException;
import loomwright.service.problem.ProblemText;
import loomwright.service.problem.ProblemType;
import org.jspecify.annotations.Nullable;

/** Takes a query apart; strict where lenient decoders put replacement characters. */
public final class RawQuery {
    private RawQuery() {}

    /**
     * Names and values in the order given, percent escapes and {@code +} decoded.
     *
     * @throws ProblemException for a bad percent escape or bytes that are not UTF-8
     */
    public static Map<String, List<String>> parse(@Nullable String query) {
        if (query == null || query.isEmpty()) {
            return Map.of();
        }
        Map<String, List<String>> values = new LinkedHashMap<>();
        for (String pair : query.split("&", -1)) {
            if (!pair.isEmpty()) {
                int equals = pair.indexOf('=');
                String name = decoded(equals < 0 ? pair : pair.substring(0, equals));
                String value = equals < 0 ? "" : decoded(pair.substring(equals + 1));
                values.computeIfAbsent(name, key -> new ArrayList<>(1)).add(value);
            }
        }
        return values;
    }

    private static String decoded(String text) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream(text.length());
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            if (c == '%') {
                int high = i + 2 < text.length() ? Character.digit(text.charAt(i + 1), 16) : -1;
                int low = i + 2 < text.length() ? Character.digit(text.charAt(i + 2), 16) : -1;
                if (high < 0 || low < 0) {
                    throw malformed(ProblemText.BAD_ESCAPE);
                }
                bytes.write(high * 16 + low);
                i += 2;
            } else if (c == '+') {
                bytes.write(' ');
            } else {
                bytes.writeBytes(String.valueOf(c).getBytes(StandardCharsets.UTF_8));
            }
        }
        try {
            return StandardCharsets.UTF_8
                    .newDecoder()
                    .decode(ByteBuffer.wrap(bytes.toByteArray()))
                    .toString();
        } catch (CharacterCodingException e) {
            throw malformed(ProblemText.ESCAPES_NOT_UTF8);
        }
    }

    private static ProblemException malformed(ProblemText why) {
        return new ProblemException(ProblemType.MALFORMED_URL, why.with());
    }
}
