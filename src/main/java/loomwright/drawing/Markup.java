package loomwright.drawing;

import java.io.StringWriter;
import javax.xml.stream.XMLOutputFactory;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamWriter;

/**
 * Writes elements. Texts and attribute values reach the output through the escapes of the XML writer only, so no name of
 * a caller can become an element.
 */
public final class Markup {
    private static final XMLOutputFactory FACTORY = XMLOutputFactory.newDefaultFactory();

    private final StringWriter out = new StringWriter();
    private final XMLStreamWriter writer;

    /** Nothing written yet. */
    public Markup() {
        try {
            writer = FACTORY.createXMLStreamWriter(out);
        } catch (XMLStreamException e) {
            throw new IllegalStateException("a writer into memory failed", e);
        }
    }

    /**
     * Begins an element.
     *
     * @param attributes names and values by turns; a number is written with at most two decimals
     */
    public Markup open(String name, Object... attributes) {
        return write(() -> writer.writeStartElement(name)).attributes(attributes);
    }

    /** More attributes of the element just begun. */
    Markup attributes(Object... attributes) {
        return write(() -> {
            for (int i = 0; i < attributes.length; i += 2) {
                Object value = attributes[i + 1];
                String text = value instanceof Double number ? number(number) : String.valueOf(value);
                writer.writeAttribute(String.valueOf(attributes[i]), legal(text));
            }
        });
    }

    /** Ends the innermost element. */
    public Markup close() {
        return write(writer::writeEndElement);
    }

    /** Text within the innermost element. */
    public Markup text(String text) {
        return write(() -> writer.writeCharacters(legal(text)));
    }

    /** An element with nothing in it. */
    public Markup empty(String name, Object... attributes) {
        return open(name, attributes).close();
    }

    /** An element that has no end, of which HTML knows some: {@code meta}, {@code br}. */
    public Markup hollow(String name, Object... attributes) {
        return write(() -> writer.writeEmptyElement(name)).attributes(attributes);
    }

    /** An element with a text in it. */
    public Markup element(String name, String text, Object... attributes) {
        return open(name, attributes).text(text).close();
    }

    /** What another has written, as part of this. */
    public Markup add(Markup finished) {
        return write(() -> {
            writer.writeCharacters("");
            writer.flush();
            out.append(finished.toString());
        });
    }

    /** All that was written. */
    @Override
    public String toString() {
        write(writer::flush);
        return out.toString();
    }

    /** A number with at most two decimals, without trailing zeros, the same in every country. */
    public static String number(double value) {
        if (!Double.isFinite(value)) {
            throw new IllegalArgumentException("a picture has no place for " + value);
        }
        long hundredths = Math.round(value * 100);
        String text = (hundredths < 0 ? "-" : "") + Math.abs(hundredths) / 100;
        long rest = Math.abs(hundredths) % 100;
        if (rest == 0) {
            return text;
        }
        return text + "." + (rest % 10 == 0 ? String.valueOf(rest / 10) : rest < 10 ? "0" + rest : rest);
    }

    /** XML 1.0, section 2.2, has no place for most control characters nor for half a surrogate pair. */
    private static String legal(String text) {
        StringBuilder legal = new StringBuilder(text.length());
        text.codePoints().forEach(c -> legal.appendCodePoint(isLegal(c) ? c : '\uFFFD'));
        return legal.toString();
    }

    private static boolean isLegal(int c) {
        return c == '\t'
                || c == '\n'
                || c == '\r'
                || (c >= 0x20 && c <= 0xD7FF)
                || (c >= 0xE000 && c <= 0xFFFD)
                || c >= 0x10000;
    }

    /** One call of the XML writer. */
    @FunctionalInterface
    private interface Step {
        void run() throws XMLStreamException;
    }

    private Markup write(Step step) {
        try {
            step.run();
            return this;
        } catch (XMLStreamException e) {
            throw new IllegalStateException("elements in the wrong order", e);
        }
    }
}
