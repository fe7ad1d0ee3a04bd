package loomwright.drawing;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import javax.imageio.ImageIO;
import loomwright.OtherJava;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Pictures as dots: 1 size and ink, 2 a machine without fonts. */
class PngTest {
    private static Svg picture(double widthPx, double heightPx) {
        return new Svg("p", widthPx, heightPx, "t", "d").text(5, 20, 14, "Ωhm");
    }

    @Test
    void textIsDrawnInTheSizeAskedFor() throws IOException {
        BufferedImage image = ImageIO.read(new ByteArrayInputStream(Png.of(picture(60, 30), 2)));
        assertThat(image.getWidth()).isEqualTo(120);
        assertThat(image.getHeight()).isEqualTo(60);
        long dark = 0;
        for (int i = 0; i < 120 * 60; i++) {
            dark += (image.getRGB(i % 120, i / 120) & 0xFF) < 128 ? 1 : 0;
        }
        // Three letters of 28 dots height; an empty picture has none, a black one 7200.
        assertThat(dark).isBetween(80L, 1000L);
    }

    @Test
    void aVeryLargePictureIsDrawnSmaller() throws IOException {
        BufferedImage image = ImageIO.read(new ByteArrayInputStream(Png.of(picture(8000, 5000), 2)));
        assertThat((long) image.getWidth() * image.getHeight()).isBetween(19_000_000L, 20_100_000L);
        assertThat((double) image.getWidth() / image.getHeight()).isBetween(1.59, 1.61);
    }

    /** In a process of its own: the JDK takes note of the folder at its start. */
    @Test
    void aPictureNeedsNoFileOfItsOwn(@TempDir Path empty) throws Exception {
        String said = OtherJava.said(
                OtherJava.of(List.of("-Djava.io.tmpdir=" + empty.resolve("no-such-folder")), Twice.class));
        assertThat(said).contains("drawn");
    }

    /** In a process of its own: the JDK looks for fonts once. */
    @Test
    void aMachineTwiceIsToldWhichPackagesItLacks(@TempDir Path empty) throws Exception {
        Path config = Files.writeString(empty.resolve("fonts.conf"), "<fontconfig></fontconfig>");
        ProcessBuilder builder = OtherJava.of(
                // Where the JDK remembers which fonts it found.
                List.of("-Djava.awt.headless=true", "-Duser.home=" + empty), Twice.class);
        builder.environment().put("FONTCONFIG_FILE", config.toString());
        String said = OtherJava.said(builder);
        assertThat(said).contains("fonts-dejavu-core").doesNotContain("drawn");
    }

    @Test
    void anErrorThatHasNothingToDoWithFontsIsNotPutDownToThem() {
        assertThat(Png.isOfFonts(new NoClassDefFoundError("com/github/weisj/jsvg/SVGDocument")))
                .isFalse();
        assertThat(Png.isOfFonts(new UnsatisfiedLinkError("no mlib_image in java.library.path")))
                .isFalse();
        assertThat(Png.isOfFonts(new InternalError("a fault of the machine"))).isFalse();
    }

    @Test
    void theSecondErrorOfAMissingFontLibraryNamesTheClassThatFailed() {
        assertThat(Png.isOfFonts(new NoClassDefFoundError("Could not initialize class sun.font.SunFontManager")))
                .isTrue();
    }

    /** Tries twice, as the JDK reports the second failure differently from the first. */
    static final class Twice {
        private Twice() {}

        public static void main(String[] args) {
            for (int i = 0; i < 2; i++) {
                try {
                    Png.of(picture(60, 30), 1);
                    System.out.println("drawn");
                } catch (Png.NoFonts noFonts) {
                    System.out.println(noFonts.getMessage());
                }
            }
        }
    }
}
