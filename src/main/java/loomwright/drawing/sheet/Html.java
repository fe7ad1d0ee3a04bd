package loomwright.drawing.sheet;

import java.util.List;
import loomwright.drawing.Markup;
import loomwright.drawing.Svg;

/** Writes headings, lists and tables of a page. All text goes through {@link Markup}, which escapes it. */
final class Html {
    private final Markup markup = new Markup();

    /**
     * One cell of a table.
     *
     * @param look class of the cell; empty for none
     */
    record Cell(String text, String look) {
        static Cell of(String text) {
            return new Cell(text, "");
        }

        /** An empty box to write into. */
        static Cell box() {
            return new Cell("", "box");
        }

        /** A small box to tick. */
        static Cell tick() {
            return new Cell("", "tick");
        }
    }

    /**
     * The finished page: one file.
     *
     * @param look class of the whole
     */
    static String page(String title, String style, Html body, String look) {
        Markup page = new Markup();
        page.open("html", "lang", "en").open("head");
        page.hollow("meta", "charset", "utf-8");
        page.hollow("meta", "name", "viewport", "content", "width=device-width, initial-scale=1");
        page.element("title", title).element("style", style).close();
        page.open("body", "class", look).add(body.markup).close().close();
        return "<!DOCTYPE html>\n" + page + "\n";
    }

    Html open(String element, String look) {
        if (look.isEmpty()) {
            markup.open(element);
        } else {
            markup.open(element, "class", look);
        }
        return this;
    }

    Html close() {
        markup.close();
        return this;
    }

    Html element(String element, String look, String text) {
        open(element, look);
        markup.text(text);
        return close();
    }

    Html text(String text) {
        markup.text(text);
        return this;
    }

    Html heading(String text) {
        return element("h2", "", text);
    }

    Html paragraph(String text) {
        return element("p", "", text);
    }

    /** Stays with what follows it. */
    Html lead(String text) {
        return element("p", "lead", text);
    }

    Html list(String look, List<String> lines) {
        open("ul", look);
        lines.forEach(line -> element("li", "", line));
        return close();
    }

    Html picture(Svg svg) {
        open("div", "");
        markup.add(svg.markup());
        return close();
    }

    /**
     * A table whose head is printed again on each page; it may be wider than a telephone.
     *
     * @param rows a row of one cell is a heading across all columns
     */
    Html table(String look, List<String> head, List<List<Cell>> rows) {
        open("div", "wide").open("table", look).open("thead", "").open("tr", "");
        head.forEach(text -> markup.element("th", text, "scope", "col"));
        close().close().open("tbody", "");
        rows.forEach(row -> row(row, head.size()));
        return close().close().close();
    }

    private void row(List<Cell> cells, int columns) {
        boolean across = cells.size() == 1;
        open("tr", across ? "across" : "");
        for (Cell cell : cells) {
            if (across) {
                markup.element("th", cell.text(), "colspan", columns, "scope", "colgroup");
            } else {
                element("td", cell.look(), cell.text());
            }
        }
        close();
    }
}
