package loomwright.service;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.json.JsonMapper;
import io.restassured.path.json.JsonPath;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import loomwright.circuit.Plan;
import loomwright.circuit.Plans;
import loomwright.circuit.TerminalRef;
import loomwright.circuit.Wire;
import loomwright.circuit.fault.Batteries;
import loomwright.circuit.fault.DischargedBattery;
import loomwright.circuit.fault.OffValue;
import loomwright.circuit.fault.ShortBetween;
import loomwright.circuit.fault.SingleFault;
import loomwright.network.NetworkLimits;
import loomwright.operation.Contacts;
import loomwright.operation.PlanSolver;
import loomwright.operation.Probe;
import loomwright.operation.Step;
import org.junit.jupiter.api.Test;

/** Faults that a plan has to say something for: wires of one loom, one of two batteries; a coil. What a meter shows is calculated. */
class DiagnosisFaultsTest {
    private static final JsonMapper MAPPER = JsonMapper.builder().build();

    /** Fuse, switch and lamp; fuse and heater; all wires of one loom. */
    private static final Plan LOOM = Plans.of(
            "{'kind':'battery','id':'battery'},{'kind':'earth','id':'body'},{'kind':'fuse','id':'F1','ratingA':15},"
                    + "{'kind':'fuse','id':'F2','ratingA':15},{'kind':'switch','id':'lights','terminals':['30','56'],"
                    + "'positions':[{'name':'off','joins':[]},{'name':'on','joins':[['30','56']]}],'position':'off'},"
                    + "{'kind':'lamp','id':'lamp','ratedV':12,'ratedW':60,'meantLive':[]},"
                    + "{'kind':'load','id':'heater','resistanceOhm':3,'meantLive':['run']}",
            String.join(
                    ",",
                    wire("W1", "battery.minus", "body.31", 0.001, ""),
                    wire("W2", "battery.plus", "F1.a", 0.005, ""),
                    wire("W3", "F1.b", "lights.30", 0.03, "dash"),
                    wire("W4", "lights.56", "lamp.a", 0.03, "dash"),
                    wire("W5", "lamp.b", "body.31", 0.01, ""),
                    wire("W6", "battery.plus", "F2.a", 0.005, ""),
                    wire("W7", "F2.b", "heater.a", 0.03, "dash"),
                    wire("W8", "heater.b", "body.31", 0.01, "")));

    private static final Plan TWO_SIX_VOLT = Plans.of(
            "{'kind':'battery','id':'left','nominalVoltageV':6},{'kind':'battery','id':'right','nominalVoltageV':6},"
                    + "{'kind':'earth','id':'body'},{'kind':'load','id':'heater','resistanceOhm':3,'meantLive':['run']}",
            String.join(
                    ",",
                    wire("W1", "left.minus", "body.31", 0.001, ""),
                    wire("W2", "left.plus", "right.minus", 0.002, ""),
                    wire("W3", "right.plus", "heater.a", 0.02, ""),
                    wire("W4", "heater.b", "body.31", 0.01, "")));

    private static String wire(String id, String from, String to, double ohm, String loom) {
        return "{'id':'" + id + "','from':'" + from + "','to':'" + to + "','resistanceOhm':" + ohm
                + (loom.isEmpty() ? "" : ",'loom':'" + loom + "'") + "}";
    }

    /** What a meter shows on the plan with a fault, contacts closed. */
    private static Map<String, Object> reading(Plan plan, SingleFault fault, Step step, String red, String black) {
        Plan faulty = Contacts.CLOSED.held(fault.applyTo(plan));
        double volts = new PlanSolver(NetworkLimits.defaults())
                .solve(faulty, step).stream()
                        .filter(s -> s.step() == step)
                        .findFirst()
                        .orElseThrow()
                        .volts(Probe.of(red, black))
                        .orElseThrow();
        Map<String, Object> reading = new LinkedHashMap<>();
        reading.put("red", red);
        reading.put("black", black);
        reading.put("condition", step.condition().name().toLowerCase(Locale.ROOT));
        reading.put("voltageV", Math.rint(1000 * volts) / 1000);
        if (Contacts.matter(plan)) {
            reading.put("contacts", "closed");
        }
        return reading;
    }

    private static JsonPath diagnosis(Plan plan, List<Map<String, Object>> readings) {
        Map<String, Object> tree = new LinkedHashMap<>();
        Plans.tree(plan).forEach((name, value) -> tree.put(String.valueOf(name), value));
        try {
            return LiveService.ask()
                    .contentType("application/json")
                    .body(MAPPER.writeValueAsString(Map.of("plan", withoutNulls(tree), "readings", readings)))
                    .post("/v1/plans/diagnosis")
                    .then()
                    .statusCode(200)
                    .extract()
                    .jsonPath();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Object withoutNulls(Object value) {
        if (value instanceof Map<?, ?> map) {
            Map<String, Object> kept = new LinkedHashMap<>();
            map.forEach((name, one) -> {
                if (one != null) {
                    kept.put(String.valueOf(name), withoutNulls(one));
                }
            });
            return kept;
        }
        return value instanceof List<?> list
                ? list.stream().map(DiagnosisFaultsTest::withoutNulls).toList()
                : value;
    }

    private static void assertFirst(JsonPath answer, String kind, String id) {
        List<String> kinds = answer.getList("result.explanations[0].candidates.faults.flatten().kind");
        List<String> ids = answer.getList("result.explanations[0].candidates.faults.flatten().ids.flatten()");
        assertThat(kinds).as(answer.prettify()).contains(kind);
        assertThat(ids).contains(id);
    }

    @Test
    void aWireThatTouchesAnotherOfItsLoom() {
        SingleFault fault = new ShortBetween(TerminalRef.parse("lights.56"), TerminalRef.parse("F2.b"), 0.05);
        List<Map<String, Object>> readings = new ArrayList<>();
        readings.add(reading(LOOM, fault, Step.RUN, "lamp.a", "lamp.b"));
        readings.add(reading(LOOM, fault, Step.RUN, "F1.a", "F1.b"));
        readings.add(reading(LOOM, fault, Step.RUN, "F2.b", "lights.56"));
        readings.add(reading(LOOM, fault, Step.RUN, "lights.30", "lights.56"));

        JsonPath answer = diagnosis(LOOM, readings);

        assertThat(answer.getString("result.verdict")).isEqualTo("single-fault");
        assertFirst(answer, "wires-touch", "lights");
        assertThat(answer.getString("result.explanations[0].candidates[0].description"))
                .contains("F2");
    }

    @Test
    void withoutALoomNobodyThinksOfIt() {
        Plan apart = LOOM.with(
                LOOM.parts(),
                LOOM.wires().stream()
                        .map(w -> Wire.ofResistance(w.id(), w.from(), w.to(), 0.02))
                        .toList());
        SingleFault fault = new ShortBetween(TerminalRef.parse("lights.56"), TerminalRef.parse("F2.b"), 0.05);

        JsonPath answer = diagnosis(apart, List.of(reading(apart, fault, Step.RUN, "lamp.a", "lamp.b")));

        List<String> kinds = answer.getList("result.explanations.candidates.flatten().faults.flatten().kind");
        assertThat(kinds).isNotEmpty().doesNotContain("wires-touch");
    }

    @Test
    void oneOfTwoBatteriesIsFlat() {
        SingleFault fault = new DischargedBattery(new Batteries(List.of("right"), false), 6.3, 0.03, 0.2);
        List<Map<String, Object>> readings = List.of(
                reading(TWO_SIX_VOLT, fault, Step.OFF, "right.plus", "right.minus"),
                reading(TWO_SIX_VOLT, fault, Step.OFF, "left.plus", "left.minus"),
                reading(TWO_SIX_VOLT, fault, Step.RUN, "right.plus", "right.minus"));

        JsonPath answer = diagnosis(TWO_SIX_VOLT, readings);

        assertThat(answer.getString("result.verdict")).isEqualTo("single-fault");
        assertFirst(answer, "battery-discharged", "right");
        List<String> ids = answer.getList("result.explanations[0].candidates[0].faults[0].ids");
        assertThat(ids).containsExactly("right");
    }

    @Test
    void aCoilWithShortedTurns() {
        Plan plan = Plans.example("sandpiper-as-built");
        SingleFault fault = new OffValue("coil", OffValue.What.WINDING, 0, false, 1);
        List<Map<String, Object>> readings = List.of(
                reading(plan, fault, Step.RUN, "coil.15", "coil.1"),
                reading(plan, fault, Step.RUN, "coil.15", "earth"),
                reading(plan, fault, Step.RUN, "ballast.a", "ballast.b"),
                reading(plan, fault, Step.RUN, "coil.1", "earth"),
                reading(plan, fault, Step.OFF, "battery.plus", "battery.minus"));

        JsonPath answer = diagnosis(plan, readings);

        assertFirst(answer, "value-off", "coil");
        double factor = answer.getDouble("result.explanations[0].candidates[0].faults[0].factor");
        assertThat(factor).isBetween(0.4, 0.6);
    }
}
