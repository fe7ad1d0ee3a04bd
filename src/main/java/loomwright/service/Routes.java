package loomwright.service;

import static loomwright.service.endpoint.Endpoint.get;
import static loomwright.service.endpoint.Endpoint.post;

import java.io.IOException;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import loomwright.backfeed.BackfeedAnswer;
import loomwright.backfeed.BackfeedOptions;
import loomwright.circuit.Plan;
import loomwright.comparison.ComparisonAnswer;
import loomwright.comparison.ComparisonQuestion;
import loomwright.diagnosis.DiagnosisAnswer;
import loomwright.diagnosis.DiagnosisLimits;
import loomwright.diagnosis.DiagnosisQuestion;
import loomwright.drawing.plot.DropPlot;
import loomwright.drawing.plot.FusePlot;
import loomwright.drawing.plot.SparkPlots;
import loomwright.drawing.sheet.PrintedSheet;
import loomwright.drawing.sheet.SheetQuestion;
import loomwright.expression.Reduction;
import loomwright.ignition.ballast.BallastInput;
import loomwright.ignition.ballast.BallastResult;
import loomwright.ignition.ballast.ChoiceResult;
import loomwright.mistakes.MistakesAnswer;
import loomwright.mistakes.MistakesOptions;
import loomwright.operation.PlanAnswer;
import loomwright.operation.SolutionOptions;
import loomwright.readings.ReadingsAnswer;
import loomwright.readings.ReadingsOptions;
import loomwright.review.PlanReview;
import loomwright.review.ReviewReport;
import loomwright.service.conductor.ConductorListQuestion;
import loomwright.service.conductor.ConductorQuestion;
import loomwright.service.conductor.TableListQuestion;
import loomwright.service.conductor.TableQuestion;
import loomwright.service.conductor.WireForms;
import loomwright.service.endpoint.Calculation;
import loomwright.service.endpoint.Diagrams;
import loomwright.service.endpoint.Endpoint;
import loomwright.service.endpoint.Monitoring;
import loomwright.service.endpoint.ReportedFindings;
import loomwright.service.http.Reply;
import loomwright.service.http.Representation;
import loomwright.service.http.Representations;
import loomwright.service.http.Request;
import loomwright.service.ignition.BallastQuestion;
import loomwright.service.ignition.ChangeQuestion;
import loomwright.service.ignition.ChoiceQuestion;
import loomwright.service.ignition.SparkQuestion;
import loomwright.service.ignition.SparkReport;
import loomwright.service.input.Contract;
import loomwright.service.input.Json;
import loomwright.service.limits.CalculationLimits;
import loomwright.service.network.NetworkQuestion;
import loomwright.service.network.NetworkReport;
import loomwright.service.network.ResistanceQuestion;
import loomwright.service.page.ExampleAnswers;
import loomwright.service.page.Examples;
import loomwright.service.page.Pages;
import loomwright.service.page.ProblemPages;
import loomwright.service.page.Reference;
import loomwright.service.page.Templates;
import loomwright.service.plan.ComparisonTables;
import loomwright.service.plan.DiagnosisTables;
import loomwright.service.plan.PartListQuestion;
import loomwright.service.plan.PlanConversion;
import loomwright.service.plan.PlanPosts;
import loomwright.service.plan.PlanSolution;
import loomwright.service.plan.PlanTables;
import loomwright.service.plan.ReadingsTables;
import loomwright.service.stream.Bulk;
import loomwright.service.stream.BulkOperations;
import loomwright.service.workshop.BenchForms;
import loomwright.sizing.CircuitSizing;
import loomwright.sizing.ConductorSizing;
import loomwright.sizing.DropOverLength;
import loomwright.sizing.FeedSizing;
import loomwright.sizing.FuseChoice;
import loomwright.sizing.FuseCurves;
import loomwright.sizing.VoltageDrop;
import loomwright.workshop.CoilChoice;
import loomwright.workshop.CoilPolarity;
import loomwright.workshop.Condenser;
import loomwright.workshop.CrankingTest;
import loomwright.workshop.PointsDwell;
import loomwright.workshop.ResistanceWire;
import loomwright.workshop.SeriesResistor;

/**
 * Every operation of the contract, each on one line, by topic. A test compares this table with {@code openapi.yaml}.
 */
final class Routes {
    private static final Templates TEMPLATES = Templates.load();

    private Routes() {}

    static List<Endpoint> table(Contract contract, CalculationLimits limits, Monitoring monitoring) {
        List<Endpoint> single = single(limits);
        Endpoint bulk = post(
                "/v1/bulk/{operation}",
                BulkOperations.ID,
                new Bulk(BulkOperations.of(contract, single), limits.bulk(), monitoring.metrics()));
        return Stream.of(about(contract, monitoring), single, List.of(bulk))
                .flatMap(List::stream)
                .toList();
    }

    /** Those that answer one question at a time. */
    static List<Endpoint> single(CalculationLimits limits) {
        Examples examples = Examples.load();
        return Stream.of(
                        examples(examples),
                        plans(limits),
                        diagrams(limits, examples),
                        networks(limits),
                        conductors(),
                        ignition(),
                        workshop())
                .flatMap(List::stream)
                .toList();
    }

    private static List<Endpoint> about(Contract contract, Monitoring monitoring) {
        return List.of(
                get("/health", "getHealth", request -> health(request, contract)),
                get("/ready", "getReadiness", monitoring.readiness()::handle),
                get("/metrics", "getMetrics", monitoring.metrics()::handle),
                get("/openapi.yaml", "getContract", request -> contractText(request, contract)),
                get("/openapi.json", "getContractAsJson", request -> contractAsJson(request, contract)),
                get("/", "getHelpPage", Pages.HELP::page),
                get("/page/{file}", "getHelpPageFile", Pages.HELP::file),
                get("/problems/{type}", "getProblemPage", ProblemPages::page),
                get("/docs", "getDocumentation", new Reference(contract)::page),
                get("/docs/{file}", "getDocumentationFile", Pages.DOCUMENTATION::file));
    }

    private static List<Endpoint> examples(Examples examples) {
        return List.of(
                get("/v1/templates", "listTemplates", TEMPLATES::listing),
                get("/v1/templates/{name}", "getTemplate", TEMPLATES::one),
                get("/v1/examples", "listExamples", examples::listing),
                get("/v1/examples/{name}", "getExample", examples::one),
                get("/v1/answers/{name}", "getExampleAnswer", new ExampleAnswers()::one));
    }

    private static List<Endpoint> plans(CalculationLimits limits) {
        Calculation<Plan, ReviewReport> review = Calculation.watched(
                        Plan.class,
                        limits.timeMs(),
                        (plan, progress) -> PlanReview.of(plan, limits.backfeed(), limits.network(), progress))
                .in(faces -> faces.table(PlanTables.REVIEW, PlanTables::review)
                        .text(Representation.MARKDOWN, PlanPosts::review))
                .counting(ReportedFindings::of)
                .cachedBy(Plan::circuit, (report, plan) -> report.named(plan.name()));
        return List.of(
                post(
                        "/v1/plans/conversion",
                        "convertPlan",
                        Calculation.of(Plan.class, PlanConversion::of)
                                .in(faces -> faces.with(
                                                Representation.CSV,
                                                (plan, answer, json) -> PlanConversion.csv(plan, json))
                                        .with(
                                                Representation.MARKDOWN,
                                                (plan, answer, json) -> PlanConversion.markdown(plan, json))
                                        .with(
                                                Representation.XLSX,
                                                (plan, answer, json) -> PlanConversion.xlsx(plan, json))
                                        .with(
                                                Representation.ODS,
                                                (plan, answer, json) -> PlanConversion.ods(plan, json)))),
                post(
                        "/v1/plans/solution",
                        "solvePlan",
                        Calculation.limited(Plan.class, limits.timeMs(), (plan, input, progress) -> {
                                    SolutionOptions options =
                                            input.options(SolutionOptions.class, SolutionOptions.USUAL);
                                    return PlanSolution.of(
                                            PlanAnswer.of(plan, options, limits.network(), progress), options);
                                })
                                .in(faces -> faces.table(
                                                PlanTables.READINGS,
                                                solution -> PlanTables.readings(solution.readings()))
                                        .text(
                                                Representation.MARKDOWN,
                                                answer -> PlanPosts.readings(answer.with(
                                                        answer.result().readings()))))
                                .counting(solution -> ReportedFindings.of(solution.readings()))
                                .cachedBy(Plan::circuit, (report, plan) -> report.named(plan.name()))),
                post(
                        "/v1/plans/backfeed",
                        "findBackfeed",
                        Calculation.watched(
                                        Plan.class,
                                        limits.timeMs(),
                                        (plan, input, progress) -> BackfeedAnswer.of(
                                                plan,
                                                input.options(BackfeedOptions.class, BackfeedOptions.USUAL),
                                                limits.backfeed(),
                                                limits.network(),
                                                progress))
                                .in(faces -> faces.table(PlanTables.BACKFEED, PlanTables::backfeed)
                                        .text(Representation.MARKDOWN, PlanPosts::backfeed))
                                .counting(ReportedFindings::of)
                                .cachedBy(Plan::circuit, (report, plan) -> report.named(plan.name()))),
                post(
                        "/v1/plans/mistakes",
                        "listMistakes",
                        Calculation.watched(
                                        Plan.class,
                                        limits.timeMs(),
                                        (plan, input, progress) -> MistakesAnswer.of(
                                                plan,
                                                input.options(MistakesOptions.class, MistakesOptions.USUAL),
                                                limits.network(),
                                                progress))
                                .in(faces -> faces.table(PlanTables::mistakes)
                                        .text(Representation.MARKDOWN, PlanPosts::mistakes))),
                post(
                        "/v1/plans/readings",
                        "listReadings",
                        Calculation.watched(
                                        Plan.class,
                                        limits.timeMs(),
                                        (plan, input, progress) -> ReadingsAnswer.of(
                                                input.options(ReadingsOptions.class, ReadingsOptions.USUAL)
                                                        .of(plan),
                                                limits.network(),
                                                progress))
                                .in(faces -> faces.table(ReadingsTables::table)
                                        .text(Representation.MARKDOWN, ReadingsTables::markdown))),
                post(
                        "/v1/plans/diagnosis",
                        "diagnosePlan",
                        Calculation.watched(
                                        DiagnosisQuestion.class,
                                        (question, input, progress) -> DiagnosisAnswer.of(
                                                question,
                                                DiagnosisLimits.defaults().within(limits.timeMs()),
                                                limits.network(),
                                                progress))
                                .in(faces -> faces.table(DiagnosisTables::table)
                                        .text(
                                                Representation.TEXT,
                                                answer -> answer.result().outcome())
                                        .text(Representation.MARKDOWN, DiagnosisTables::markdown))),
                get("/v1/plans/review", "getReview", review),
                post("/v1/plans/review", "reviewPlan", review),
                post(
                        "/v1/plans/comparison",
                        "comparePlans",
                        Calculation.watched(
                                        ComparisonQuestion.class,
                                        limits.timeMs(),
                                        (question, progress) -> ComparisonAnswer.of(
                                                question, limits.backfeed(), limits.network(), progress))
                                .in(faces -> faces.table(ComparisonTables::table)
                                        .text(Representation.MARKDOWN, ComparisonTables::markdown))),
                post(
                        "/v1/plans/sheet",
                        "printSheet",
                        Calculation.limited(
                                        SheetQuestion.class,
                                        limits.timeMs(),
                                        (question, progress) -> PrintedSheet.of(
                                                question, limits.backfeed(), limits.network(), progress))
                                .in(json -> Representations.<SheetQuestion, PrintedSheet>none()
                                        .text(Representation.HTML, PrintedSheet::page))));
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
                .in(faces -> faces.figure(Reduction::totalOhm)
                        .table(ResistanceQuestion::table)
                        .page("Series and parallel", ResistanceQuestion::table));
        return List.of(
                get("/v1/resistance", "getResistance", resistance),
                post("/v1/resistance", "postResistance", resistance),
                post(
                        "/v1/networks/solution",
                        "solveNetwork",
                        Calculation.limited(
                                        NetworkQuestion.class,
                                        limits.timeMs(),
                                        (question, progress) -> question.answer(limits.network(), progress))
                                .in(faces -> faces.table(NetworkReport::table))));
    }

    private static List<Endpoint> conductors() {
        Calculation<VoltageDrop.Input, VoltageDrop.Result> drop = Calculation.of(
                        VoltageDrop.Input.class, VoltageDrop::calculate)
                .in(faces -> faces.figure(r -> r.total().totalV())
                        .table(WireForms.DROP, WireForms::table)
                        .page("Wire", WireForms::table)
                        .curves(question -> DropPlot.draw(DropOverLength.of(question))))
                .counting(ReportedFindings::of);
        Calculation<ConductorSizing.Input, ConductorSizing.Result> sizing = Calculation.of(
                        ConductorSizing.Input.class, ConductorSizing::size)
                .in(faces -> faces.figure(WireForms::areaMm2, WireForms::whyNone)
                        .table(WireForms.SIZE, WireForms::table)
                        .curves(question -> DropPlot.draw(DropOverLength.of(question))))
                .counting(ReportedFindings::of);
        Calculation<FuseChoice.Input, FuseChoice.Result> fuse = Calculation.of(
                        FuseChoice.Input.class, FuseChoice::choose)
                .in(faces -> faces.figure(WireForms::ratingA, r -> r.choice().reason())
                        .table(WireForms.FUSE, WireForms::table)
                        .page("Fuse", WireForms::table)
                        .curves(question -> FusePlot.draw(FuseCurves.of(question))))
                .counting(ReportedFindings::of);
        Calculation<CircuitSizing.Input, CircuitSizing.Result> circuit = Calculation.of(
                        CircuitSizing.Input.class, CircuitSizing::size)
                .in(faces -> faces.figure(WireForms::areaMm2, WireForms::whyNone)
                        .table(WireForms.CIRCUIT, WireForms::table)
                        .page("Circuit", WireForms::table))
                .counting(ReportedFindings::of);
        return List.of(
                get("/v1/circuit", "getCircuit", circuit),
                post(
                        "/v1/circuit",
                        "postCircuit",
                        Calculation.of(FeedSizing.Input.class, FeedSizing::size)
                                .in(faces -> faces.table(WireForms.FEED, WireForms::table))
                                .counting(ReportedFindings::of)),
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
                                .in(faces -> faces.figure(d -> d.resistance().ohmPerM())
                                        .table(ConductorQuestion::table))),
                get("/v1/parts", "listParts", Calculation.of(PartListQuestion.class, PartListQuestion::answer)),
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
                .in(faces -> faces.figure(b -> b.keyOn().coilKeyOnV())
                        .table(BallastQuestion.COLUMNS, BallastQuestion::table)
                        .page("Ballast resistor", BallastQuestion::table))
                .counting(ReportedFindings::of);
        Calculation<ChoiceQuestion, ChoiceResult> choice = Calculation.of(ChoiceQuestion.class, ChoiceQuestion::answer)
                .in(faces -> faces.figure(ChoiceQuestion::figure, ChoiceResult::conclusion)
                        .table(ChoiceQuestion::table));
        Calculation<SparkQuestion, SparkReport> spark = Calculation.of(SparkQuestion.class, SparkQuestion::answer)
                .in(faces -> faces.figure(SparkReport::marginKv)
                        .table(SparkReport.COLUMNS, SparkReport::table)
                        .page("Spark", SparkReport::table)
                        .curves(question -> SparkPlots.draw(question.curves())))
                .counting(ReportedFindings::of);
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
                                .in(faces -> faces.table(ChangeQuestion.Report::table)
                                        .curves(question -> SparkPlots.drawChange(question.curves())))));
    }

    /** Questions of the bench. */
    private static List<Endpoint> workshop() {
        return List.of(
                get(
                        "/v1/condenser",
                        "getCondenser",
                        Calculation.of(Condenser.Input.class, Condenser::calculate)
                                .in(faces ->
                                        faces.figure(Condenser.Result::leastUf).table(BenchForms::table))),
                get(
                        "/v1/dwell",
                        "getDwell",
                        Calculation.of(PointsDwell.Input.class, PointsDwell::calculate)
                                .in(faces -> faces.figure(PointsDwell.Result::dwellDegrees)
                                        .table(BenchForms::table))),
                get(
                        "/v1/coil-polarity",
                        "getCoilPolarity",
                        Calculation.of(CoilPolarity.Input.class, CoilPolarity::calculate)
                                .in(faces -> faces.table(BenchForms::table))),
                get(
                        "/v1/coil-choice",
                        "getCoilChoice",
                        Calculation.of(CoilChoice.Input.class, CoilChoice::choose)
                                .in(faces -> faces.table(BenchForms::table))),
                get(
                        "/v1/cranking-test",
                        "getCrankingTest",
                        Calculation.of(CrankingTest.Input.class, CrankingTest::judge)
                                .in(faces -> faces.table(BenchForms::table))),
                get(
                        "/v1/resistor",
                        "getResistor",
                        Calculation.of(SeriesResistor.Input.class, SeriesResistor::choose)
                                .in(faces -> faces.figure(SeriesResistor.Result::resistorOhm)
                                        .table(BenchForms::table))),
                get(
                        "/v1/resistance-wire",
                        "getResistanceWire",
                        Calculation.of(ResistanceWire.Input.class, ResistanceWire::cut)
                                .in(faces -> faces.figure(ResistanceWire.Result::lengthM)
                                        .table(BenchForms::table))));
    }

    /** What a load balancer asks for. */
    record Health(String status, String version) {}

    private static Reply health(Request request, Contract contract) throws IOException {
        request.checkAccepts(Json.MEDIA_TYPE);
        return Reply.of(Json.MEDIA_TYPE, request.json().write(new Health("ok", contract.version())))
                .withHeaders(Map.of("Cache-Control", "no-store"));
    }

    private static Reply contractAsJson(Request request, Contract contract) throws IOException {
        request.checkAccepts(Json.MEDIA_TYPE);
        return Reply.of(Json.MEDIA_TYPE, request.json().write(contract.document()));
    }

    private static Reply contractText(Request request, Contract contract) {
        request.checkAccepts("application/yaml");
        return Reply.of("application/yaml", contract.text());
    }
}
