package loomwright.drawing;

import java.nio.charset.StandardCharsets;
import java.util.List;

/**
 * A picture with a title and a description for those who do not see it. Text stays text. Look is given by attributes of
 * the elements, not by a style sheet, so that a picture within a page leaves the page alone and the page the picture.
 */
public final class Svg {
    /** Faces that are the same width on most machines; {@link TextWidth} knows the widest. */
    public static final String FONTS = "DejaVu Sans, Verdana, Arial, sans-serif";

    private final Markup markup = new Markup();
    private final String id;
    private final double widthPx;
    private final double heightPx;
    private boolean finished;

    /**
     * An empty white picture.
     *
     * @param id begins every id within the picture; different for each picture of a page
     * @param title what it shows, in a few words
     * @param description what there is to see, for a reader who does not
     */
    public Svg(String id, double widthPx, double heightPx, String title, String description) {
        this(id, widthPx, heightPx, 1.0, title, description, List.of());
    }

    /**
     * The same, shown larger or smaller.
     *
     * @param scale 2 shows it twice as large as its own measures say
     * @param attributes more attributes of the picture as a whole, names and values by turns
     */
    public Svg(
            String id,
            double widthPx,
            double heightPx,
            double scale,
            String title,
            String description,
            List<String> attributes) {
        this.id = id;
        this.widthPx = widthPx;
        this.heightPx = heightPx;
        markup.open(
                "svg",
                "xmlns",
                "http://www.w3.org/2000/svg",
                "width",
                widthPx * scale,
                "height",
                heightPx * scale,
                "viewBox",
                "0 0 " + Markup.number(widthPx) + " " + Markup.number(heightPx),
                "role",
                "img",
                "aria-labelledby",
                id("title") + " " + id("desc"),
                "font-family",
                FONTS);
        markup.attributes(attributes.toArray());
        markup.element("title", title, "id", id("title"));
        markup.element("desc", description, "id", id("desc"));
        markup.open("g");
        rect(0, 0, widthPx, heightPx, "class", "dg-paper", "fill", "#ffffff");
    }

    /** An id within this picture. */
    public String id(String name) {
        return id + "-" + name;
    }

    public double widthPx() {
        return widthPx;
    }

    public double heightPx() {
        return heightPx;
    }

    /** Begins a group or any other element. */
    public Svg open(String name, Object... attributes) {
        markup.open(name, attributes);
        return this;
    }

    /** Says what the element begun last is, for a reader who does not see it. */
    public Svg words(String words) {
        markup.element("title", words);
        return this;
    }

    /** Ends what was begun last. */
    public Svg close() {
        markup.close();
        return this;
    }

    public Svg line(double x1, double y1, double x2, double y2, Object... attributes) {
        markup.open("line", "x1", x1, "y1", y1, "x2", x2, "y2", y2);
        return attributes(attributes).close();
    }

    public Svg rect(double x, double y, double width, double height, Object... attributes) {
        markup.open("rect", "x", x, "y", y, "width", width, "height", height);
        return attributes(attributes).close();
    }

    public Svg circle(double x, double y, double radius, Object... attributes) {
        markup.open("circle", "cx", x, "cy", y, "r", radius);
        return attributes(attributes).close();
    }

    /** A path, in the notation of SVG. */
    public Svg path(String path, Object... attributes) {
        markup.open("path", "d", path);
        return attributes(attributes).close();
    }

    /** A text whose baseline begins (or, by {@code text-anchor}, is centred or ends) here. */
    public Svg text(double x, double y, double sizePx, String text, Object... attributes) {
        markup.open("text", "x", x, "y", y, "font-size", sizePx);
        attributes(attributes);
        markup.text(text).close();
        return this;
    }

    /** The finished picture, to stand within a page or to be written as a file. */
    public Markup markup() {
        if (!finished) {
            markup.close().close();
            finished = true;
        }
        return markup;
    }

    /** The finished picture as a file. */
    public byte[] bytes() {
        return markup().toString().getBytes(StandardCharsets.UTF_8);
    }

    private Svg attributes(Object... attributes) {
        markup.attributes(attributes);
        return this;
    }
}
