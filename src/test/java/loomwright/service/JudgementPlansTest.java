package loomwright.service;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The rule book's cases that are plans, and those of single questions set out as plans: the review says what the calculations
 * say. Sources as in {@code judgement/cases.csv}.
 */
class JudgementPlansTest {
    private static final ObjectMapper MAPPER = new ObjectMapper();
    private static final List<String> LEVELS = List.of("none", "note", "warning", "danger");
    private static final String KEY =
            "{'kind':'switch','id':'key','terminals':['30','15'],'positions':[{'name':'off','joins':[]},"
                    + "{'name':'on','joins':[['30','15']]}],'positionByCondition':"
                    + "{'off':'off','accessory':'off','run':'on','crank':'on','running':'on'}}";
    private static final String FED = "{'id':'W1','from':'battery.plus','to':'F1.a','size':'4 mm2','lengthM':0.1},"
            + "{'id':'W2','from':'F1.b','to':'key.30','size':'%s','lengthM':0.3},";
    private static final String ALTERNATOR = "{'kind':'alternator','id':'alternator','limitA':60,'selfExciting':true}";
    private static final String CHARGING =
            "{'id':'W8','from':'alternator.B+','to':'battery.plus','resistanceOhm':0.001},"
                    + "{'id':'W9','from':'alternator.B-','to':'body.31','resistanceOhm':0.001}";

    private static String plan(int nominalV, String parts, String wires) {
        return ("{'schema':'loomwright/plan/1','name':'case','system':{'nominalVoltageV':" + nominalV + "},'parts':["
                        + "{'kind':'battery','id':'battery'},{'kind':'earth','id':'body'}," + KEY + "," + parts
                        + "],'wires':[{'id':'W0','from':'battery.minus','to':'body.31','resistanceOhm':0.001}," + wires
                        + "]}")
                .replace('\'', '"');
    }

    private static JsonNode post(String path, String plan) throws IOException {
        var response =
                LiveService.ask().contentType("application/json").body(plan).post(path);
        assertThat(response.statusCode()).as(response.asString()).isEqualTo(200);
        return MAPPER.readTree(response.asByteArray()).path("result");
    }

    private static JsonNode get(String request) throws IOException {
        var response = LiveService.ask().urlEncodingEnabled(false).get(request);
        assertThat(response.statusCode()).as(response.asString()).isEqualTo(200);
        return MAPPER.readTree(response.asByteArray()).path("result");
    }

    private static List<JsonNode> findings(JsonNode result) {
        return StreamSupport.stream(result.path("findings").spliterator(), false)
                .toList();
    }

    private static List<JsonNode> review(String plan) throws IOException {
        return findings(post("/v1/plans/review", plan));
    }

    /** How serious a finding is; none without it. */
    private static String level(List<JsonNode> findings, String code) {
        return findings.stream()
                .filter(f -> f.path("code").asText().equals(code))
                .map(f -> f.path("severity").asText())
                .findFirst()
                .orElse("none");
    }

    private static JsonNode find(List<JsonNode> findings, String code) {
        return findings.stream()
                .filter(f -> f.path("code").asText().equals(code))
                .findFirst()
                .orElseThrow(() -> new AssertionError(code + " is not among " + findings));
    }

    private static String feeding(double fuseA, String size, double currentA) {
        return plan(
                12,
                "{'kind':'fuse','id':'F1','ratingA':" + fuseA + "},{'kind':'load','id':'load','currentA':" + currentA
                        + ",'meantLive':['run','running']}",
                String.format(Locale.ROOT, FED, size)
                        + "{'id':'W3','from':'key.15','to':'load.a','size':'" + size + "','lengthM':0.3},"
                        + "{'id':'W4','from':'load.b','to':'body.31','resistanceOhm':0.001}");
    }

    @ParameterizedTest(name = "{0}: {1} A on {2} with {3} A is {4}")
    @CsvSource({
        "cliff-0.75-against-18AWG, 7.5, 0.75 mm2, 5.4, none",
        "cliff-0.75-against-18AWG, 7.5, 18 AWG, 5.4, none",
        "cliff-0.75-against-18AWG, 10, 0.75 mm2, 5.4, none",
        "fuse-10A-1.5mm2, 15, 1.5 mm2, 10, none",
        "two-55W-lamps, 15, 16 AWG, 9.2, none",
        "fuse-too-large, 30, 1 mm2, 8, danger",
        "default-says-so, 15, 1 mm2, 10, none",
        "size-17.5A-metric, 25, 2.5 mm2, 17.5, none"
    })
    void aFuseOnAWire(String name, double fuseA, String size, double currentA, String expected) throws IOException {
        List<JsonNode> review = review(feeding(fuseA, size, currentA));
        assertThat(level(review, "fuse-too-large")).as(name).isEqualTo(expected);
        assertThat(level(review, "wire-overloaded")).isEqualTo("none");
        assertThat(level(review, "fuse-overloaded")).isEqualTo("none");
        List<JsonNode> alone = findings(
                get("/v1/fuse?currentA=" + currentA + "&ratingA=" + fuseA + "&size=" + size.replace(" ", "%20")));
        assertThat(level(alone, "fuse-too-large")).as(name + " alone").isEqualTo(expected);
    }

    private static String ignition(int nominalV, double coilOhm, double ballastOhm, boolean bypassed) {
        String feed = ballastOhm > 0
                ? "{'id':'W3','from':'key.15','to':'ballast.a','size':'2.5 mm2','lengthM':0.3},"
                        + "{'id':'W4','from':'ballast.b','to':'coil.15','size':'2.5 mm2','lengthM':0.3},"
                : "{'id':'W3','from':'key.15','to':'coil.15','size':'2.5 mm2','lengthM':0.3},";
        String bypass = bypassed ? "{'id':'W7','from':'key.15','to':'coil.15','size':'2.5 mm2','lengthM':0.3}," : "";
        return plan(
                nominalV,
                "{'kind':'fuse','id':'F1','ratingA':15},{'kind':'contact-breaker','id':'points'},{'kind':'coil','id':'coil',"
                        + "'primaryResistanceOhm':" + coilOhm + ",'meantLive':['run','crank','running']}"
                        + (ballastOhm > 0
                                ? ",{'kind':'ballast','id':'ballast','elementsOhm':[" + ballastOhm + "]}"
                                : ""),
                String.format(Locale.ROOT, FED, "2.5 mm2") + feed + bypass
                        + "{'id':'W5','from':'coil.1','to':'points.1','size':'2.5 mm2','lengthM':0.3},"
                        + "{'id':'W6','from':'points.31','to':'body.31','resistanceOhm':0.001}");
    }

    /** The same mistake, as serious, with the same remedy as /v1/spark names; none leads back to a relay or a ballast too many. */
    @ParameterizedTest(name = "{0}: {2} ohm behind {3} ohm on {1} V is {5} {6}")
    @CsvSource({
        "direct-coil-behind-ballast, 12, 3, 1.5, false, coil-weak, warning",
        "0.6-ohm-on-points, 12, 0.6, 0, false, no-current-limit, danger",
        "1.3-ohm-on-12V, 12, 1.3, 0, false, coil-overheats, danger",
        "1.3-ohm-on-12V, 12, 1.3, 1.5, false, coil-overheats, none",
        "24V-coil, 24, 10, 0, false, key-not-to-be-left-on, note",
        "24V-coil, 24, 10, 0, false, coil-overheats, none",
        "ballast-steps, 12, 1.5, 0.001, false, coil-overheats, danger",
        "ballast-steps, 12, 1.5, 0.3, false, ballast-too-small, warning",
        "ballast-steps, 12, 1.5, 0.5, false, ballast-too-small, warning",
        "ballast-steps, 12, 1.5, 1.5, false, ballast-too-small, none",
        "bypass-left-on, 12, 1.5, 1.5, true, bypass-left-on, danger"
    })
    void anIgnition(
            String name,
            int nominalV,
            double coilOhm,
            double ballastOhm,
            boolean bypassed,
            String code,
            String expected)
            throws IOException {
        List<JsonNode> review = review(ignition(nominalV, coilOhm, ballastOhm, bypassed));
        List<JsonNode> spark =
                findings(get("/v1/spark?speedRpm=1500&nominalVoltageV=" + nominalV + "&primaryResistanceOhm=" + coilOhm
                        + "&ballastResistanceOhm=" + ballastOhm + "&bypassed=" + bypassed));
        assertThat(level(review, code)).as(name + " review " + review).isEqualTo(expected);
        assertThat(level(spark, code)).as(name + " spark " + spark).isEqualTo(expected);
        if (!expected.equals("none")) {
            JsonNode remedy = find(review, code).path("remedy");
            assertThat(remedy).as(name).isEqualTo(find(spark, code).path("remedy"));
            if (!level(review, "contact-overloaded").equals("none")) {
                assertThat(find(review, "contact-overloaded").path("remedy"))
                        .as("one cure for the coil and its contacts")
                        .isEqualTo(remedy);
            }
        } else {
            assertThat(review).noneMatch(f -> LEVELS.indexOf(f.path("severity").asText()) > 1);
        }
    }

    /** (10.84 / 13.2)^3.4 is 51 % of the light; without the loss 14.2 V would give more than all of it. */
    @Test
    void dimHeadlamp() throws IOException {
        String lamp = plan(
                12,
                "{'kind':'fuse','id':'F1','ratingA':15},{'kind':'lamp','id':'headlamp','ratedV':12,'ratedW':55,"
                        + "'meantLive':['running']}," + ALTERNATOR,
                String.format(Locale.ROOT, FED, "4 mm2")
                        + "{'id':'W3','from':'key.15','to':'headlamp.a','resistanceOhm':0.75},"
                        + "{'id':'W4','from':'headlamp.b','to':'body.31','resistanceOhm':0.001}," + CHARGING);
        JsonNode dim = find(review(lamp), "voltage-drop");
        assertThat(dim.path("severity").asText()).isEqualTo("warning");
        assertThat(dim.at("/arguments/lightPercent").asDouble()).isBetween(45.0, 57.0);
        assertThat(dim.at("/arguments/fullLightPercent").asDouble()).isGreaterThan(95);
    }

    /** By its current, 0.125 of 0.14 A, it gives 89 % of its light though it has but 10.5 of 12 V. */
    @Test
    void ledByCurrent() throws IOException {
        String led = plan(
                12,
                "{'kind':'fuse','id':'F1','ratingA':5},{'kind':'led','id':'led','ratedV':12,'currentA':0.14,"
                        + "'meantLive':['run','running']}",
                String.format(Locale.ROOT, FED, "1 mm2")
                        + "{'id':'W3','from':'key.15','to':'led.a','resistanceOhm':0.001},"
                        + "{'id':'W4','from':'led.b','to':'body.31','resistanceOhm':0.001},"
                        + "{'id':'W5','from':'battery.plus','to':'led.a','resistanceOhm':12}");
        JsonNode feed = post("/v1/plans/backfeed", led).at("/unintendedFeeds/0");
        assertThat(feed.path("load").asText()).isEqualTo("led");
        assertThat(feed.path("severity").asText()).isEqualTo("warning");
        assertThat(feed.at("/verdict/code").asText()).isEqualTo("operates");
        assertThat(feed.at("/occurrences/0/currentA").asDouble()).isBetween(0.1, 0.14);
    }

    /** 0.4 of 60 Ah at 45 mA: 533 h. */
    @Test
    void drain60Ah() throws IOException {
        JsonNode drain = find(
                review(plan(
                        12,
                        "{'kind':'load','id':'clock','resistanceOhm':280,'meantLive':['off','accessory','run','crank','running']}",
                        "{'id':'W1','from':'battery.plus','to':'clock.a','resistanceOhm':0.01},"
                                + "{'id':'W2','from':'clock.b','to':'body.31','resistanceOhm':0.01}")),
                "key-off-drain");
        assertThat(drain.path("severity").asText()).isEqualTo("note");
        assertThat(drain.at("/arguments/hours").asDouble()).isBetween(450.0, 650.0);
    }

    /** 12.5 V behind 0.2 ohm at 14.2 V: some 8 A into the battery. */
    @Test
    void chargingShowsCharge() throws IOException {
        String car = plan(
                12,
                "{'kind':'load','id':'loads','currentA':20,'meantLive':['running']}," + ALTERNATOR,
                "{'id':'W1','from':'battery.plus','to':'key.30','resistanceOhm':0.001},"
                        + "{'id':'W3','from':'key.15','to':'loads.a','resistanceOhm':0.001},"
                        + "{'id':'W4','from':'loads.b','to':'body.31','resistanceOhm':0.001}," + CHARGING);
        JsonNode parts = post("/v1/plans/solution?step=running", car).at("/steps/0/parts");
        List<JsonNode> battery = StreamSupport.stream(parts.spliterator(), false)
                .filter(part -> part.path("part").asText().equals("battery"))
                .toList();
        assertThat(battery).hasSize(1);
        assertThat(battery.get(0).at("/branches/0/currentA").asDouble())
                .as("from minus to plus within the battery is discharge")
                .isBetween(-20.0, -3.0);
        assertThat(level(review(car), "generator-overloaded")).isEqualTo("none");
    }

    /** The wire that charges carries current back when the engine stands: no remedy puts a diode or relay in it or takes it out. */
    @Test
    void noDiodeInTheChargeWire() throws IOException {
        String car = plan(
                12,
                "{'kind':'coil','id':'coil','primaryResistanceOhm':3,'meantLive':['run','crank','running']},"
                        + "{'kind':'contact-breaker','id':'points'},"
                        + "{'kind':'alternator','id':'alternator','limitA':60,'fieldResistanceOhm':4}",
                "{'id':'W1','from':'battery.plus','to':'key.30','resistanceOhm':0.001},"
                        + "{'id':'W3','from':'key.15','to':'coil.15','resistanceOhm':0.01},"
                        + "{'id':'W4','from':'coil.1','to':'points.1','resistanceOhm':0.01},"
                        + "{'id':'W5','from':'points.31','to':'body.31','resistanceOhm':0.001},"
                        + "{'id':'W6','from':'key.15','to':'alternator.D+','resistanceOhm':0.01}," + CHARGING);
        List<JsonNode> remedies = new ArrayList<>();
        post("/v1/plans/backfeed", car)
                .path("unintendedFeeds")
                .forEach(feed -> feed.path("remedies").forEach(remedies::add));
        assertThat(remedies)
                .as("the alternator keeps the coil alive by its exciter lead, which can be cured")
                .isNotEmpty()
                .noneMatch(remedy -> remedy.path("at").asText().equals("W8"));
    }

    /** Shares of length times the root of the current: 2 m of 20 A and 3 m of 10 A are 48.5 to 51.5 of 0.5 V. */
    @Test
    void budgetSplit() throws IOException {
        JsonNode split = post(
                "/v1/circuit",
                "{\"feedLengthM\":2,\"returnPath\":\"chassis\",\"loads\":[{\"load\":\"headlamps\",\"currentA\":10,\"lengthM\":3},"
                        + "{\"load\":\"headlamps\",\"currentA\":10,\"lengthM\":3}]}");
        assertThat(split.path("budgetV").asDouble()).isBetween(0.46 * 0.5, 0.51 * 0.5);
        assertThat(split.at("/branches/0/budgetV").asDouble())
                .as("what the feed as chosen leaves")
                .isBetween(0.24, 0.4);
    }
}
