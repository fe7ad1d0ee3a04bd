package loomwright.service;

import java.util.ArrayList;
import java.util.List;
import loomwright.answer.Answer;
import loomwright.answer.Progress;
import loomwright.circuit.Plan;
import loomwright.operation.PlanAnswer;
import loomwright.operation.PlanReadings;
import loomwright.review.PlanReview;
import loomwright.review.ReviewReport;
import loomwright.service.endpoint.Calculation;
import loomwright.service.endpoint.Endpoint;
import loomwright.service.endpoint.Monitoring;
import loomwright.service.endpoint.ReportedFindings;
import loomwright.service.http.Reply;
import loomwright.service.input.Contract;
import loomwright.service.input.Json;
import loomwright.service.limits.CalculationLimits;
import loomwright.service.limits.Options;
import loomwright.service.limits.ServiceLimits;
import loomwright.service.stream.Bulk;
import loomwright.service.stream.BulkOperations;

/**
 * Two services to measure: the real one, and on the next port the same without calculations, which reads a plan as the
 * other does and answers with a ready solution or review of the demo plan. There, {@code /bench/plan} reads a plan and
 * writes it.
 */
public final class LoadServer {
    private static final String DEMO = "/examples/sandpiper-as-built.json";

    private LoadServer() {}

    /** Starts them; {@code args[0]} is the port of the real one. Waits to be stopped. */
    public static void main(String[] args) throws Exception {
        int port = Integer.parseInt(args[0]);
        Contract contract = Contract.load();
        CalculationLimits limits = CalculationLimits.DEFAULT;
        try (Server real = start(port, contract, Routes.single(limits));
                Server bare = start(port + 1, contract, withoutCalculations(limits))) {
            System.out.println("real on port " + real.port() + ", without calculations on port " + bare.port());
            Thread.currentThread().join();
        }
    }

    private static Server start(int port, Contract contract, List<Endpoint> single) {
        Monitoring vitals = Monitoring.fresh();
        BulkOperations lines = BulkOperations.of(contract, single);
        List<Endpoint> all = new ArrayList<>(single);
        all.add(Endpoint.post(
                "/v1/bulk/{operation}",
                BulkOperations.ID,
                new Bulk(lines, CalculationLimits.DEFAULT.bulk(), vitals.metrics())));
        return Server.start(Options.DEFAULT.withPort(port), contract, all, vitals);
    }

    private static List<Endpoint> withoutCalculations(CalculationLimits limits) throws Exception {
        Plan demo = demo();
        Answer<PlanReadings> solved = PlanAnswer.of(demo, limits.network());
        Answer<ReviewReport> reviewed = PlanReview.of(demo, limits.backfeed(), limits.network(), Progress.UNWATCHED);
        List<Endpoint> endpoints = new ArrayList<>();
        for (Endpoint endpoint : Routes.single(limits)) {
            Endpoint.Handler handler = switch (endpoint.operationId()) {
                case "solvePlan" -> Calculation.of(Plan.class, plan -> solved).counting(ReportedFindings::of);
                case "reviewPlan" ->
                    Calculation.of(Plan.class, plan -> reviewed).counting(ReportedFindings::of);
                default -> endpoint.handler();
            };
            endpoints.add(new Endpoint(endpoint.method(), endpoint.path(), endpoint.operationId(), handler));
        }
        endpoints.add(Endpoint.post("/bench/plan", "solvePlan", request -> {
            Plan plan = request.read(Plan.class);
            return Reply.of(Json.MEDIA_TYPE, request.json().write(plan));
        }));
        return endpoints;
    }

    /** The plan of the measurements: 24 parts, 40 wires. */
    static Plan demo() throws Exception {
        return new Json(ServiceLimits.DEFAULT).mapper().readValue(demoBytes(), Plan.class);
    }

    static byte[] demoBytes() throws Exception {
        return LoadServer.class.getResourceAsStream(DEMO).readAllBytes();
    }
}
