package loomwright.service.input;

import loomwright.message.MessageCode;

/** What people and spreadsheets write that is almost JSON. Each says what stands there and what to write. */
enum JsonSyntaxCode implements MessageCode {
    COMMENT,
    TRAILING_COMMA,
    EXTRA_COMMA,
    MISSING_COMMA,
    MISSING_COLON,
    DECIMAL_COMMA,
    DECIMAL_POINT,
    PLUS_SIGN,
    LEADING_ZERO,
    UNIT_BEHIND_NUMBER,
    SINGLE_QUOTES,
    CURLY_QUOTES,
    UNQUOTED_NAME,
    UNQUOTED_TEXT,
    LITERAL_IN_CAPITALS,
    LINE_BREAK_IN_TEXT,
    BACKSLASH,
    WRONG_BRACKET,
    SEMICOLON,
    NOT_JSON,
    CUT_SHORT,
    /** The first line of a text of several, which each line of a run is taken for. */
    BRACKET_ALONE,
    UNEXPECTED
}
