package loomwright.service.problem;

import loomwright.message.MessageCode;

/**
 * The kinds of problem document. Name, status and title are part of the contract: callers may rely on them. The text of each
 * says what it means and what to do.
 */
public enum ProblemType implements MessageCode {
    // What is wrong with the text of the request.
    MALFORMED_JSON(400, "The body is not JSON"),
    DUPLICATE_KEY(400, "A property is given twice"),
    TRAILING_TEXT(400, "Something follows the JSON value"),
    NOT_A_NUMBER(400, "NaN and infinity are not numbers of JSON"),
    NUMBER_TOO_LARGE(400, "A number is too large"),
    BAD_ENCODING(400, "The text is not valid UTF-8"),
    TOO_DEEP(400, "The JSON is nested too deeply"),
    TOO_LONG(400, "A text, name or number is too long, or there are too many of them"),
    MALFORMED_URL(400, "The URL is not well formed"),
    MALFORMED_REQUEST(400, "The request is not well formed HTTP"),
    // What is wrong with what it says.
    UNKNOWN_NAME(400, "A property or parameter does not exist"),
    INVALID_INPUT(400, "The input does not follow the contract"),
    UNPROCESSABLE_INPUT(422, "The input follows the contract but cannot be calculated with"),
    // What is wrong with who asks.
    UNKNOWN_CALLER(401, "The service asks for a key"),
    TOO_MANY_REQUESTS(429, "Too many requests"),
    // What is wrong with how it was asked.
    NOT_FOUND(404, "There is nothing at this address"),
    METHOD_NOT_ALLOWED(405, "This address does not take this method"),
    NOT_ACCEPTABLE(406, "The answer does not exist in the form asked for"),
    REQUEST_TIMEOUT(408, "The request did not arrive in time"),
    BODY_TOO_LARGE(413, "The body is too large"),
    URL_TOO_LONG(414, "The URL is too long"),
    UNSUPPORTED_MEDIA_TYPE(415, "The body is not in a form that is read here"),
    HEADERS_TOO_LARGE(431, "The headers are too large"),
    // What is wrong here.
    INTERNAL_ERROR(500, "A fault of the service"),
    NOT_IMPLEMENTED(501, "The service does not know this method"),
    NO_FONTS(501, "The machine of the service has no fonts to draw with"),
    OUT_OF_TIME(503, "The calculation did not end within its limits"),
    BUSY(503, "The service has no room for this now"),
    NOT_READY(503, "Send requests elsewhere for now");

    /** Where the service explains them. Relative (RFC 9457, section 3.1.1), as no service knows its own name. */
    public static final String PLACE = "/problems/";

    private final int status;
    private final String title;

    ProblemType(int status, String title) {
        this.status = status;
        this.title = title;
    }

    public int status() {
        return status;
    }

    public String title() {
        return title;
    }

    /** The {@code type} of the problem document. */
    public String uri() {
        return PLACE + code();
    }
}
