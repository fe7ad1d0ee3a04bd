package loomwright.service.endpoint;

import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.io.IOException;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import loomwright.answer.Answer;
import loomwright.answer.Deadline;
import loomwright.answer.Progress;
import loomwright.answer.RejectedInput;
import loomwright.circuit.Plan;
import loomwright.circuit.PlanCautions;
import loomwright.comparison.ComparisonQuestion;
import loomwright.drawing.Png;
import loomwright.drawing.Svg;
import loomwright.drawing.diagram.Diagram;
import loomwright.drawing.diagram.DiagramOptions;
import loomwright.drawing.diagram.DiagramReport;
import loomwright.drawing.diagram.DrawingSvg;
import loomwright.drawing.diagram.StepDrawings;
import loomwright.service.http.Reply;
import loomwright.service.http.Representation;
import loomwright.service.http.Representations;
import loomwright.service.http.Request;
import loomwright.service.input.Json;
import loomwright.service.input.ListInput;
import loomwright.service.limits.CalculationLimits;
import loomwright.service.page.Examples;
import loomwright.service.plan.PlanSolution;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Pictures of plans: what to draw stands in the body or is an example, how to draw it in the query. */
public final class Diagrams {
    private static final Logger LOG = LoggerFactory.getLogger(Diagrams.class);

    private static final String ID = "diagram";

    /** Width of a picture in a forum post or on a telephone. */
    private static final double POST_PX = 1000;

    /** Two dots for each pixel: sharp on a close screen. */
    private static final double SCREEN_SCALE = 2;

    /** 300 dots per inch where a pixel is a 96th of an inch. */
    private static final double PRINT_SCALE = 300.0 / 96;

    private static final Representations<DiagramOptions, StepDrawings> FACES =
            Representations.<DiagramOptions, StepDrawings>none()
                    .with(
                            Representation.SVG,
                            (options, answer, json) ->
                                    DrawingSvg.of(answer.result(), ID).bytes())
                    .with(Representation.PNG, (options, answer, json) -> png(answer.result(), options.size()))
                    .with(Representation.JSON, (options, answer, json) -> json.write(forPage(options, answer)));

    private final CalculationLimits limits;
    private final Examples examples;

    public Diagrams(CalculationLimits limits, Examples examples) {
        this.limits = limits;
        this.examples = examples;
    }

    /**
     * A diagram in JSON.
     *
     * @param figures what it shows, in all steps; absent unless asked for
     */
    record DiagramForPage(
            @JsonUnwrapped DiagramReport diagram, @Nullable PlanSolution figures) {}

    private static Answer<DiagramForPage> forPage(DiagramOptions options, Answer<StepDrawings> answer) {
        StepDrawings drawn = answer.result();
        PlanSolution figures = options.figures() ? PlanSolution.inFull(drawn.readings()) : null;
        return new Answer<>(new DiagramForPage(drawn.report(ID), figures), List.of(), List.of(), answer.cautions());
    }

    public Reply ofPlan(Request request) throws IOException {
        Representation face = FACES.choose(request);
        Plan plan = request.read(Plan.class);
        return ofPlan(request, face, plan);
    }

    public Reply ofExample(Request request) throws IOException {
        Representation face = FACES.choose(request);
        return ofPlan(request, face, examples.plan(request.path("name"), request.json()));
    }

    private Reply ofPlan(Request request, Representation face, Plan plan) throws IOException {
        DiagramOptions options = options(request, face);
        return reply(
                request,
                face,
                options,
                plan,
                () -> Diagram.of(plan, options, limits.backfeed(), limits.network(), time()));
    }

    public Reply ofTwo(Request request) throws IOException {
        Representation face = FACES.choose(request);
        ComparisonQuestion question = request.read(ComparisonQuestion.class);
        DiagramOptions options = options(request, face);
        return reply(
                request,
                face,
                options,
                question.after(),
                () -> Diagram.compare(question, options, limits.backfeed(), limits.network(), time()));
    }

    /** The answer in JSON is for a page that turns the key, so it has all steps; a picture of dots has one. */
    private static DiagramOptions options(Request request, Representation face) {
        DiagramOptions options = request.readOptions(DiagramOptions.class);
        return face == Representation.JSON
                ? options.with(true)
                : face == Representation.PNG ? options.with(false) : options;
    }

    private static byte[] png(StepDrawings drawn, DiagramOptions.Size size) {
        Svg picture = DrawingSvg.of(drawn, ID);
        return switch (size) {
            case POST -> Png.ofWidth(picture, POST_PX);
            case SCREEN -> Png.of(picture, SCREEN_SCALE);
            case PRINT -> Png.of(picture, PRINT_SCALE);
        };
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

    private static Reply reply(
            Request request, Representation face, DiagramOptions options, Plan plan, Supplier<StepDrawings> drawing)
            throws IOException {
        try {
            Answer<StepDrawings> answer = new Answer<>(drawing.get(), List.of(), List.of(), PlanCautions.of(plan));
            Optional<ListInput> list = request.list();
            return list.isPresent() && face == Representation.JSON
                    ? Reply.of(
                                    face.contentType(),
                                    request.json().write(list.get().answered(forPage(options, answer))))
                            .withHeaders(Map.of("Vary", "Accept"))
                    : FACES.write(face, options, answer, request.json());
        } catch (RejectedInput rejected) {
            throw request.refusal(rejected);
        }
    }
}
