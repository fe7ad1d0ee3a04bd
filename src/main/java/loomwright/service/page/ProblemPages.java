package loomwright.service.page;

import static loomwright.message.Arg.arg;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Map;
import loomwright.drawing.Markup;
import loomwright.service.form.PostText;
import loomwright.service.http.FixedHeaders;
import loomwright.service.http.Reply;
import loomwright.service.http.Request;
import loomwright.service.problem.Problem;
import loomwright.service.problem.ProblemException;
import loomwright.service.problem.ProblemText;
import loomwright.service.problem.ProblemType;

/** What the {@code type} of a problem document leads to: what this kind of problem means, and what to do. */
public final class ProblemPages {
    private ProblemPages() {}

    /**
     * The page of one kind.
     *
     * @throws ProblemException 404 if there is none of this name
     */
    public static Reply page(Request request) {
        request.checkAccepts("text/html");
        String name = request.path("type");
        ProblemType type = Arrays.stream(ProblemType.values())
                .filter(one -> one.code().equals(name))
                .findFirst()
                .orElseThrow(() -> new ProblemException(
                        ProblemType.NOT_FOUND, ProblemText.NO_SUCH_TYPE.with(arg("name", Problem.shortened(name)))));
        return Reply.of("text/html; charset=utf-8", text(type).getBytes(StandardCharsets.UTF_8))
                .withHeaders(Map.of(FixedHeaders.CONTENT_SECURITY, FixedHeaders.ANSWER_CONTENT_SECURITY));
    }

    private static String text(ProblemType type) {
        Markup body = new Markup().open("body").open("main");
        body.element("h1", type.title());
        body.element("p", "Status " + type.status() + ", type " + type.uri());
        body.element("p", type.text());
        body.open("p").element("a", "The contract", "href", "/docs").close();
        return "<!doctype html><html lang=\"en\"><head>"
                + "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">"
                + "<link rel=\"icon\" href=\"data:,\"><link rel=\"stylesheet\" href=\"/page/page.css\">"
                + new Markup()
                        .element(
                                "title",
                                PostText.PAGE_TITLE
                                        .with(arg("title", type.title()))
                                        .text())
                + "</head>"
                + body.close().close()
                + "</html>";
    }
}
