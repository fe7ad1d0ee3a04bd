package loomwright.service.page;

import static loomwright.message.Arg.arg;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.dataformat.yaml.YAMLMapper;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import loomwright.service.http.Reply;
import loomwright.service.http.Request;
import loomwright.service.input.Json;
import loomwright.service.problem.Problem;
import loomwright.service.problem.ProblemException;
import loomwright.service.problem.ProblemText;
import loomwright.service.problem.ProblemType;
import org.jspecify.annotations.Nullable;

/**
 * The answers that the contract shows by their address, with long lists cut. {@code example-answers.yaml} holds them; it is
 * read at the first request, because most services are never asked for one.
 */
public final class ExampleAnswers {
    private static final String FILE = "example-answers.yaml";
    private static final String TEXT = "text/plain";

    private volatile @Nullable JsonNode answers;

    /** One of them: text as text, all others as JSON. */
    public Reply one(Request request) throws IOException {
        String name = request.path("name");
        JsonNode answer = all().path(name).path("value");
        if (answer.isMissingNode()) {
            throw new ProblemException(
                    ProblemType.NOT_FOUND, ProblemText.NO_SUCH_ANSWER.with(arg("name", Problem.shortened(name))));
        }
        if (answer.isTextual()) {
            request.checkAccepts(TEXT);
            return Reply.of(TEXT + "; charset=utf-8", answer.asText());
        }
        request.checkAccepts(Json.MEDIA_TYPE);
        return Reply.of(Json.MEDIA_TYPE, request.json().write(answer));
    }

    private JsonNode all() {
        JsonNode ready = answers;
        if (ready == null) {
            ready = read();
            answers = ready;
        }
        return ready;
    }

    private static JsonNode read() {
        try (InputStream in = ExampleAnswers.class.getClassLoader().getResourceAsStream(FILE)) {
            if (in == null) {
                throw new IllegalStateException(FILE + " is not on the class path");
            }
            return new YAMLMapper().readTree(in);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
