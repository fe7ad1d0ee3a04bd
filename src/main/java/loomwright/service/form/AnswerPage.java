package loomwright.service.form;

import static loomwright.message.Arg.arg;

import java.nio.charset.StandardCharsets;
import java.util.List;
import loomwright.answer.Answer;
import loomwright.answer.Basis;
import loomwright.drawing.Markup;
import loomwright.message.Message;
import loomwright.message.PropertyName;
import org.jspecify.annotations.Nullable;

/** An answer as a plain page: what a browser shows that sent a form of the help page without running scripts. */
public final class AnswerPage {
    private AnswerPage() {}

    /**
     * Cautions first, then the table, how it was calculated, and the sources.
     *
     * @param title what was calculated
     */
    public static byte[] of(String title, Answer<?> answer, Table table) {
        Markup body = new Markup().open("body").open("main");
        body.element("h1", title);
        body.element("h2", PostText.CAUTIONS.text());
        list(body, answer.cautions().stream().map(caution -> caution.text()).toList());
        body.element("h2", PostText.ANSWER.text()).open("div", "class", "wide", "tabindex", "0");
        table(body, table);
        body.close().element("h2", PostText.HOW_CALCULATED.text());
        list(body, answer.working().stream().map(Message::text).toList());
        body.element("h2", PostText.SOURCES.text());
        list(body, answer.basis().stream().map(Basis::inWords).toList());
        body.open("p")
                .element("a", PostText.BACK_TO_CALCULATORS.text(), "href", "/#calculators")
                .close();
        Markup head = new Markup()
                .element("title", PostText.PAGE_TITLE.with(arg("title", title)).text());
        String page = "<!doctype html><html lang=\"en\"><head>"
                + "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">"
                + "<link rel=\"icon\" href=\"data:,\"><link rel=\"stylesheet\" href=\"/page/page.css\">"
                + head
                + "</head>"
                + body.close().close()
                + "</html>";
        return page.getBytes(StandardCharsets.UTF_8);
    }

    private static void list(Markup body, List<String> lines) {
        body.open("ul");
        lines.forEach(line -> body.element("li", line));
        body.close();
    }

    private static void table(Markup body, Table table) {
        body.open("table").open("thead").open("tr");
        table.columns()
                .forEach(column -> body.element("th", PropertyName.of(column).heading(), "scope", "col"));
        body.close().close().open("tbody");
        for (List<@Nullable Object> row : table.rows()) {
            body.open("tr");
            for (Object cell : row) {
                body.element("td", text(cell), "class", cell instanceof Number ? "number" : "text");
            }
            body.close();
        }
        body.close().close();
    }

    private static String text(@Nullable Object cell) {
        if (cell == null) {
            return "";
        }
        if (cell instanceof Number number) {
            return CellNumbers.text(number.doubleValue());
        }
        return cell instanceof Enum<?> word ? EnumWords.of(word) : cell.toString();
    }
}
