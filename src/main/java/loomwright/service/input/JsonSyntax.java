package loomwright.service.input;

import static loomwright.message.Arg.arg;

import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.core.io.JsonEOFException;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import loomwright.message.Message;

/**
 * Names a fault of JSON syntax as its writer would see it. The parser says where the first character stands that does not
 * belong; that character, what stands before it, and what JSON expects there tell what was meant.
 */
final class JsonSyntax {
    private static final String WORD_END = " \t\r\n,:;]}[{\"'";

    private final String before;
    private final String from;
    private final JsonParser parser;
    private final JsonProcessingException thrown;

    private JsonSyntax(byte[] json, JsonParser parser, JsonProcessingException thrown) {
        int offset = startOfCharacter(json, offsetOf(parser, thrown, json.length));
        this.before = new String(json, 0, offset, StandardCharsets.UTF_8);
        this.from = new String(json, offset, json.length - offset, StandardCharsets.UTF_8);
        this.parser = parser;
        this.thrown = thrown;
    }

    /**
     * The fault in words, with its line and its column in characters, both from 1.
     *
     * @param json the whole text, valid UTF-8
     * @param parser as it stands after it threw
     */
    static Message fault(byte[] json, JsonParser parser, JsonProcessingException thrown) {
        JsonSyntax at = new JsonSyntax(json, parser, thrown);
        return at.code()
                .with(
                        arg("line", at.before.chars().filter(c -> c == '\n').count() + 1),
                        arg("column", (long) at.before.length() - at.before.lastIndexOf('\n')),
                        arg("found", at.word()));
    }

    private static int offsetOf(JsonParser parser, JsonProcessingException thrown, int length) {
        long offset = thrown.getLocation() == null
                ? parser.currentLocation().getByteOffset()
                : thrown.getLocation().getByteOffset();
        return (int) Math.max(0, Math.min(offset, length));
    }

    /** The parser may stand within a character of several bytes. */
    private static int startOfCharacter(byte[] json, int offset) {
        int start = offset;
        while (start > 0 && start < json.length && (json[start] & 0xC0) == 0x80) {
            start--;
        }
        return start;
    }

    private JsonSyntaxCode code() {
        if (thrown instanceof JsonEOFException || from.isEmpty()) {
            return (before + from).strip().length() == 1 ? JsonSyntaxCode.BRACKET_ALONE : JsonSyntaxCode.CUT_SHORT;
        }
        char found = from.charAt(0);
        return switch (found) {
            case '/', '#' -> JsonSyntaxCode.COMMENT;
            case '\'', '`' -> isNumber(last()) ? JsonSyntaxCode.UNIT_BEHIND_NUMBER : JsonSyntaxCode.SINGLE_QUOTES;
            case '\u201C', '\u201D', '\u201E', '\u2018', '\u2019', '\u00AB', '\u00BB' -> JsonSyntaxCode.CURLY_QUOTES;
            case '}', ']' -> closing();
            case ',' -> JsonSyntaxCode.EXTRA_COMMA;
            case ';' -> JsonSyntaxCode.SEMICOLON;
            case '+' -> JsonSyntaxCode.PLUS_SIGN;
            case '.' -> JsonSyntaxCode.DECIMAL_POINT;
            case '\n', '\r', '\t' -> JsonSyntaxCode.LINE_BREAK_IN_TEXT;
            case '"', '{', '[', '-' -> separator();
            default -> Character.isDigit(found) ? digit() : letter();
        };
    }

    private JsonSyntaxCode closing() {
        if (last() == ',') {
            return JsonSyntaxCode.TRAILING_COMMA;
        }
        return last() == '.' ? JsonSyntaxCode.DECIMAL_POINT : JsonSyntaxCode.WRONG_BRACKET;
    }

    private JsonSyntaxCode separator() {
        if (parser.currentToken() == JsonToken.FIELD_NAME) {
            return JsonSyntaxCode.MISSING_COLON;
        }
        return last() == ',' || last() == '{' ? JsonSyntaxCode.UNEXPECTED : JsonSyntaxCode.MISSING_COMMA;
    }

    private JsonSyntaxCode digit() {
        char touching = before.isEmpty() ? ' ' : before.charAt(before.length() - 1);
        if (touching == '+') {
            return JsonSyntaxCode.PLUS_SIGN;
        } else if (touching == '0') {
            return JsonSyntaxCode.LEADING_ZERO;
        } else if (last() == ',' && parser.getParsingContext().inObject()) {
            return JsonSyntaxCode.DECIMAL_COMMA;
        }
        return last() == '{' ? JsonSyntaxCode.UNQUOTED_NAME : separator();
    }

    private JsonSyntaxCode letter() {
        boolean inObject = parser.getParsingContext().inObject();
        if (parser.getParsingContext().inRoot()) {
            return JsonSyntaxCode.NOT_JSON;
        } else if (thrown.getOriginalMessage().startsWith("Unrecognized character escape")) {
            return JsonSyntaxCode.BACKSLASH;
        } else if (isNumber(last()) && parser.currentToken() != JsonToken.FIELD_NAME) {
            return JsonSyntaxCode.UNIT_BEHIND_NUMBER;
        } else if (inObject && (last() == ',' || last() == '{')) {
            return JsonSyntaxCode.UNQUOTED_NAME;
        } else if (word().toLowerCase(Locale.ROOT).matches("true|false|null|none")) {
            return JsonSyntaxCode.LITERAL_IN_CAPITALS;
        }
        return Character.isLetter(from.charAt(0)) ? JsonSyntaxCode.UNQUOTED_TEXT : JsonSyntaxCode.UNEXPECTED;
    }

    /** The last character before the fault that is not blank. */
    private char last() {
        String stripped = before.stripTrailing();
        return stripped.isEmpty() ? ' ' : stripped.charAt(stripped.length() - 1);
    }

    private static boolean isNumber(char c) {
        return Character.isDigit(c);
    }

    /** What stands there, up to the end of the word or number; at least one character, at most twenty. */
    private String word() {
        int end = Math.min(1, from.length());
        while (end < Math.min(from.length(), 20) && WORD_END.indexOf(from.charAt(end)) < 0) {
            end++;
        }
        return from.substring(0, end);
    }
}
