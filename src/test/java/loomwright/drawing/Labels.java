package loomwright.drawing;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.SAXException;

/** A picture read back by an XML parser: its labels, and the room that each takes. */
public final class Labels {
    /** How far a letter reaches above and below its baseline, as shares of the size. */
    private static final double ABOVE = 0.76;

    private static final double BELOW = 0.24;

    private final Document document;

    private Labels(Document document) {
        this.document = document;
    }

    /** One label with the rectangle around it, rotation included. */
    public record Label(String text, double left, double top, double right, double bottom) {
        boolean overlaps(Label other) {
            return left < other.right && other.left < right && top < other.bottom && other.top < bottom;
        }
    }

    /** Reads a picture; one that is not well-formed fails the test. */
    public static Labels of(byte[] svg) {
        try {
            DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
            factory.setNamespaceAware(true);
            return new Labels(factory.newDocumentBuilder().parse(new ByteArrayInputStream(svg)));
        } catch (ParserConfigurationException | SAXException | IOException e) {
            throw new AssertionError("not well-formed: " + e.getMessage(), e);
        }
    }

    public Element root() {
        return document.getDocumentElement();
    }

    /** The text of the first element of a name. */
    public String textOf(String element) {
        return root().getElementsByTagName(element).item(0).getTextContent();
    }

    public List<Label> list() {
        NodeList texts = document.getElementsByTagName("text");
        List<Label> labels = new ArrayList<>();
        for (int i = 0; i < texts.getLength(); i++) {
            labels.add(label((Element) texts.item(i)));
        }
        return labels;
    }

    /** Pairs of labels that share room, and labels that are not wholly within the picture. */
    public List<String> collisions() {
        List<Label> labels = list();
        List<String> found = new ArrayList<>();
        double width = number(root(), "width");
        double height = number(root(), "height");
        for (int i = 0; i < labels.size(); i++) {
            Label one = labels.get(i);
            if (one.left < 0 || one.top < 0 || one.right > width || one.bottom > height) {
                found.add(one + " leaves the picture");
            }
            for (Label other : labels.subList(i + 1, labels.size())) {
                if (one.overlaps(other)) {
                    found.add(one + " and " + other);
                }
            }
        }
        return found;
    }

    private static Label label(Element text) {
        double size = number(text, "font-size");
        double width = TextWidth.of(text.getTextContent(), size);
        double x = number(text, "x");
        double y = number(text, "y");
        String anchor = text.getAttribute("text-anchor");
        double from = anchor.equals("middle") ? -width / 2 : anchor.equals("end") ? -width : 0;
        return text.getAttribute("transform").startsWith("rotate(-90")
                ? new Label(text.getTextContent(), x - ABOVE * size, y - from - width, x + BELOW * size, y - from)
                : new Label(text.getTextContent(), x + from, y - ABOVE * size, x + from + width, y + BELOW * size);
    }

    private static double number(Element element, String attribute) {
        return Double.parseDouble(element.getAttribute(attribute));
    }
}
