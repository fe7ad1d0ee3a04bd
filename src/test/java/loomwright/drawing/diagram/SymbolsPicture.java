package loomwright.drawing.diagram;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import loomwright.answer.Progress;
import loomwright.circuit.Plan;
import loomwright.network.NetworkLimits;
import loomwright.operation.Step;

/** Makes docs/symbols.svg, the symbol of each kind of part: {@code main} writes it. */
final class SymbolsPicture {
    static final Path FILE = Path.of("docs", "symbols.svg");

    private SymbolsPicture() {}

    public static void main(String[] args) throws IOException {
        Files.writeString(FILE, text());
    }

    static String text() {
        Plan plan = D01_SymbolsTest.ONE_OF_EACH;
        DiagramOptions options = new DiagramOptions(
                Step.RUN,
                List.of(),
                DiagramOptions.LegendText.NONE,
                "Symbols of parts",
                null,
                null,
                null,
                null,
                null,
                null);
        return new String(
                        DrawingSvg.of(
                                        Diagram.of(
                                                plan,
                                                options,
                                                Drawn.LIMITS,
                                                NetworkLimits.defaults(),
                                                Progress.UNWATCHED),
                                        "symbols")
                                .bytes(),
                        StandardCharsets.UTF_8)
                + "\n";
    }
}
