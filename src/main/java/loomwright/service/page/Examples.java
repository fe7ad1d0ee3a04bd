package loomwright.service.page;

import static loomwright.message.Arg.arg;
import static loomwright.message.Arg.texts;

import com.fasterxml.jackson.annotation.JsonPropertyOrder;
import com.fasterxml.jackson.core.JsonProcessingException;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import loomwright.circuit.Plan;
import loomwright.service.http.Reply;
import loomwright.service.http.Request;
import loomwright.service.input.Json;
import loomwright.service.problem.Problem;
import loomwright.service.problem.ProblemException;
import loomwright.service.problem.ProblemText;
import loomwright.service.problem.ProblemType;

/** The plans that README, tests and the contract use: {@code examples/index} names them, one a line with a title. */
public final class Examples {
    private static final String FOLDER = "examples/";

    private final List<Example> list;

    /**
     * One example.
     *
     * @param name for {@code GET /v1/examples/{name}}
     * @param title what it shows
     * @param href where it is
     */
    @JsonPropertyOrder({"name", "title", "href"})
    public record Example(String name, String title, String href) {}

    /** The listing. */
    record Listing(List<Example> examples) {}

    private Examples(List<Example> list) {
        this.list = List.copyOf(list);
    }

    /** Reads the index; a line is a name, blanks, a title. */
    public static Examples load() {
        List<Example> found = new ArrayList<>();
        for (String line :
                new String(bytes("index"), StandardCharsets.UTF_8).lines().toList()) {
            if (!line.isBlank() && !line.startsWith("#")) {
                String[] parts = line.trim().split("\\s+", 2);
                found.add(new Example(parts[0], parts[1], "/v1/examples/" + parts[0]));
            }
        }
        return new Examples(found);
    }

    public List<Example> list() {
        return list;
    }

    public Reply listing(Request request) throws IOException {
        request.checkAccepts(Json.MEDIA_TYPE);
        return Reply.of(Json.MEDIA_TYPE, request.json().write(new Listing(list)));
    }

    public Reply one(Request request) {
        request.checkAccepts(Json.MEDIA_TYPE);
        return Reply.of(Json.MEDIA_TYPE, document(request.path("name")));
    }

    /**
     * One example as a plan.
     *
     * @throws ProblemException 404 if there is none of this name, or if it is an input of another sort
     */
    public Plan plan(String name, Json json) throws IOException {
        byte[] document = document(name);
        try {
            return json.mapper().readValue(document, Plan.class);
        } catch (JsonProcessingException e) {
            throw new ProblemException(ProblemType.NOT_FOUND, ProblemText.EXAMPLE_IS_NO_PLAN.with(arg("name", name)));
        }
    }

    private byte[] document(String name) {
        if (list.stream().noneMatch(example -> example.name().equals(name))) {
            throw new ProblemException(
                    ProblemType.NOT_FOUND,
                    ProblemText.NO_SUCH_EXAMPLE.with(
                            arg("name", Problem.shortened(name)),
                            texts(
                                    "names",
                                    list.stream().map(each -> each.name()).toList())));
        }
        return bytes(name + ".json");
    }

    private static byte[] bytes(String file) {
        try (InputStream in = Examples.class.getClassLoader().getResourceAsStream(FOLDER + file)) {
            if (in == null) {
                throw new IllegalStateException(FOLDER + file + " is not on the class path");
            }
            return in.readAllBytes();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
