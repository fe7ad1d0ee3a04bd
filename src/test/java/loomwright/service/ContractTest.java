package loomwright.service;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import io.swagger.v3.oas.models.OpenAPI;
import io.swagger.v3.parser.OpenAPIV3Parser;
import io.swagger.v3.parser.core.models.ParseOptions;
import io.swagger.v3.parser.core.models.SwaggerParseResult;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import java.util.stream.Stream;
import loomwright.answer.Basis;
import loomwright.answer.Caution;
import loomwright.answer.InputError;
import loomwright.backfeed.BackfeedLimits;
import loomwright.backfeed.BackfeedReport;
import loomwright.circuit.fault.SingleFault;
import loomwright.comparison.PlanComparison;
import loomwright.diagnosis.DiagnosisReport;
import loomwright.expression.NetworkReduction;
import loomwright.expression.Reduction;
import loomwright.expression.ResistanceExpression;
import loomwright.ignition.ballast.BallastResult;
import loomwright.ignition.ballast.FeedState;
import loomwright.ignition.change.ChangeInput;
import loomwright.ignition.gap.BreakdownFormula;
import loomwright.ignition.primary.CoilData;
import loomwright.ignition.primary.CoilPreset;
import loomwright.ignition.primary.Firing;
import loomwright.ignition.spark.SwitchInput;
import loomwright.judgement.ignition.IgnitionAdvice;
import loomwright.judgement.ignition.IgnitionMistake;
import loomwright.mistakes.MistakesReport;
import loomwright.network.NetworkFinding;
import loomwright.network.NetworkLimits;
import loomwright.operation.Quantity;
import loomwright.readings.ReadingsSheet;
import loomwright.review.context.FindingCode;
import loomwright.service.endpoint.Monitoring;
import loomwright.service.form.EnumWords;
import loomwright.service.form.TruncatedMarkdown;
import loomwright.service.http.Representation;
import loomwright.service.input.Contract.Operation;
import loomwright.service.input.ContractErrors;
import loomwright.service.limits.CalculationLimits;
import loomwright.service.limits.ServiceLimits;
import loomwright.service.problem.ProblemType;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** The contract is sound, and says the same as the code: routes, words, limits. */
class ContractTest {
    private static final JsonNode DOCUMENT = LiveService.CONTRACT.document();

    @Test
    void theParserHasNothingToSay() {
        ParseOptions options = new ParseOptions();
        options.setResolve(true);
        SwaggerParseResult result = new OpenAPIV3Parser().readLocation("openapi.yaml", null, options);
        assertThat(result.getMessages()).isEmpty();
        OpenAPI parsed = result.getOpenAPI();
        assertThat(parsed.getPaths().keySet())
                .containsExactlyInAnyOrderElementsOf(LiveService.CONTRACT.operations().stream()
                        .map(Operation::path)
                        .distinct()
                        .toList());
    }

    @Test
    void everyRouteIsInTheContractAndEveryOperationHasARoute() {
        List<String> routes = Routes.table(LiveService.CONTRACT, CalculationLimits.DEFAULT, Monitoring.fresh()).stream()
                .map(route -> route.method() + " " + route.path() + " " + route.operationId())
                .toList();
        List<String> operations = LiveService.CONTRACT.operations().stream()
                .map(operation -> operation.method() + " " + operation.path() + " " + operation.id())
                .toList();
        assertThat(routes).containsExactlyInAnyOrderElementsOf(operations);
    }

    @TestFactory
    Stream<DynamicTest> everyOperationIsDescribed() {
        return ContractExamples.all().stream()
                .map(example -> DynamicTest.dynamicTest(example.toString(), () -> {
                    JsonNode node = example.node();
                    assertThat(node.path("summary").asText()).isNotBlank();
                    assertThat(node.path("description").asText()).isNotBlank();
                    assertThat(node.path("tags")).hasSize(1);
                    assertThat(node.path("responses").has("400")).isTrue();
                }));
    }

    @Test
    void everyErrorResponseHasAnExampleThatFollowsItsSchema() {
        DOCUMENT.at("/components/responses").forEachEntry((name, response) -> {
            JsonNode content = response.at("/content/application~1problem+json");
            if (content.isMissingNode() || content.has("examples")) {
                return; // no error, or one that ExamplesTest asks for
            }
            assertThat(new ContractErrors(LiveService.CONTRACT)
                            .of(LiveService.CONTRACT.schema("/components/schemas/Problem"), content.path("example")))
                    .as(name)
                    .isEmpty();
            assertThat(Arrays.stream(ProblemType.values()).map(type -> type.uri() + type.title() + type.status()))
                    .as(name)
                    .contains(content.at("/example/type").asText()
                            + content.at("/example/title").asText()
                            + content.at("/example/status").asText());
        });
    }

    @Test
    void theWordsOfTheContractAreThoseOfTheCode() {
        assertThat(words("/components/schemas/Problem/properties/type"))
                .isEqualTo(all(ProblemType.values(), ProblemType::uri));
        assertThat(words("/components/schemas/ProblemEntry/properties/code"))
                .isEqualTo(all(InputError.Code.values(), EnumWords::of));
        assertThat(words("/components/schemas/Caution/properties/code"))
                .isEqualTo(all(Caution.values(), EnumWords::of));
        assertThat(words("/components/schemas/SingleFaultKind"))
                .isEqualTo(all(SingleFault.Kind.values(), EnumWords::of));
        assertThat(words("/components/schemas/DiagnosisReport/properties/verdict"))
                .isEqualTo(all(DiagnosisReport.Verdict.values(), EnumWords::of));
        assertThat(words("/components/schemas/NextReading/properties/quantity"))
                .isEqualTo(all(Quantity.values(), EnumWords::of));
        assertThat(words("/components/schemas/MistakeNotice/properties/effect"))
                .isEqualTo(all(MistakesReport.Effect.values(), EnumWords::of));
        assertThat(words("/components/schemas/MistakeOverload/properties/kind"))
                .isEqualTo(all(MistakesReport.Limit.values(), EnumWords::of));
        assertThat(words("/components/schemas/Basis/properties/status"))
                .isEqualTo(all(Basis.Status.values(), EnumWords::of));
        assertThat(words("/components/schemas/NetworkFinding/properties/code"))
                .isEqualTo(all(NetworkFinding.Kind.values(), EnumWords::of));
        assertThat(words("/components/schemas/ReductionStep/properties/rule"))
                .isEqualTo(all(Reduction.Rule.values(), EnumWords::of));
        assertThat(words("/components/schemas/Equivalent/properties/method"))
                .isEqualTo(all(NetworkReduction.Method.values(), EnumWords::of));
        assertThat(words("/components/schemas/ItemChange/properties/changes/items"))
                .isEqualTo(all(PlanComparison.Change.values(), EnumWords::of));
        assertThat(words("/components/schemas/ItemChange/properties/item"))
                .isEqualTo(all(PlanComparison.Item.values(), EnumWords::of));
        assertThat(words("/components/schemas/ReadingChange/properties/quantity"))
                .isEqualTo(all(PlanComparison.Quantity.values(), EnumWords::of));
        assertThat(words("/components/schemas/Leftover/properties/code"))
                .isEqualTo(all(PlanComparison.Leftover.Kind.values(), EnumWords::of));
        assertThat(words("/components/schemas/ExpectedReading/properties/purpose"))
                .isEqualTo(all(ReadingsSheet.Purpose.values(), EnumWords::of));
        assertThat(words("/components/schemas/ExpectedReading/properties/shows"))
                .isEqualTo(all(ReadingsSheet.Shows.values(), EnumWords::of));
        assertThat(words("/components/schemas/ExpectedReading/properties/quantity"))
                .isEqualTo(all(Quantity.values(), EnumWords::of));
        assertThat(words("/components/schemas/CoilKind")).isEqualTo(all(CoilPreset.values(), EnumWords::of));
        assertThat(words("/components/schemas/CoilMeantFor")).isEqualTo(all(CoilData.Feed.values(), EnumWords::of));
        assertThat(words("/components/schemas/SwitchedBy")).isEqualTo(all(SwitchInput.Kind.values(), EnumWords::of));
        assertThat(words("/components/schemas/DwellRule"))
                .isEqualTo(all(SwitchInput.DwellRule.values(), EnumWords::of));
        assertThat(words("/components/schemas/CoilArrangement"))
                .isEqualTo(all(Firing.Arrangement.values(), EnumWords::of));
        assertThat(words("/components/schemas/BreakdownFormula"))
                .isEqualTo(all(BreakdownFormula.values(), EnumWords::of));
        assertThat(words("/components/schemas/ChangeQuestion/properties/bypassFrom"))
                .isEqualTo(all(ChangeInput.BypassFrom.values(), EnumWords::of));
        assertThat(words("/components/schemas/ElementFault/properties/defect"))
                .isEqualTo(all(BallastResult.Defect.values(), EnumWords::of));
        assertThat(words("/components/schemas/WindowVerdict"))
                .isEqualTo(all(FeedState.Verdict.values(), EnumWords::of));
        assertThat(words("/components/schemas/ReviewFindingCode")).isEqualTo(reviewCodes());
        assertThat(words("/components/schemas/SneakClueKind"))
                .isEqualTo(all(BackfeedReport.Clue.Pattern.values(), EnumWords::of));
        assertThat(words("/components/parameters/Format/schema"))
                .isEqualTo(all(Representation.values(), Representation::word));
    }

    /** The review's own, and what the judge of ignitions finds but contacts, which the review has among all contacts. */
    private static List<String> reviewCodes() {
        return Stream.of(
                        Stream.of(FindingCode.values()).map(FindingCode::code),
                        Stream.of(IgnitionMistake.Kind.values())
                                .filter(kind -> kind != IgnitionMistake.Kind.CONTACT_OVERLOADED)
                                .map(IgnitionMistake.Kind::code),
                        Stream.of(IgnitionAdvice.KEY_NOT_TO_BE_LEFT_ON.code()))
                .flatMap(codes -> codes)
                .toList();
    }

    /** What is both asked with and answered has its words twice: closed where they are asked with, open in answers. */
    @Test
    void wordsOfAnswersAreThoseOfQuestions() {
        DOCUMENT.at("/components/schemas").forEachEntry((name, schema) -> {
            if (name.endsWith("InAnswer")) {
                assertThat(words("/components/schemas/" + name))
                        .as(name)
                        .isEqualTo(words("/components/schemas/" + name.replace("InAnswer", "")));
            }
        });
    }

    @Test
    void theLimitsOfTheContractAreThoseOfTheCode() {
        ServiceLimits limits = ServiceLimits.DEFAULT;
        String said = DOCUMENT.at("/info/description").asText().replaceAll("\\s+", " ");
        assertThat(said)
                .contains(number(limits.bodyBytes()) + " bytes, be nested "
                        + limits.json().nestingDepth() + " levels")
                .contains("texts of " + number(limits.json().stringChars()))
                .contains("names of " + number(limits.json().nameChars()))
                .contains("numbers of " + limits.json().numberChars())
                .contains(number(limits.json().tokens()) + " names, values and brackets")
                .contains("headers together may have " + number(limits.headBytes()) + " bytes");
        assertThat(DOCUMENT.at("/components/schemas/NetworkQuestion/properties/elements/maxItems")
                        .asInt())
                .isEqualTo(NetworkLimits.defaults().maxElements());
        assertThat(DOCUMENT.at("/components/parameters/MaxLength/schema/minimum")
                        .asInt())
                .isEqualTo(TruncatedMarkdown.SHORTEST);
        assertThat(DOCUMENT.at("/components/schemas/SeriesParallel/maxLength").asInt())
                .isEqualTo(ResistanceExpression.MAXIMUM_LENGTH);
        assertThat(DOCUMENT.at("/paths/~1v1~1networks~1solution/post/description")
                        .asText())
                .contains(number(NetworkLimits.defaults().maxNodes()) + " nodes");
        BackfeedLimits backfeed = BackfeedLimits.defaults();
        assertThat(DOCUMENT.at("/paths/~1v1~1plans~1backfeed/post/description").asText())
                .contains(number(backfeed.maxCombinations()) + " combinations")
                .contains("after " + backfeed.timeMs() / 1000 + " s");
    }

    private static String number(int value) {
        return String.format(Locale.ROOT, "%,d", value);
    }

    private static List<String> words(String schema) {
        List<String> words = new ArrayList<>();
        JsonNode node = DOCUMENT.at(schema);
        (node.has("enum") ? node.path("enum") : node.path("x-extensible-enum"))
                .forEach(word -> words.add(word.asText()));
        return words;
    }

    private static <T> List<String> all(T[] values, Function<T, String> word) {
        return Arrays.stream(values).map(word).toList();
    }
}
