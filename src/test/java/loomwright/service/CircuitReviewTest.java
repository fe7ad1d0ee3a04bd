package loomwright.service;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * What {@code /v1/circuit} names for a load is put into a plan: wire, fuse and switch, the smallest that will do and the usual
 * choice. The review finds nothing against them; with a wire two sizes thinner it does.
 */
class CircuitReviewTest {
    private static final ObjectMapper MAPPER = new ObjectMapper();
    private static final Set<String> OF_WIRE_AND_FUSE = Set.of(
            "wire-overloaded",
            "fuse-too-large",
            "fuse-overloaded",
            "fuse-blows-at-once",
            "contact-overloaded",
            "voltage-drop");

    private static JsonNode get(String request) throws IOException {
        var response = LiveService.ask().urlEncodingEnabled(false).get(request);
        assertThat(response.statusCode()).as(response.asString()).isEqualTo(200);
        return MAPPER.readTree(response.asByteArray()).path("result");
    }

    private static Set<String> found(String plan) throws IOException {
        var response =
                LiveService.ask().contentType("application/json").body(plan).post("/v1/plans/review");
        assertThat(response.statusCode()).as(response.asString()).isEqualTo(200);
        Set<String> found = new TreeSet<>();
        MAPPER.readTree(response.asByteArray()).at("/result/findings").forEach(finding -> {
            if (OF_WIRE_AND_FUSE.contains(finding.path("code").asText())) {
                found.add(finding.path("code").asText());
            }
        });
        return found;
    }

    private static String plan(String part, String size, double lengthM, double fuseA, double switchA) {
        return String.format(
                        Locale.ROOT,
                        "{'schema':'loomwright/plan/1','name':'circuit','system':{'nominalVoltageV':12},'parts':["
                                + "{'kind':'battery','id':'battery'},{'kind':'earth','id':'body'},"
                                + "{'kind':'fuse','id':'F1','ratingA':%s,'resistanceOhm':0.00001},"
                                + "{'kind':'switch','id':'knob','terminals':['in','out'],'ratingA':%s,'contactResistanceOhm':0.0001,"
                                + "'positions':[{'name':'off','joins':[]},{'name':'on','joins':[['in','out']]}],'position':'on'},%s],"
                                + "'wires':[{'id':'W0','from':'battery.minus','to':'body.31','resistanceOhm':0.000001},"
                                + "{'id':'W1','from':'battery.plus','to':'F1.a','resistanceOhm':0.000001},"
                                + "{'id':'W2','from':'F1.b','to':'knob.in','resistanceOhm':0.000001},"
                                + "{'id':'W3','from':'knob.out','to':'load.a','size':'%s','lengthM':%s},"
                                + "{'id':'W4','from':'load.b','to':'body.31','resistanceOhm':0.01}]}",
                        fuseA,
                        switchA,
                        part,
                        size,
                        lengthM)
                .replace('\'', '"');
    }

    private static String load(double currentA) {
        return "{'kind':'load','id':'load','currentA':" + currentA + ",'meantLive':['run','running']}";
    }

    @ParameterizedTest(name = "{0}: {1} over {2} m")
    @CsvSource({
        "headlamps, powerW=110, 4, 0.5 mm2",
        "lamps, powerW=21, 5, ",
        "horn, currentA=12, 3, ",
        "pump, currentA=5, 4, ",
        "motor, currentA=15, 3, 1 mm2",
        "heater, powerW=150, 3, 0.75 mm2",
        "other, currentA=18, 2, 1 mm2"
    })
    void whatItNamesPassesTheReview(String kind, String much, double lengthM, String thin) throws IOException {
        JsonNode circuit = get("/v1/circuit?load=" + kind + "&" + much + "&lengthM=" + lengthM + "&chassisOhm=0.01");
        double currentA = circuit.path("currentA").asDouble();
        double switchA = circuit.path("switchA").asDouble();
        assertThat(switchA).isGreaterThanOrEqualTo(currentA);
        assertThat(circuit.path("relayA").asDouble()).isGreaterThanOrEqualTo(currentA);
        assertThat(circuit.path("surgeA").asDouble()).isGreaterThanOrEqualTo(currentA);
        for (String choice : new String[] {"smallest", "usual"}) {
            JsonNode named = circuit.path(choice);
            assertThat(named.at("/drop/level").asText()).isEqualTo("fits");
            assertThat(named.at("/wire/level").asText()).isEqualTo("fits");
            assertThat(found(plan(
                            load(currentA),
                            named.path("size").asText(),
                            lengthM,
                            named.path("fuseA").asDouble(),
                            switchA)))
                    .as(choice + " " + named)
                    .isEmpty();
        }
        if (thin != null) {
            assertThat(found(plan(
                            load(currentA),
                            thin,
                            lengthM,
                            circuit.at("/smallest/fuseA").asDouble(),
                            switchA)))
                    .isNotEmpty();
        }
    }
}
