package loomwright.service.problem;

import com.fasterxml.jackson.annotation.JsonIgnore;
import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonProperty;
import com.fasterxml.jackson.annotation.JsonPropertyOrder;
import java.util.List;
import loomwright.answer.InputError;
import org.jspecify.annotations.Nullable;

/**
 * A problem document (RFC 9457).
 *
 * @param type stable name of the kind of problem
 * @param title the kind in words, always the same for a type
 * @param status the HTTP status
 * @param detail what is wrong with this request, and what would help
 * @param instance names this one occurrence; the log holds the same request id
 * @param errors every fault found, if the problem has places to point at
 */
@JsonPropertyOrder({"type", "title", "status", "detail", "instance", "errors"})
public record Problem(
        String type,
        String title,
        int status,
        String detail,
        String instance,
        @JsonInclude(JsonInclude.Include.NON_EMPTY) List<Entry> errors) {

    public static final String MEDIA_TYPE = "application/problem+json";

    /** Longest echo of what the caller sent. */
    private static final int ECHO_CHARS = 100;

    /**
     * One fault. Its words are made when the document is written.
     *
     * @param fault the fault
     * @param inBody whether it is in the body; else in the query or the path
     */
    @JsonPropertyOrder({
        "code",
        "text",
        "pointer",
        "parameter",
        "place",
        "row",
        "column",
        "value",
        "accepted",
        "suggestion"
    })
    public record Entry(
            @JsonIgnore InputError fault, @JsonIgnore boolean inBody) {

        /** Kind of fault. */
        @JsonProperty
        public InputError.Code code() {
            return fault.code();
        }

        /** The fault in words: what is wrong, where, and what to write. */
        @JsonProperty
        public String text() {
            return ErrorText.of(fault, inBody);
        }

        /** Place in the body, a JSON pointer (RFC 6901); or {@link #parameter}. */
        @JsonProperty
        public @Nullable String pointer() {
            String place = fault.pointer();
            return inBody ? (place.isEmpty() || place.startsWith("/") ? place : "/" + place) : null;
        }

        /** Name of the query or path parameter. */
        @JsonProperty
        public @Nullable String parameter() {
            String place = fault.pointer();
            return inBody ? null : place.startsWith("/") ? place.substring(1) : place;
        }

        /** Where, as the writer sees it: row and column of a list, or the wire or part by its id. */
        @JsonProperty
        public @Nullable String place() {
            return fault.place();
        }

        /** The row of a list, from 1. */
        @JsonProperty
        public @Nullable Integer row() {
            return fault.cell() == null ? null : fault.cell().row();
        }

        /** The column of a list, by its heading. */
        @JsonProperty
        public @Nullable String column() {
            return fault.cell() == null || fault.cell().column().isEmpty()
                    ? null
                    : fault.cell().column();
        }

        /** What stood there, shortened to 100 characters. */
        @JsonProperty
        public @Nullable String value() {
            return fault.value() == null ? null : shortened(fault.value());
        }

        /** What would have been accepted. */
        @JsonProperty
        public String accepted() {
            return fault.accepted().text();
        }

        /** The name or word that was most likely meant. */
        @JsonProperty
        public @Nullable String suggestion() {
            return fault.suggestion();
        }
    }

    public static Problem of(ProblemType type, String detail, String requestId, List<Entry> errors) {
        return new Problem(
                type.uri(), type.title(), type.status(), detail, "urn:loomwright:request:" + requestId, errors);
    }

    /** {@code text} as it may be repeated to the caller: at most 100 characters, no half surrogate pair. */
    public static String shortened(String text) {
        StringBuilder out = new StringBuilder();
        int end = Math.min(text.length(), ECHO_CHARS);
        for (int i = 0; i < end; i++) {
            char c = text.charAt(i);
            if (Character.isHighSurrogate(c) && i + 1 < end && Character.isLowSurrogate(text.charAt(i + 1))) {
                out.append(c).append(text.charAt(++i));
            } else {
                out.append(Character.isSurrogate(c) ? '\uFFFD' : c);
            }
        }
        return text.length() > end ? out.append('…').toString() : out.toString();
    }
}
