package loomwright.service.page;

import static loomwright.message.Arg.arg;
import static loomwright.message.Arg.texts;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import loomwright.service.http.Reply;
import loomwright.service.http.Representation;
import loomwright.service.http.Request;
import loomwright.service.input.Json;
import loomwright.service.problem.Problem;
import loomwright.service.problem.ProblemException;
import loomwright.service.problem.ProblemText;
import loomwright.service.problem.ProblemType;

/** Circuits to start from, as lists of wires: {@code templates/index} names them, one a line with a title. */
public final class Templates {
    private static final String FOLDER = "templates/";

    private final List<Template> list;

    /**
     * One template.
     *
     * @param name for {@code GET /v1/templates/{name}}
     * @param title what it is
     * @param href where it is
     * @param parts kinds of the parts that make it what it is, from the supply on, for a small picture
     */
    public record Template(String name, String title, String href, List<String> parts) {
        public Template {
            parts = List.copyOf(parts);
        }
    }

    /** The listing. */
    record Listing(List<Template> templates) {}

    private Templates(List<Template> list) {
        this.list = List.copyOf(list);
    }

    /** Reads the index; a line is a name, kinds of parts with commas between, a title. */
    public static Templates load() {
        List<Template> found = new ArrayList<>();
        for (String line :
                new String(bytes("index"), StandardCharsets.UTF_8).lines().toList()) {
            if (!line.isBlank() && !line.startsWith("#")) {
                String[] columns = line.trim().split("\\s+", 3);
                found.add(new Template(
                        columns[0], columns[2], "/v1/templates/" + columns[0], List.of(columns[1].split(","))));
            }
        }
        return new Templates(found);
    }

    public List<Template> list() {
        return list;
    }

    public Reply listing(Request request) throws IOException {
        request.checkAccepts(Json.MEDIA_TYPE);
        return Reply.of(Json.MEDIA_TYPE, request.json().write(new Listing(list)));
    }

    public Reply one(Request request) {
        request.checkAccepts(Representation.CSV.mediaType());
        String name = request.path("name");
        if (list.stream().noneMatch(template -> template.name().equals(name))) {
            throw new ProblemException(
                    ProblemType.NOT_FOUND,
                    ProblemText.NO_SUCH_TEMPLATE.with(
                            arg("name", Problem.shortened(name)),
                            texts(
                                    "names",
                                    list.stream().map(each -> each.name()).toList())));
        }
        return Reply.of(Representation.CSV.contentType(), bytes(name + ".csv"));
    }

    private static byte[] bytes(String file) {
        try (InputStream in = Templates.class.getClassLoader().getResourceAsStream(FOLDER + file)) {
            if (in == null) {
                throw new IllegalStateException(FOLDER + file + " is not on the class path");
            }
            return in.readAllBytes();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
