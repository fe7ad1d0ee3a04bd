package loomwright.service;

import static loomwright.service.Endpoint.get;
import static loomwright.service.Endpoint.post;

import java.io.IOException;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import loomwright.backfeed.BackfeedAnswer;
import loomwright.circuit.Plan;
import loomwright.conductor.ConductorSizing;
import loomwright.conductor.Conductors;
import loomwright.conductor.FuseChoice;
import loomwright.conductor.VoltageDrop;
import loomwright.ignition.ballast.BallastInput;
import loomwright.ignition.ballast.BallastResult;
import loomwright.ignition.ballast.ChoiceResult;
import loomwright.network.Reduction;
import loomwright.operation.PlanAnswer;
import loomwright.review.PlanReview;
import loomwright.review.comparison.ComparisonAnswer;
import loomwright.review.comparison.ComparisonQuestion;
import loomwright.review.mistakes.MistakesAnswer;
import loomwright.review.mistakes.MistakesLimits;
import loomwright.service.conductor.ConductorListQuestion;
import loomwright.service.conductor.ConductorQuestion;
import loomwright.service.conductor.TableListQuestion;
import loomwright.service.conductor.TableQuestion;
import loomwright.service.conductor.WireForms;
import loomwright.service.ignition.BallastQuestion;
import loomwright.service.ignition.ChangeQuestion;
import loomwright.service.ignition.ChoiceQuestion;
import loomwright.service.ignition.SparkQuestion;
import loomwright.service.ignition.SparkReport;
import loomwright.service.network.NetworkQuestion;
import loomwright.service.network.NetworkReport;
import loomwright.service.network.ResistanceQuestion;
import loomwright.service.plan.ComparisonTables;
import loomwright.service.plan.PlanTables;

/**
 * Every operation of the contract, each on one line, by topic. A test compares this table with {@code openapi.yaml}.
 */
final class Routes {
    private Routes() {}

    static List<Endpoint> table(Contract contract, CalculationLimits limits) {
        Examples examples = Examples.load();
        return Stream.of(
                        service(contract),
                        examples(examples),
                        plans(limits),
                        diagrams(limits, examples),
                        networks(limits),
                        conductors(),
                        ignition())
                .flatMap(List::stream)
                .toList();
    }

    private static List<Endpoint> service(Contract contract) {
        return List.of(
                get("/health", "getHealth", request -> health(request, contract)),
                get("/openapi.yaml", "getContract", request -> contractText(request, contract)),
                get("/docs", "getDocumentation", Documentation::page),
                get("/docs/{file}", "getDocumentationFile", Documentation::file));
    }

    private static List<Endpoint> examples(Examples examples) {
        return List.of(
                get("/v1/examples", "listExamples", examples::listing),
                get("/v1/examples/{name}", "getExample", examples::one));
    }

    private static List<Endpoint> plans(CalculationLimits limits) {
        return List.of(
                post(
                        "/v1/plans/solution",
                        "solvePlan",
                        Calculation.of(Plan.class, plan -> PlanAnswer.of(plan, limits.network()))
                                .in(faces -> faces.table(PlanTables::readings))),
                post(
                        "/v1/plans/backfeed",
                        "findBackfeed",
                        Calculation.of(Plan.class, plan -> BackfeedAnswer.of(plan, limits.backfeed(), limits.network()))
                                .in(faces -> faces.table(PlanTables::backfeed))),
                post(
                        "/v1/plans/mistakes",
                        "listMistakes",
                        Calculation.of(
                                        Plan.class,
                                        plan -> MistakesAnswer.of(plan, MistakesLimits.defaults(), limits.network()))
                                .in(faces -> faces.table(PlanTables::mistakes))),
                post(
                        "/v1/plans/review",
                        "reviewPlan",
                        Calculation.of(Plan.class, plan -> PlanReview.of(plan, limits.backfeed(), limits.network()))
                                .in(faces -> faces.table(PlanTables::review))),
                post(
                        "/v1/plans/comparison",
                        "comparePlans",
                        Calculation.of(
                                        ComparisonQuestion.class,
                                        question -> ComparisonAnswer.of(question, limits.backfeed(), limits.network()))
                                .in(faces -> faces.table(ComparisonTables::table)
                                        .text(Face.MARKDOWN, ComparisonTables::markdown))));
    }

    private static List<Endpoint> diagrams(CalculationLimits limits, Examples examples) {
        Diagrams diagrams = new Diagrams(limits, examples);
        return List.of(
                post("/v1/plans/diagram", "drawPlan", diagrams::ofPlan),
                post("/v1/plans/comparison/diagram", "drawComparison", diagrams::ofTwo),
                get("/v1/examples/{name}/diagram", "drawExample", diagrams::ofExample));
    }

    private static List<Endpoint> networks(CalculationLimits limits) {
        Calculation<ResistanceQuestion, Reduction> resistance = Calculation.of(
                        ResistanceQuestion.class, ResistanceQuestion::answer)
                .in(faces -> faces.figure(Reduction::totalOhm).table(ResistanceQuestion::table));
        return List.of(
                get("/v1/resistance", "getResistance", resistance),
                post("/v1/resistance", "postResistance", resistance),
                post(
                        "/v1/networks/solution",
                        "solveNetwork",
                        Calculation.of(NetworkQuestion.class, question -> question.answer(limits.network()))
                                .in(faces -> faces.table(NetworkReport::table))));
    }

    private static List<Endpoint> conductors() {
        Calculation<VoltageDrop.Input, VoltageDrop.Result> drop = Calculation.of(
                        VoltageDrop.Input.class, VoltageDrop::calculate)
                .in(faces -> faces.figure(VoltageDrop.Result::totalV).table(WireForms::table));
        Calculation<ConductorSizing.Input, ConductorSizing.Result> sizing = Calculation.of(
                        ConductorSizing.Input.class, ConductorSizing::size)
                .in(faces ->
                        faces.figure(WireForms::areaMm2, WireForms::whyNone).table(WireForms::table));
        Calculation<FuseChoice.Input, FuseChoice.Result> fuse = Calculation.of(
                        FuseChoice.Input.class, FuseChoice::choose)
                .in(faces -> faces.figure(WireForms::ratingA, FuseChoice.Result::reason)
                        .table(WireForms::table));
        return List.of(
                get("/v1/voltage-drop", "getVoltageDrop", drop),
                post("/v1/voltage-drop", "postVoltageDrop", drop),
                get("/v1/conductor-size", "getConductorSize", sizing),
                post("/v1/conductor-size", "postConductorSize", sizing),
                get("/v1/fuse", "getFuse", fuse),
                post("/v1/fuse", "postFuse", fuse),
                get(
                        "/v1/conductors",
                        "listConductors",
                        Calculation.of(ConductorListQuestion.class, ConductorListQuestion::answer)
                                .in(faces -> faces.table(ConductorListQuestion::table))),
                get(
                        "/v1/conductors/{size}",
                        "getConductor",
                        Calculation.of(ConductorQuestion.class, ConductorQuestion::answer)
                                .in(faces -> faces.figure(Conductors.Description::ohmPerM)
                                        .table(ConductorQuestion::table))),
                get(
                        "/v1/tables",
                        "listTables",
                        Calculation.of(TableListQuestion.class, TableListQuestion::answer)
                                .in(faces -> faces.table(TableListQuestion::table))),
                get(
                        "/v1/tables/{name}",
                        "getTable",
                        Calculation.of(TableQuestion.class, TableQuestion::answer)
                                .in(faces -> faces.table(TableQuestion::table))));
    }

    private static List<Endpoint> ignition() {
        Calculation<BallastInput, BallastResult> ballast = Calculation.of(BallastInput.class, BallastQuestion::answer)
                .in(faces -> faces.figure(BallastResult::coilKeyOnV).table(BallastQuestion::table));
        Calculation<ChoiceQuestion, ChoiceResult> choice = Calculation.of(ChoiceQuestion.class, ChoiceQuestion::answer)
                .in(faces -> faces.figure(ChoiceQuestion::figure, ChoiceQuestion::whyNone)
                        .table(ChoiceQuestion::table));
        Calculation<SparkQuestion, SparkReport> spark = Calculation.of(SparkQuestion.class, SparkQuestion::answer)
                .in(faces -> faces.figure(SparkReport::marginKv).table(SparkReport::table));
        return List.of(
                get("/v1/ballast", "getBallast", ballast),
                post("/v1/ballast", "postBallast", ballast),
                get("/v1/ballast-choice", "getBallastChoice", choice),
                post("/v1/ballast-choice", "postBallastChoice", choice),
                get("/v1/spark", "getSpark", spark),
                post("/v1/spark", "postSpark", spark),
                post(
                        "/v1/ignition-change",
                        "compareIgnitions",
                        Calculation.of(ChangeQuestion.class, ChangeQuestion::answer)
                                .in(faces -> faces.table(ChangeQuestion.Report::table))));
    }

    /** What a load balancer asks for. */
    record Health(String status, String version) {}

    private static Reply health(Request request, Contract contract) throws IOException {
        request.checkAccepts(Json.MEDIA_TYPE);
        return Reply.of(Json.MEDIA_TYPE, request.json().write(new Health("ok", contract.version())))
                .withHeaders(Map.of("Cache-Control", "no-store"));
    }

    private static Reply contractText(Request request, Contract contract) {
        request.checkAccepts("application/yaml");
        return Reply.of("application/yaml", contract.text());
    }
}
