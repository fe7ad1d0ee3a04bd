package loomwright.service.stream;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.function.UnaryOperator;
import loomwright.answer.Answer;
import loomwright.answer.Progress;
import loomwright.bulk.Line;
import loomwright.bulk.LineAnswer;
import loomwright.circuit.Plan;
import loomwright.service.LiveService;
import loomwright.service.endpoint.Calculation;
import loomwright.service.http.Request;
import loomwright.service.limits.Options;
import org.junit.jupiter.api.Test;

/** Lines of one run that ask the same are calculated once. */
class LineWorkTest {
    private static final JsonMapper MAPPER = new JsonMapper();
    private static final Request.Reading READING = Request.Reading.of(LiveService.CONTRACT, Options.DEFAULT);

    private final List<String> calculated = new ArrayList<>();
    private final LineWork work = new LineWork(
            Calculation.of(Plan.class, plan -> {
                        calculated.add(plan.name());
                        return new Answer<>(plan.wires().size(), List.of(), List.of(), List.of());
                    })
                    .cachedBy(Plan::circuit, (wires, plan) -> wires),
            new JsonLines(
                    Objects.requireNonNull(
                            LiveService.CONTRACT.operation("solvePlan").body()),
                    READING),
            new JsonLineForm(READING.json(), JsonLineForm.From.REQUEST),
            READING,
            "run");

    private LineAnswer ask(String name, UnaryOperator<ObjectNode> change) throws IOException {
        ObjectNode plan = (ObjectNode) MAPPER.readTree(
                LiveService.ask().get("/v1/examples/sandpiper-as-built").asString());
        plan.put("name", name);
        byte[] text = change.apply(plan).toString().getBytes(StandardCharsets.UTF_8);
        LineAnswer answer = work.apply(Line.of(1, text), Progress.UNWATCHED);
        assertThat(answer.isProblem()).isFalse();
        return answer;
    }

    private static UnaryOperator<ObjectNode> firstWireM(double lengthM) {
        return plan -> {
            ((ObjectNode) plan.path("wires").path(0)).put("lengthM", lengthM);
            return plan;
        };
    }

    @Test
    void carsThatDifferInNameAndNotesAreCalculatedOnce() throws IOException {
        ask("first", UnaryOperator.identity());
        ask("second", plan -> plan.putPOJO("notes", List.of("tow bar")));
        ask("third", UnaryOperator.identity());

        assertThat(calculated).containsExactly("first");
    }

    @Test
    void oneOtherLengthOfAWireIsAnotherCircuit() throws IOException {
        ask("short", firstWireM(0.5));
        ask("long", firstWireM(0.6));

        assertThat(calculated).containsExactly("short", "long");
    }

    @Test
    void onlyTheLatestAreKept() throws IOException {
        ask("first", firstWireM(1));
        for (int i = 1; i <= 100; i++) {
            ask("other " + i, firstWireM(1 + i / 100.0));
        }
        ask("first again", firstWireM(1));
        ask("other 100 again", firstWireM(2));

        assertThat(calculated).endsWith("other 100", "first again");
    }
}
