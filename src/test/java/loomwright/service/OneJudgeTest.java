package loomwright.service;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.Test;

/**
 * Every operation that can judge a wire is asked about the same 500 wires: one ampacity, one verdict and one size each. What
 * a remedy names is applied and asked about again.
 */
class OneJudgeTest {
    private static final int SETTINGS = 500;
    private static final ObjectMapper MAPPER = new ObjectMapper();
    private static final List<String> SIZES = List.of(
            "0.5 mm2",
            "0.75 mm2",
            "1 mm2",
            "1.5 mm2",
            "2.5 mm2",
            "4 mm2",
            "6 mm2",
            "10 mm2",
            "18 AWG",
            "16 AWG",
            "14 AWG",
            "12 AWG",
            "10 AWG");
    /** Of a circuit, and of its load as /v1/circuit says it. */
    private static final List<List<String>> KINDS = List.of(
            List.of("general", "other"),
            List.of("electronics", "electronics"),
            List.of("headlamp", "headlamps"),
            List.of("small-lamp", "lamps"));

    private final Random random = new Random(500);

    private double between(double low, double high) {
        return Math.round(100 * (low + (high - low) * random.nextDouble())) / 100.0;
    }

    private <T> T one(List<T> of) {
        return of.get(random.nextInt(of.size()));
    }

    private static JsonNode result(String request, String... query) throws IOException {
        var response = LiveService.ask()
                .urlEncodingEnabled(false)
                .get(request + "?" + String.join("&", query).replace(" ", "%20"));
        assertThat(response.statusCode()).as(response.asString()).isEqualTo(200);
        return MAPPER.readTree(response.asByteArray()).path("result");
    }

    private static List<JsonNode> review(String plan) throws IOException {
        var response =
                LiveService.ask().contentType("application/json").body(plan).post("/v1/plans/review");
        assertThat(response.statusCode()).as(response.asString()).isEqualTo(200);
        JsonNode findings = MAPPER.readTree(response.asByteArray()).at("/result/findings");
        return StreamSupport.stream(findings.spliterator(), false).toList();
    }

    /** The severity of a finding as a level. */
    private static String level(List<JsonNode> findings, String code) {
        return findings.stream()
                .filter(f -> f.path("code").asText().equals(code))
                .map(f -> f.path("severity").asText())
                .findFirst()
                .orElse("fits");
    }

    private static boolean nearALimit(double ratio) {
        return List.of(0.8, 1.0, 1.1, 1.5).stream().anyMatch(limit -> Math.abs(ratio / limit - 1) < 0.04);
    }

    /** One wire with its load and fuse. */
    private record Setting(
            String size,
            double currentA,
            double lengthM,
            String circuit,
            String load,
            String place,
            double insulationC,
            int bundle,
            double fuseA) {
        String where() {
            return "place=" + place + "&insulationC=" + insulationC + "&bundleCount=" + bundle;
        }

        String run() {
            return "currentA=" + currentA + "&lengthM=" + lengthM + "&returnPath=chassis&chassisOhm=0.01&" + where();
        }

        JsonNode drop(String of) throws IOException {
            return result("/v1/voltage-drop", "size=" + of, "circuit=" + circuit, "bundleFactors=true", run());
        }

        JsonNode fuse(String of) throws IOException {
            return result("/v1/fuse", "size=" + of, "currentA=" + currentA, "bundleFactors=true", where());
        }

        String plan(String of) {
            return String.format(
                            Locale.ROOT,
                            "{'schema':'loomwright/plan/1','name':'one wire','system':{'nominalVoltageV':12},'parts':["
                                    + "{'kind':'battery','id':'battery'},{'kind':'earth','id':'body'},"
                                    + "{'kind':'fuse','id':'F1','ratingA':%s,'resistanceOhm':0.00001},"
                                    + "{'kind':'load','id':'load','currentA':%s,'meantLive':['run']}],'wires':["
                                    + "{'id':'W0','from':'battery.minus','to':'body.31','resistanceOhm':0.000001},"
                                    + "{'id':'W1','from':'battery.plus','to':'F1.a','resistanceOhm':0.000001},"
                                    + "{'id':'W2','from':'F1.b','to':'load.a','size':'%s','lengthM':%s,'place':'%s',"
                                    + "'insulationTemperatureC':%s,'bundleCount':%s},"
                                    + "{'id':'W3','from':'load.b','to':'body.31','resistanceOhm':0.01}]}",
                            fuseA,
                            currentA,
                            of,
                            lengthM,
                            place,
                            insulationC,
                            bundle)
                    .replace('\'', '"');
        }
    }

    private Setting setting() {
        List<String> kind = one(KINDS);
        return new Setting(
                one(SIZES),
                Math.max(0.3, between(0, 1) * one(List.of(5.0, 20.0, 50.0))),
                between(0.3, 6),
                kind.get(0),
                kind.get(1),
                one(List.of("cabin", "engine-bay")),
                one(List.of(60.0, 80.0, 105.0)),
                1 + random.nextInt(6),
                one(List.of(5.0, 7.5, 10.0, 15.0, 20.0, 25.0, 30.0, 40.0)));
    }

    @Test
    void oneWireOneVerdictOneSizeInEveryOperation() throws IOException {
        int wiresJudged = 0;
        int fusesJudged = 0;
        int dropsJudged = 0;
        int sizesJudged = 0;
        for (int i = 0; i < SETTINGS; i++) {
            Setting it = setting();
            JsonNode drop = it.drop(it.size());
            JsonNode fuse = result(
                    "/v1/fuse",
                    "size=" + it.size(),
                    "currentA=" + it.currentA(),
                    "ratingA=" + it.fuseA(),
                    "bundleFactors=true",
                    it.where());
            double allowedA = fuse.path("allowedA").asDouble();
            assertThat(drop.at("/wireVerdict/limit").asDouble())
                    .as(it.toString())
                    .isCloseTo(allowedA, within(1e-6));

            List<JsonNode> review = review(it.plan(it.size()));
            // A load of constant current lets go where nearly all is lost on the way.
            boolean runs = drop.path("totalV").asDouble() < 3;
            if (runs
                    && !nearALimit(it.currentA() / allowedA)
                    && level(review, "fuse-blows-at-once").equals("fits")) {
                wiresJudged++;
                assertThat(level(review, "wire-overloaded"))
                        .as(it + " wire")
                        .isEqualTo(drop.at("/wireVerdict/level").asText());
                remedied(it, review);
            }
            if (!nearALimit(it.fuseA() / allowedA)) {
                fusesJudged++;
                assertThat(level(review, "fuse-too-large")).as(it + " fuse").isEqualTo(fuseLevel(it, review, fuse));
            }
            if (runs
                    && it.circuit().equals("general")
                    && level(review, "fuse-blows-at-once").equals("fits")
                    && !nearALimit(drop.at("/verdict/value").asDouble()
                            / drop.at("/verdict/limit").asDouble())) {
                dropsJudged++;
                assertThat(level(review, "voltage-drop"))
                        .as(it + " drop")
                        .isEqualTo(drop.at("/verdict/level").asText());
            }
            sizesJudged += sized(it);
        }
        assertThat(List.of(wiresJudged, fusesJudged, sizesJudged)).allMatch(n -> n > 0.6 * SETTINGS);
        assertThat(dropsJudged).isGreaterThan(SETTINGS / 12);
    }

    /** Of the fuse against the wire; where the review has a short circuit in mind, with the current of that. */
    private static String fuseLevel(Setting it, List<JsonNode> review, JsonNode fuse) throws IOException {
        for (JsonNode finding : review) {
            JsonNode shortA = finding.at("/arguments/overloadA");
            if (finding.path("code").asText().equals("fuse-too-large") && shortA.isNumber()) {
                JsonNode inShort = result(
                                "/v1/fuse",
                                "size=" + it.size(),
                                "currentA=" + it.currentA(),
                                "ratingA=" + it.fuseA(),
                                "prospectiveA=" + shortA.asDouble(),
                                "bundleFactors=true",
                                it.where())
                        .path("findings");
                return level(StreamSupport.stream(inShort.spliterator(), false).toList(), "fuse-too-large");
            }
        }
        return fuse.at("/fitted/wire").asText();
    }

    /** The size that a finding names is fitted: the finding is gone. */
    private static void remedied(Setting it, List<JsonNode> review) throws IOException {
        for (JsonNode finding : review) {
            JsonNode size = finding.at("/remedy/arguments/size");
            if (finding.path("code").asText().equals("wire-overloaded") && size.isTextual()) {
                assertThat(level(review(it.plan(size.asText())), "wire-overloaded"))
                        .as(it + " with " + size)
                        .isEqualTo("fits");
            }
        }
    }

    /** The size that is chosen fits wherever it is asked about, with the fuse that was named; 0 where none will do. */
    private static int sized(Setting it) throws IOException {
        JsonNode chosen = result(
                "/v1/conductor-size",
                "system=metric-iso6722",
                "circuit=" + it.circuit(),
                "bundleFactors=true",
                it.run());
        JsonNode circuit = result("/v1/circuit", "load=" + it.load(), it.run());
        String size = chosen.path("size").asText();
        if (size.isEmpty()) {
            return 0;
        }
        JsonNode drop = it.drop(size);
        assertThat(drop.at("/verdict/level").asText())
                .as(it + " drop of " + size)
                .isEqualTo("fits");
        assertThat(drop.at("/wireVerdict/level").asText()).as(it + " " + size).isEqualTo("fits");
        assertThat(it.fuse(size).path("ratingA").asDouble())
                .as(it + " fuse of " + size)
                .isEqualTo(chosen.at("/smallest/fuseA").asDouble());
        boolean surges = List.of("headlamps", "lamps").contains(it.load());
        JsonNode ofCircuit = circuit.path("smallest");
        if (surges) {
            assertThat(ofCircuit.path("areaMm2").asDouble())
                    .as(it.toString())
                    .isGreaterThanOrEqualTo(chosen.at("/smallest/areaMm2").asDouble());
        } else {
            assertThat(ofCircuit.path("size").asText()).as(it.toString()).isEqualTo(size);
            assertThat(ofCircuit.path("fuseA").asDouble())
                    .as(it.toString())
                    .isEqualTo(chosen.at("/smallest/fuseA").asDouble());
        }
        assertThat(ofCircuit.at("/drop/level").asText()).as(it.toString()).isEqualTo("fits");
        return 1;
    }
}
