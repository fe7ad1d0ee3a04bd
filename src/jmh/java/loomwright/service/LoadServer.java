package loomwright.service;

import java.util.ArrayList;
import java.util.List;
import loomwright.answer.Answer;
import loomwright.circuit.Plan;
import loomwright.network.NetworkLimits;
import loomwright.operation.PlanAnswer;
import loomwright.operation.PlanReadings;

/**
 * The service with two endpoints more that calculate nothing, as measures of what reading and writing cost by themselves:
 * {@code POST /bench/plan} reads a plan and writes it, {@code POST /bench/answer} reads a plan and writes the solution of
 * the demo plan, worked out beforehand. Not part of the product.
 */
public final class LoadServer {
    private static final String DEMO = "/examples/sandpiper-as-built.json";

    private LoadServer() {}

    /** Starts it on the port given, and waits to be stopped. */
    public static void main(String[] args) throws Exception {
        Options options = Options.DEFAULT.withPort(Integer.parseInt(args[0]));
        Contract contract = Contract.load();
        List<Endpoint> endpoints = new ArrayList<>(Routes.table(contract, options.calculation(), Vitals.fresh()));
        Answer<PlanReadings> solved = PlanAnswer.of(demo(), NetworkLimits.defaults());
        endpoints.add(Endpoint.post("/bench/plan", "solvePlan", request -> {
            Plan plan = request.read(Plan.class);
            return Reply.of(Json.MEDIA_TYPE, request.json().write(plan));
        }));
        endpoints.add(Endpoint.post("/bench/answer", "solvePlan", request -> {
            request.read(Plan.class);
            return Reply.of(Json.MEDIA_TYPE, request.json().write(solved));
        }));
        try (Server server = Server.start(options, contract, endpoints)) {
            System.out.println("listening on port " + server.port());
            Thread.currentThread().join();
        }
    }

    /** The plan of the measurements: 24 parts, 40 wires. */
    static Plan demo() throws Exception {
        return new Json(ServiceLimits.DEFAULT).mapper().readValue(demoBytes(), Plan.class);
    }

    static byte[] demoBytes() throws Exception {
        return LoadServer.class.getResourceAsStream(DEMO).readAllBytes();
    }
}
