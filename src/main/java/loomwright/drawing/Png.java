package loomwright.drawing;

import com.github.weisj.jsvg.SVGDocument;
import com.github.weisj.jsvg.parser.DocumentLimits;
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
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;
import javax.imageio.ImageIO;
import javax.imageio.stream.ImageOutputStream;
import javax.imageio.stream.MemoryCacheImageOutputStream;

/** Pictures as dots. Needs fonts on the machine; the picture itself, as text, does not. */
public final class Png {
    /** What a machine without fonts lacks. */
    public static final String PACKAGES = "fontconfig and fonts-dejavu-core";

    /** Dots in all above which a picture is drawn smaller: 20 million dots are 80 MB while it is drawn. */
    private static final double MOST_DOTS = 20e6;

    /** A width asked for is not to grow by a dot through the last digit of its factor. */
    private static final double ROUNDING = 1e-6;

    /** What one dot takes while a picture is drawn and written: the image, and about as much for the file. */
    private static final int BYTES_PER_DOT = 6;

    /** Of the memory that the service may have, this part is for pictures in the making. */
    private static final double SHARE_OF_MEMORY = 0.25;

    /** How long a picture waits for others to be finished before it is refused. */
    private static final long WAIT_MS = 5_000;

    /** Permits for a thousand dots each. Fair, so that a large picture is not passed by small ones for ever. */
    private static final int ROOM =
            (int) Math.max(1, Runtime.getRuntime().maxMemory() * SHARE_OF_MEMORY / BYTES_PER_DOT / 1000);

    private static final Semaphore FREE = new Semaphore(ROOM, true);

    /**
     * Pictures of ours may have as many strokes as they like: the parser's limits are there for files of strangers. A
     * circuit of 1,000 wires has about 30,000.
     */
    private static final int MOST_PATHS = 1_000_000;

    /** Where the JDK looks for fonts. */
    private static final List<String> FONT_CODE =
            List.of("sun.font.", "sun.awt.FontConfiguration", "sun.awt.X11FontManager");

    private static final LoaderContext CONTEXT = LoaderContext.builder()
            .documentLimits(new DocumentLimits(
                    DocumentLimits.DEFAULT_MAX_NESTING_DEPTH, DocumentLimits.DEFAULT_MAX_USE_NESTING_DEPTH, MOST_PATHS))
            .build();

    private Png() {}

    /** The machine has no fonts, or not the libraries to read them, so no text can be drawn as dots. */
    public static final class NoFonts extends RuntimeException {
        private static final long serialVersionUID = 1L;

        public NoFonts(Throwable cause) {
            super("no fonts: " + PACKAGES + " are missing", cause);
        }
    }

    /** Other pictures take all the memory there is for them. */
    public static final class NoRoom extends RuntimeException {
        private static final long serialVersionUID = 1L;

        public NoRoom() {
            super("no memory left for another picture");
        }
    }

    /**
     * Draws a picture of a given width.
     *
     * @param widthPx in dots; less is taken where the picture would become too large
     * @throws NoFonts if the machine has none
     * @throws NoRoom if other pictures take all the memory there is for them
     */
    public static byte[] ofWidth(Svg picture, double widthPx) {
        return of(picture, widthPx / picture.widthPx());
    }

    /**
     * Draws a picture.
     *
     * @param scale dots per pixel of the picture; less is taken where the picture would become too large
     * @return a PNG file
     * @throws NoFonts if the machine has none
     * @throws NoRoom if other pictures take all the memory there is for them
     */
    public static byte[] of(Svg picture, double scale) {
        double dots = picture.widthPx() * picture.heightPx() * scale * scale;
        double factor = dots > MOST_DOTS ? scale * Math.sqrt(MOST_DOTS / dots) : scale;
        int width = (int) Math.ceil(picture.widthPx() * factor - ROUNDING);
        int height = (int) Math.ceil(picture.heightPx() * factor - ROUNDING);
        int room = Math.min(ROOM, 1 + (int) ((double) width * height / 1000));
        takeRoom(room);
        try {
            return drawn(picture.bytes(), width, height);
        } catch (LinkageError | InternalError e) {
            // The JDK reports missing fonts and missing font libraries as errors, not as exceptions.
            if (isOfFonts(e)) {
                throw new NoFonts(e);
            }
            throw e;
        } catch (IOException e) {
            throw new IllegalStateException("a picture could not be written into memory", e);
        } finally {
            FREE.release(room);
        }
    }

    private static void takeRoom(int room) {
        try {
            if (!FREE.tryAcquire(room, WAIT_MS, TimeUnit.MILLISECONDS)) {
                throw new NoRoom();
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new NoRoom();
        }
    }

    /**
     * Whether an error comes from the JDK's search for fonts: it was thrown there, or names a class of it that failed to
     * begin when it was first needed.
     */
    static boolean isOfFonts(Throwable error) {
        for (Throwable cause = error; cause != null; cause = cause.getCause()) {
            boolean named = FONT_CODE.stream().anyMatch(String.valueOf(cause.getMessage())::contains);
            if (named
                    || Arrays.stream(cause.getStackTrace())
                            .anyMatch(frame -> FONT_CODE.stream().anyMatch(frame.getClassName()::startsWith))) {
                return true;
            }
        }
        return false;
    }

    private static byte[] drawn(byte[] svg, int width, int height) throws IOException {
        SVGDocument document = new SVGLoader().load(new ByteArrayInputStream(svg), null, CONTEXT);
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
        // Handed the stream itself, the JDK would write by way of a file, and not every machine lets the service have
        // one.
        try (ImageOutputStream png = new MemoryCacheImageOutputStream(out)) {
            if (!ImageIO.write(image, "png", png)) {
                throw new IllegalStateException("the JDK has no PNG writer");
            }
        }
        return out.toByteArray();
    }
}
