package loomwright.service.input;

import static loomwright.message.Arg.arg;

import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import loomwright.answer.InputError;
import loomwright.message.Message;
import loomwright.service.problem.Problem;
import loomwright.service.problem.ProblemException;
import loomwright.service.problem.ProblemText;
import loomwright.service.problem.ProblemType;
import org.eclipse.jetty.http.HttpFields;
import org.eclipse.jetty.http.MultiPart;
import org.eclipse.jetty.io.Content;
import org.jspecify.annotations.Nullable;

/** The fields of a form with files (multipart/form-data, RFC 7578). */
public final class Multipart {
    public static final String MEDIA_TYPE = "multipart/form-data";

    private static final int MOST_FIELDS = 1000;
    private static final int MOST_HEADER_BYTES = 8192;

    private Multipart() {}

    /** One field. */
    public static final class Field {
        private final String name;
        private final @Nullable String fileName;
        private final byte[] content;

        private Field(String name, @Nullable String fileName, byte[] content) {
            this.name = name;
            this.fileName = fileName;
            this.content = content;
        }

        public String name() {
            return name;
        }

        /** Absent for a plain field. */
        public @Nullable String fileName() {
            return fileName;
        }

        /** Not copied. */
        public byte[] content() {
            return content;
        }
    }

    /**
     * Takes a body apart.
     *
     * @param contentType with its boundary
     * @throws ProblemException 400 if it does not follow RFC 7578
     */
    public static List<Field> read(String contentType, byte[] body) {
        String boundary = MultiPart.extractBoundary(contentType);
        if (boundary == null || boundary.isEmpty()) {
            throw broken(AcceptedBody.FORM_BOUNDARY.with());
        }
        Collector fields = new Collector();
        MultiPart.Parser parser = new MultiPart.Parser(boundary, fields);
        parser.setMaxParts(MOST_FIELDS);
        parser.setPartHeadersMaxLength(MOST_HEADER_BYTES);
        parser.parse(Content.Chunk.from(ByteBuffer.wrap(body), true));
        if (fields.failed || !fields.complete) {
            throw broken(AcceptedBody.FORM_FIELDS.with(arg("max", MOST_FIELDS)));
        }
        return List.copyOf(fields.read);
    }

    private static ProblemException broken(Message accepted) {
        return new ProblemException(
                ProblemType.INVALID_INPUT,
                ProblemText.NO_FORM.with(arg("accepted", accepted)),
                List.of(new Problem.Entry(new InputError(InputError.Code.MALFORMED, "", null, accepted), true)),
                Map.of());
    }

    private static final class Collector extends MultiPart.AbstractPartsListener {
        private final List<Field> read = new ArrayList<>();
        private final ByteArrayOutputStream content = new ByteArrayOutputStream();
        private boolean failed;
        private boolean complete;

        @Override
        public void onPartContent(Content.Chunk chunk) {
            ByteBuffer bytes = chunk.getByteBuffer().slice();
            byte[] piece = new byte[bytes.remaining()];
            bytes.get(piece);
            content.writeBytes(piece);
        }

        @Override
        public void onPart(@Nullable String name, @Nullable String fileName, HttpFields headers) {
            read.add(new Field(name == null ? "" : name, fileName, content.toByteArray()));
            content.reset();
        }

        @Override
        public void onComplete() {
            complete = true;
        }

        @Override
        public void onFailure(Throwable failure) {
            failed = true;
        }
    }
}
