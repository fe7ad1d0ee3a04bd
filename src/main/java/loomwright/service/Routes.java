package loomwright.service;

import static loomwright.service.Endpoint.get;
import static loomwright.service.Endpoint.post;

import java.io.IOException;
import java.util.List;
import java.util.Map;
import loomwright.backfeed.BackfeedAnswer;
import loomwright.backfeed.BackfeedLimits;
import loomwright.circuit.Plan;
import loomwright.network.NetworkLimits;
import loomwright.network.Reduction;
import loomwright.operation.PlanAnswer;
import loomwright.review.comparison.ComparisonAnswer;
import loomwright.review.comparison.ComparisonQuestion;
import loomwright.service.network.NetworkQuestion;
import loomwright.service.network.NetworkReport;
import loomwright.service.network.ResistanceQuestion;
import loomwright.service.plan.ComparisonTables;
import loomwright.service.plan.PlanTables;

/** Every operation of the contract, each on one line. A test compares this table with {@code openapi.yaml}. */
final class Routes {
    private Routes() {}

    static List<Endpoint> table(Contract contract) {
        Examples examples = Examples.load();
        NetworkLimits networkLimits = NetworkLimits.defaults();
        BackfeedLimits backfeedLimits = BackfeedLimits.defaults();
        Calculation<ResistanceQuestion, Reduction> resistance = Calculation.of(
                        ResistanceQuestion.class, ResistanceQuestion::answer)
                .in(faces -> faces.figure(Reduction::totalOhm).table(ResistanceQuestion::table));
        return List.of(
                get("/health", "getHealth", request -> health(request, contract)),
                get("/openapi.yaml", "getContract", request -> contractText(request, contract)),
                get("/docs", "getDocumentation", Documentation::page),
                get("/docs/{file}", "getDocumentationFile", Documentation::file),
                get("/v1/examples", "listExamples", examples::listing),
                get("/v1/examples/{name}", "getExample", examples::one),
                post(
                        "/v1/plans/solution",
                        "solvePlan",
                        Calculation.of(Plan.class, plan -> PlanAnswer.of(plan, networkLimits))
                                .in(faces -> faces.table(PlanTables::readings))),
                post(
                        "/v1/plans/backfeed",
                        "findBackfeed",
                        Calculation.of(Plan.class, plan -> BackfeedAnswer.of(plan, backfeedLimits, networkLimits))
                                .in(faces -> faces.table(PlanTables::backfeed))),
                post(
                        "/v1/plans/comparison",
                        "comparePlans",
                        Calculation.of(
                                        ComparisonQuestion.class,
                                        question -> ComparisonAnswer.of(question, backfeedLimits, networkLimits))
                                .in(faces -> faces.table(ComparisonTables::table)
                                        .text(Face.MARKDOWN, ComparisonTables::markdown))),
                get("/v1/resistance", "getResistance", resistance),
                post("/v1/resistance", "postResistance", resistance),
                post(
                        "/v1/networks/solution",
                        "solveNetwork",
                        Calculation.of(NetworkQuestion.class, NetworkQuestion::answer)
                                .in(faces -> faces.table(NetworkReport::table))));
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
