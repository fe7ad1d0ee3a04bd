package loomwright.service.plan;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Supplier;
import loomwright.answer.Answer;
import loomwright.answer.Basis;
import loomwright.answer.Progress;
import loomwright.backfeed.BackfeedAnswer;
import loomwright.backfeed.BackfeedLimits;
import loomwright.backfeed.BackfeedOptions;
import loomwright.circuit.Plan;
import loomwright.circuit.Plans;
import loomwright.drawing.diagram.Diagram;
import loomwright.drawing.diagram.DiagramOptions;
import loomwright.drawing.diagram.DrawingSvg;
import loomwright.drawing.sheet.PrintedSheet;
import loomwright.drawing.sheet.SheetQuestion;
import loomwright.message.Untranslated;
import loomwright.mistakes.MistakesAnswer;
import loomwright.mistakes.MistakesOptions;
import loomwright.network.NetworkLimits;
import loomwright.operation.PlanAnswer;
import loomwright.operation.Step;
import loomwright.readings.ReadingsAnswer;
import loomwright.readings.ReadingsOptions;
import loomwright.review.PlanReview;
import org.junit.jupiter.api.Test;

/** Posts, sheets and pictures in a language that puts every text of the catalogue in brackets: nothing else is written. */
class PseudoLanguageTest {
    private static final Plan PLAN = Plans.example("sandpiper-unguarded-bypass");
    private static final Progress UNTOLD = (done, of) -> {};

    /** What is not of the catalogue, by surface: in a solution the node of the chassis has that name in the contract too. */
    private static final Map<String, Set<String>> QUOTED = Map.of("solution", Set.of("chassis"));

    @Test
    void everyTextOfPostsSheetsAndPicturesIsOfTheCatalogue() throws JsonProcessingException {
        String given = new JsonMapper().writeValueAsString(PLAN);
        Map<String, Set<String>> found = new TreeMap<>();
        for (Map.Entry<String, Supplier<String>> surface : surfaces().entrySet()) {
            Set<String> words = Untranslated.words(surface.getValue(), given);
            words.removeAll(QUOTED.getOrDefault(surface.getKey(), Set.of()));
            if (!words.isEmpty()) {
                found.put(surface.getKey(), words);
            }
        }
        assertThat(found).isEmpty();
    }

    private static Map<String, Supplier<String>> surfaces() {
        BackfeedLimits limits = BackfeedLimits.defaults();
        NetworkLimits network = NetworkLimits.defaults();
        Map<String, Supplier<String>> surfaces = new LinkedHashMap<>();
        surfaces.put("solution", () -> PlanPosts.readings(plain(PlanAnswer.of(PLAN, network))));
        surfaces.put(
                "backfeed",
                () -> PlanPosts.backfeed(
                        plain(BackfeedAnswer.of(PLAN, BackfeedOptions.USUAL, limits, network, UNTOLD))));
        surfaces.put("review", () -> PlanPosts.review(plain(PlanReview.of(PLAN, limits, network, UNTOLD))));
        surfaces.put(
                "mistakes",
                () -> PlanPosts.mistakes(plain(MistakesAnswer.of(PLAN, MistakesOptions.USUAL, network, UNTOLD))));
        surfaces.put(
                "readings",
                () -> ReadingsTables.markdown(
                        plain(ReadingsAnswer.of(ReadingsOptions.USUAL.of(PLAN), network, UNTOLD))));
        for (SheetQuestion.Document document : SheetQuestion.Document.values()) {
            surfaces.put(
                    "sheet " + document,
                    () -> PrintedSheet.page(PrintedSheet.of(
                            new SheetQuestion(null, PLAN, null, Step.RUN, document), limits, network, UNTOLD)));
        }
        surfaces.put(
                "diagram",
                () -> new String(
                        DrawingSvg.of(Diagram.of(PLAN, DiagramOptions.USUAL, limits, network, UNTOLD), "picture")
                                .bytes(),
                        StandardCharsets.UTF_8));
        return surfaces;
    }

    /** Without its sources, which are quoted. */
    private static <R> Answer<R> plain(Answer<R> answer) {
        return new Answer<>(answer.result(), answer.working(), List.<Basis>of(), answer.cautions());
    }
}
