package loomwright.service.endpoint;

import java.io.IOException;
import java.util.List;
import java.util.function.Supplier;
import loomwright.answer.Answer;
import loomwright.answer.Deadline;
import loomwright.answer.Progress;
import loomwright.answer.RejectedInput;
import loomwright.circuit.Plan;
import loomwright.comparison.ComparisonQuestion;
import loomwright.drawing.Png;
import loomwright.drawing.Svg;
import loomwright.drawing.diagram.Diagram;
import loomwright.drawing.diagram.DiagramOptions;
import loomwright.drawing.diagram.Drawing;
import loomwright.drawing.diagram.DrawingSvg;
import loomwright.service.http.Reply;
import loomwright.service.http.Representation;
import loomwright.service.http.Representations;
import loomwright.service.http.Request;
import loomwright.service.input.Json;
import loomwright.service.limits.CalculationLimits;
import loomwright.service.page.Examples;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Pictures of plans: what to draw stands in the body or is an example, how to draw it in the query. */
public final class Diagrams {
    private static final Logger LOG = LoggerFactory.getLogger(Diagrams.class);

    private static final Representations<DiagramOptions, Drawing> FACES =
            Representations.<DiagramOptions, Drawing>none()
                    .picture(answer -> DrawingSvg.of(answer.result(), "diagram"));

    private final CalculationLimits limits;
    private final Examples examples;

    public Diagrams(CalculationLimits limits, Examples examples) {
        this.limits = limits;
        this.examples = examples;
    }

    public Reply ofPlan(Request request) throws IOException {
        Representation face = FACES.choose(request);
        Plan plan = request.read(Plan.class);
        DiagramOptions options = request.readOptions(DiagramOptions.class);
        return reply(
                request, face, options, () -> Diagram.of(plan, options, limits.backfeed(), limits.network(), time()));
    }

    public Reply ofExample(Request request) throws IOException {
        Representation face = FACES.choose(request);
        Plan plan = examples.plan(request.path("name"), request.json());
        DiagramOptions options = request.readOptions(DiagramOptions.class);
        return reply(
                request, face, options, () -> Diagram.of(plan, options, limits.backfeed(), limits.network(), time()));
    }

    public Reply ofTwo(Request request) throws IOException {
        Representation face = FACES.choose(request);
        ComparisonQuestion question = request.read(ComparisonQuestion.class);
        DiagramOptions options = request.readOptions(DiagramOptions.class);
        return reply(
                request,
                face,
                options,
                () -> Diagram.compare(question, options, limits.backfeed(), limits.network(), time()));
    }

    /** Draws an example, so that the first caller need not wait for all that a first drawing loads; says if PNG fails. */
    public void warmUp(Json json) throws IOException {
        Plan plan = examples.plan(examples.list().get(0).name(), json);
        Svg picture = DrawingSvg.of(
                Diagram.of(plan, DiagramOptions.USUAL, limits.backfeed(), limits.network(), Progress.UNWATCHED),
                "warm-up");
        try {
            Png.of(picture, 1);
        } catch (Png.NoFonts noFonts) {
            LOG.warn("no pictures as PNG: {}", noFonts.getMessage());
        }
    }

    private Progress time() {
        return new Deadline(limits.timeMs(), Progress.UNWATCHED);
    }

    private static Reply reply(Request request, Representation face, DiagramOptions options, Supplier<Drawing> drawing)
            throws IOException {
        try {
            return FACES.write(
                    face, options, new Answer<>(drawing.get(), List.of(), List.of(), List.of()), request.json());
        } catch (RejectedInput rejected) {
            throw request.refusal(rejected);
        }
    }
}
