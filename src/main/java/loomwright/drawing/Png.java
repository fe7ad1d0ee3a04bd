package loomwright.drawing;

import com.github.weisj.jsvg.SVGDocument;
import com.github.weisj.jsvg.parser.LoaderContext;
import com.github.weisj.jsvg.parser.SVGLoader;
import com.github.weisj.jsvg.view.ViewBox;
import java.awt.Color;
import java.awt.Component;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import javax.imageio.ImageIO;

/** Pictures as dots. Needs fonts on the machine; the picture itself, as text, does not. */
public final class Png {
    /** What a machine without fonts lacks. */
    public static final String PACKAGES = "fontconfig and fonts-dejavu-core";

    /** Dots in all above which a picture is drawn smaller: 20 million dots are 80 MB while it is drawn. */
    private static final double MOST_DOTS = 20e6;

    private Png() {}

    /** The machine has no fonts, or not the libraries to read them, so no text can be drawn as dots. */
    public static final class NoFonts extends RuntimeException {
        private static final long serialVersionUID = 1L;

        public NoFonts(Throwable cause) {
            super(
                    "This machine has no fonts to draw text with. Install the Debian packages " + PACKAGES
                            + ", or ask for the picture as SVG.",
                    cause);
        }
    }

    /**
     * Draws a picture.
     *
     * @param scale dots per pixel of the picture; less is taken where the picture would become too large
     * @return a PNG file
     * @throws NoFonts if the machine has none
     */
    public static byte[] of(Svg picture, double scale) {
        double dots = picture.widthPx() * picture.heightPx() * scale * scale;
        double factor = dots > MOST_DOTS ? scale * Math.sqrt(MOST_DOTS / dots) : scale;
        int width = (int) Math.ceil(picture.widthPx() * factor);
        int height = (int) Math.ceil(picture.heightPx() * factor);
        try {
            return drawn(picture.bytes(), width, height);
        } catch (LinkageError | InternalError e) {
            // The JDK reports missing fonts and missing font libraries as errors, not as exceptions.
            throw new NoFonts(e);
        } catch (IOException e) {
            throw new IllegalStateException("a picture could not be written into memory", e);
        }
    }

    private static byte[] drawn(byte[] svg, int width, int height) throws IOException {
        SVGDocument document = new SVGLoader().load(new ByteArrayInputStream(svg), null, LoaderContext.createDefault());
        if (document == null) {
            throw new IllegalStateException("a picture of ours is no SVG");
        }
        BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
        Graphics2D graphics = image.createGraphics();
        try {
            graphics.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
            graphics.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
            graphics.setColor(Color.WHITE);
            graphics.fillRect(0, 0, width, height);
            document.render((Component) null, graphics, new ViewBox(0, 0, width, height));
        } finally {
            graphics.dispose();
        }
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        if (!ImageIO.write(image, "png", out)) {
            throw new IllegalStateException("the JDK has no PNG writer");
        }
        return out.toByteArray();
    }
}
