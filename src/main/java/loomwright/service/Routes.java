package loomwright.service;

import static loomwright.service.Endpoint.get;
import static loomwright.service.Endpoint.post;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import loomwright.backfeed.BackfeedAnswer;
import loomwright.backfeed.BackfeedLimits;
import loomwright.circuit.Plan;
import loomwright.conductor.ConductorSizing;
import loomwright.conductor.Conductors;
import loomwright.conductor.FuseChoice;
import loomwright.conductor.VoltageDrop;
import loomwright.network.NetworkLimits;
import loomwright.network.Reduction;
import loomwright.operation.PlanAnswer;
import loomwright.service.conductor.ConductorListQuestion;
import loomwright.service.conductor.ConductorQuestion;
import loomwright.service.conductor.TableListQuestion;
import loomwright.service.conductor.TableQuestion;
import loomwright.service.conductor.WireForms;
import loomwright.service.network.NetworkQuestion;
import loomwright.service.network.NetworkReport;
import loomwright.service.network.ResistanceQuestion;
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
        List<Endpoint> table = new ArrayList<>(conductors());
        table.addAll(List.of(
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
                get("/v1/resistance", "getResistance", resistance),
                post("/v1/resistance", "postResistance", resistance),
                post(
                        "/v1/networks/solution",
                        "solveNetwork",
                        Calculation.of(NetworkQuestion.class, NetworkQuestion::answer)
                                .in(faces -> faces.table(NetworkReport::table)))));
        return List.copyOf(table);
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
