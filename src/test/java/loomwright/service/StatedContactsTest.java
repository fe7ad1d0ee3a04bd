package loomwright.service;

import static org.assertj.core.api.Assertions.assertThat;

import io.restassured.path.json.JsonPath;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** A plan that states faulty contacts, asked for its mistakes and held against readings, over HTTP. */
class StatedContactsTest {
    private static String lights(String faults) {
        return ("{'schema':'loomwright/plan/1','name':'Lights','system':{'nominalVoltageV':12},'parts':["
                        + "{'kind':'battery','id':'battery'},{'kind':'earth','id':'body'},{'kind':'fuse','id':'F1','ratingA':20},"
                        + "{'kind':'switch','id':'lights','terminals':['30','58','56'],'positions':[{'name':'off','joins':[]},"
                        + "{'name':'side','joins':[['30','58']]},{'name':'head','joins':[['30','58','56']]}],'position':'off',"
                        + "'contactFaults':[" + faults + "]},"
                        + "{'kind':'lamp','id':'side','ratedV':12,'ratedW':10},{'kind':'lamp','id':'head','ratedV':12,'ratedW':55}],"
                        + "'wires':[{'id':'W0','from':'battery.minus','to':'body.31','resistanceOhm':0.001},"
                        + "{'id':'W1','from':'battery.plus','to':'F1.a','resistanceOhm':0.005},"
                        + "{'id':'W2','from':'F1.b','to':'lights.30','resistanceOhm':0.01},"
                        + "{'id':'W3','from':'lights.58','to':'side.a','resistanceOhm':0.02},"
                        + "{'id':'W4','from':'lights.56','to':'head.a','resistanceOhm':0.02},"
                        + "{'id':'W5','from':'side.b','to':'body.31','resistanceOhm':0.01},"
                        + "{'id':'W6','from':'head.b','to':'body.31','resistanceOhm':0.01}]}")
                .replace('\'', '"');
    }

    private static String fault(String state, String to, String ohm) {
        String from = state.equals("bridged") ? "58" : "30";
        return "{'state':'" + state + "','between':['" + from + "','" + to + "']"
                + (ohm.isEmpty() ? "" : ",'resistanceOhm':" + ohm) + "}";
    }

    private static JsonPath post(String path, String body) {
        return LiveService.ask()
                .contentType("application/json")
                .body(body)
                .post(path)
                .then()
                .statusCode(200)
                .extract()
                .jsonPath();
    }

    private static JsonPath diagnosis(String plan, String... readings) {
        return post(
                "/v1/plans/diagnosis",
                "{\"plan\":" + plan + ",\"readings\":["
                        + String.join(",", readings).replace('\'', '"') + "]}");
    }

    private static String volts(String red, String position, double voltageV) {
        return "{'red':'" + red + "','condition':'run','voltageV':" + voltageV + ",'switches':{'lights':'" + position
                + "'}}";
    }

    private static List<String> kinds(JsonPath answer) {
        return answer.getList(
                "result.explanations[0].candidates.collectMany { c -> c.faults.findAll { it.ids.contains('lights') }*.kind }");
    }

    @ParameterizedTest
    @CsvSource({"stuck, 56, ''", "open, 56, ''", "worn, 56, 2", "bridged, 56, ''", "bridged, 56, 10"})
    void mistakesDoNotOfferWhatThePlanStates(String state, String to, String ohm) {
        JsonPath answer = post("/v1/plans/mistakes?limit=10000", lights(fault(state, to, ohm)));
        List<Map<String, Object>> ofContacts = answer.getList(
                "result.mistakes.findAll { it.ids == ['lights'] && it.description.code != 'leads-swapped' }");
        assertThat(ofContacts).isNotEmpty();
        assertThat(ofContacts.stream().map(each -> each.get("description"))).doesNotHaveDuplicates();
        String same = state.equals("bridged") || state.equals("stuck") ? "short-inside" : "contact-" + state;
        String from = state.equals("bridged") ? "58" : "30";
        assertThat(answer.getList("result.mistakes.findAll { it.kind == '" + same + "' }.description.arguments"))
                .noneMatch(arguments -> List.of(from, to)
                        .containsAll(List.of(
                                ((Map<?, ?>) arguments).get(same.equals("short-inside") ? "one" : "from"),
                                ((Map<?, ?>) arguments).get(same.equals("short-inside") ? "other" : "to"))));
        assertThat(answer.getList("result.mistakes.kind", String.class)).doesNotContain("contact-sound");
    }

    /** The owner measures what the plan says: no fault is needed beside the one that is stated. */
    @ParameterizedTest
    @CsvSource({"stuck, '', off, 12.38", "open, '', head, 0", "worn, 2, head, 6.12", "bridged, '', side, 12.35"})
    void readingsThatFitTheStatedFaultNeedNoOther(String state, String ohm, String position, double headV) {
        JsonPath answer = diagnosis(lights(fault(state, "56", ohm)), volts("head.a", position, headV));
        assertThat(answer.getString("result.verdict")).isEqualTo("plan-consistent");
    }

    /** Without the stated fault the same readings are a fault of that contact, whether or not the owner is first asked where the switch stood. */
    @ParameterizedTest
    @CsvSource({
        "stuck, off, 12.48, 12.38, 12.48, 0, short-inside",
        "open, head, 12.58, 0, 0, 12.56, contact-open",
        "worn, head, 12.5, 6.12, 6.19, 12.48, contact-worn"
    })
    void theSameReadingsAccuseTheContactIfThePlanSaysNothing(
            String state, String position, double supplyV, double headV, double contactV, double sideV, String kind) {
        JsonPath answer = diagnosis(
                lights(""),
                volts("lights.30", position, supplyV),
                volts("lights.56", position, contactV),
                volts("head.a", position, headV),
                volts("side.a", position, sideV));
        assertThat(kinds(answer)).as(state).contains(kind);
    }

    /** The plan says that the contact is faulty, and the readings are those of a sound one. */
    @ParameterizedTest
    @ValueSource(strings = {"stuck", "open", "worn"})
    void aStatedFaultThatIsNotThereIsFound(String state) {
        JsonPath answer = diagnosis(
                lights(fault(state, "56", state.equals("worn") ? "2" : "")),
                volts("lights.56", "off", 0),
                volts("lights.30", "head", 12.46),
                volts("lights.56", "head", 12.46),
                volts("lights.58", "side", 12.58),
                volts("lights.56", "side", 0));
        assertThat(answer.getString("result.verdict")).isEqualTo("single-fault");
        assertThat(kinds(answer)).contains("contact-sound");
    }

    /** A second fault is found beside the stated one. */
    @Test
    void anotherFaultIsFoundBesideTheStatedOne() {
        JsonPath answer = diagnosis(
                lights(fault("stuck", "56", "")),
                volts("head.a", "off", 12.38),
                volts("lights.58", "side", 12.46),
                volts("side.a", "side", 0));
        assertThat(answer.getString("result.verdict")).isEqualTo("single-fault");
        assertThat(answer.getList("result.explanations[0].candidates.faults.flatten().ids.flatten()", String.class))
                .containsOnly("W3");
    }
}
