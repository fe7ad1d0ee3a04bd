package loomwright.service.input;

import static loomwright.message.Arg.arg;

import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import loomwright.service.problem.ProblemException;
import loomwright.service.problem.ProblemText;
import loomwright.service.problem.ProblemType;

/**
 * Looks over the bytes of a JSON body before they are parsed: the parser lets lone surrogates and other encodings pass,
 * which could not be written back, and binding takes an explicit null for an absent value.
 */
public final class ByteScan {
    private ByteScan() {}

    /**
     * Looks over a JSON body.
     *
     * @return whether it may hold a null: the one literal of JSON that begins with n
     * @throws ProblemException for bytes that are not UTF-8, or an escaped half of a surrogate pair. A byte order mark is
     *     passed over, as it is by the parser.
     */
    public static boolean findNull(byte[] json) {
        boolean ascii = true;
        boolean inText = false;
        boolean found = false;
        for (int i = 0; i < json.length; i++) {
            byte b = json[i];
            if (b == '"') {
                inText = !inText;
            } else if (b == '\\') {
                i = afterEscape(json, i);
            } else if (b == 'n') {
                found |= !inText;
            } else if (b < 0) {
                ascii = false;
            } else if (b == 0) {
                throw refused(ProblemText.ZERO_BYTE, i);
            }
        }
        if (!ascii) {
            checkNonAscii(json);
        }
        return found;
    }

    private static void checkNonAscii(byte[] json) {
        ByteBuffer bytes = ByteBuffer.wrap(json);
        try {
            StandardCharsets.UTF_8.newDecoder().decode(bytes);
        } catch (CharacterCodingException e) {
            throw refused(ProblemText.NOT_UTF8, bytes.position());
        }
    }

    /** The index of the last byte of the escape that begins at {@code at}. */
    private static int afterEscape(byte[] json, int at) {
        int unit = codeUnit(json, at);
        if (unit < 0) {
            return at + 1;
        }
        if (Character.isHighSurrogate((char) unit)) {
            int next = codeUnit(json, at + 6);
            if (next >= 0 && Character.isLowSurrogate((char) next)) {
                return at + 11;
            }
        }
        if (Character.isSurrogate((char) unit)) {
            throw refused(ProblemText.HALF_A_PAIR, at);
        }
        return at + 5;
    }

    /** The code unit of a complete four-digit escape at {@code at}; -1 if there is none. */
    private static int codeUnit(byte[] json, int at) {
        if (at + 5 >= json.length || json[at] != '\\' || json[at + 1] != 'u') {
            return -1;
        }
        int unit = 0;
        for (int i = at + 2; i < at + 6; i++) {
            int digit = Character.digit(json[i], 16);
            if (digit < 0) {
                return -1;
            }
            unit = unit * 16 + digit;
        }
        return unit;
    }

    private static ProblemException refused(ProblemText why, int at) {
        return new ProblemException(ProblemType.BAD_ENCODING, why.with(arg("at", at)));
    }
}
