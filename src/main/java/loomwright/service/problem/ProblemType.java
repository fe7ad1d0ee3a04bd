package loomwright.service.problem;

import loomwright.message.Message;
import loomwright.message.MessageCode;

/**
 * The kinds of problem document. Name, status and title are part of the contract: callers may rely on them. The text of each
 * says what it means and what to do.
 */
public enum ProblemType implements MessageCode {
    // What is wrong with the text of the request.
    MALFORMED_JSON(400),
    DUPLICATE_KEY(400),
    TRAILING_TEXT(400),
    NOT_A_NUMBER(400),
    NUMBER_TOO_LARGE(400),
    BAD_ENCODING(400),
    TOO_DEEP(400),
    TOO_LONG(400),
    MALFORMED_URL(400),
    MALFORMED_REQUEST(400),
    // What is wrong with what it says.
    UNKNOWN_NAME(400),
    INVALID_INPUT(400),
    UNPROCESSABLE_INPUT(422),
    // What is wrong with who asks.
    UNKNOWN_CALLER(401),
    TOO_MANY_REQUESTS(429),
    // What is wrong with how it was asked.
    NOT_FOUND(404),
    METHOD_NOT_ALLOWED(405),
    NOT_ACCEPTABLE(406),
    REQUEST_TIMEOUT(408),
    BODY_TOO_LARGE(413),
    URL_TOO_LONG(414),
    UNSUPPORTED_MEDIA_TYPE(415),
    HEADERS_TOO_LARGE(431),
    // What is wrong here.
    INTERNAL_ERROR(500),
    NOT_IMPLEMENTED(501),
    NO_FONTS(501),
    OUT_OF_TIME(503),
    BUSY(503),
    NOT_READY(503);

    /** Where the service explains them. Relative (RFC 9457, section 3.1.1), as no service knows its own name. */
    public static final String PLACE = "/problems/";

    private final int status;

    ProblemType(int status) {
        this.status = status;
    }

    public int status() {
        return status;
    }

    /** What it is called, in a few words. */
    public String title() {
        return Message.of(this).shortText();
    }

    /** The {@code type} of the problem document. */
    public String uri() {
        return PLACE + code();
    }
}
