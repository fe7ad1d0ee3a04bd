package loomwright.service;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/**
 * Every operation that can judge a primary circuit is asked about the same 500 of them: the same mistakes, as serious, with the same
 * remedies. Each remedy is applied and judged again.
 */
class OneIgnitionJudgeTest {
    private static final int SETTINGS = 500;
    private static final ObjectMapper MAPPER = new ObjectMapper();
    /** What the figures of the primary circuit say; others know more, such as the spark. */
    private static final Set<String> MISTAKES = Set.of(
            "bypass-left-on",
            "no-current-limit",
            "coil-overheats",
            "ballast-too-small",
            "ballast-too-large",
            "coil-weak",
            "contact-overloaded",
            "module-overloaded",
            "limit-not-reached",
            "coil-of-little-use");

    private static final List<String> SEVERITIES = List.of("note", "warning", "danger");

    private final Random random = new Random(19);

    /** A coil with what feeds and switches it; 6, 12 or 24 V with a supply in proportion. */
    private record Setting(
            int nominalV,
            double coilOhm,
            double ballastOhm,
            boolean bypassed,
            boolean module,
            @Nullable Double limitA) {
        double supplyV() {
            return 14.2 * nominalV / 12;
        }

        /** As /v1/spark and each side of /v1/ignition-change take it. */
        Map<String, Object> spark() {
            return spark(1);
        }

        /** The same with another supply, as a share of the usual. */
        Map<String, Object> spark(double supplyShare) {
            Map<String, Object> question = new TreeMap<>(Map.of(
                    "speedRpm",
                    1500,
                    "nominalVoltageV",
                    nominalV,
                    "supplyV",
                    supplyShare * supplyV(),
                    "primaryResistanceOhm",
                    coilOhm,
                    "feedResistanceOhm",
                    0.08,
                    "dropV",
                    module ? 1.2 : 0,
                    "switchedBy",
                    module ? "module" : "contact-breaker"));
            if (ballastOhm > 0) {
                question.put("ballastResistanceOhm", ballastOhm);
                question.put("bypassed", bypassed);
            }
            if (limitA == null) {
                // A share of 0.6 with four cylinders, as /v1/ballast takes it.
                question.put("dwellDegrees", 54);
            }
            if (limitA != null) {
                question.put("currentLimitA", limitA);
            }
            return question;
        }

        /** As a plan: the same resistances between battery and earth, 0.0015 ohm in the key and 0.03 in the points, on the same supply. */
        String plan() {
            String last = module ? "'from':'coil.1','to':'module.1'" : "'from':'coil.1','to':'points.1'";
            return ("{'schema':'loomwright/plan/1','name':'grid','system':{'nominalVoltageV':" + nominalV
                            + "},'conditions':{'running':{'emfV':" + supplyV()
                            + ",'internalResistanceOhm':0}},'parts':["
                            + "{'kind':'battery','id':'battery'},{'kind':'earth','id':'body'},"
                            + "{'kind':'switch','id':'key','terminals':['30','15'],'positions':[{'name':'off','joins':[]},"
                            + "{'name':'on','joins':[['30','15']]}],'positionByCondition':"
                            + "{'off':'off','accessory':'off','run':'on','crank':'on','running':'on'}},"
                            + "{'kind':'coil','id':'coil','primaryResistanceOhm':" + coilOhm
                            + ",'meantLive':['run','crank','running']},"
                            + (module
                                    ? "{'kind':'module','id':'module','saturationV':1.2"
                                            + (limitA == null ? "" : ",'limitA':" + limitA) + "}"
                                    : "{'kind':'contact-breaker','id':'points'}")
                            + (ballastOhm > 0
                                    ? ",{'kind':'ballast','id':'ballast','elementsOhm':[" + ballastOhm + "]}"
                                    : "")
                            + "],'wires':["
                            + wire("W0", "battery.minus", "body.31", 1e-6)
                            + "," + wire("W1", "battery.plus", "key.30", module ? 0.0385 : 0.0085)
                            + (ballastOhm > 0
                                    ? "," + wire("W2", "key.15", "ballast.a", 0.04) + ","
                                            + wire("W3", "ballast.b", "coil.15", 1e-6)
                                            + (bypassed ? "," + wire("W4", "ballast.a", "ballast.b", 1e-6) : "")
                                    : "," + wire("W2", "key.15", "coil.15", 0.04))
                            + ",{'id':'W5'," + last + ",'resistanceOhm':1e-6}"
                            + (module
                                    ? "," + wire("W6", "module.31", "body.31", 1e-6) + ","
                                            + wire("W7", "key.15", "module.15", 1e-6)
                                    : "," + wire("W6", "points.31", "body.31", 1e-6))
                            + "]}")
                    .replace('\'', '"');
        }

        private static String wire(String id, String from, String to, double ohm) {
            return "{'id':'" + id + "','from':'" + from + "','to':'" + to + "','resistanceOhm':" + ohm + "}";
        }

        /** As /v1/ballast and /v1/ballast-choice take it, which know no bypass that stays on. */
        String ballast() {
            return "nominalVoltageV=" + nominalV + "&coilPrimaryOhm=" + coilOhm + "&feedResistanceOhm="
                    + (module ? 0.08 : 0.05)
                    + (module ? "&moduleDropV=1.2" : "&contactBreakerOhm=0.03")
                    + (limitA == null ? "" : "&moduleLimitA=" + limitA);
        }
    }

    private Setting setting() {
        int nominalV = List.of(12, 12, 12, 6, 24).get(random.nextInt(5));
        double scale = nominalV == 6 ? 0.5 : nominalV == 24 ? 3.3 : 1;
        boolean module = random.nextInt(3) == 0;
        return new Setting(
                nominalV,
                rounded(scale * (0.3 + 4.2 * random.nextDouble())),
                random.nextInt(3) == 0 ? 0 : rounded(scale * (0.1 + 2.2 * random.nextDouble())),
                random.nextInt(6) == 0,
                module,
                module && random.nextBoolean() ? 4.0 + random.nextInt(5) : null);
    }

    private static double rounded(double value) {
        return Math.round(100 * value) / 100.0;
    }

    private static JsonNode get(String request) throws IOException {
        var response = LiveService.ask().urlEncodingEnabled(false).get(request);
        assertThat(response.statusCode())
                .as(request + " " + response.asString())
                .isEqualTo(200);
        return MAPPER.readTree(response.asByteArray()).path("result");
    }

    private static JsonNode spark(Map<String, Object> question) throws IOException {
        List<String> query = new ArrayList<>();
        question.forEach((name, value) -> query.add(name + "=" + value));
        return get("/v1/spark?" + String.join("&", query));
    }

    private static JsonNode change(Map<String, Object> side) throws IOException {
        var response = LiveService.ask()
                .contentType("application/json")
                .body(MAPPER.writeValueAsString(Map.of("before", side, "after", side)))
                .post("/v1/ignition-change");
        assertThat(response.statusCode()).as(response.asString()).isEqualTo(200);
        return MAPPER.readTree(response.asByteArray()).path("result");
    }

    /** Code, severity and remedy of each mistake, the figures left out: these may differ by the warmth of the coil. */
    private static Map<String, String> mistakes(JsonNode result) {
        Map<String, String> mistakes = new TreeMap<>();
        for (JsonNode finding : result.path("findings")) {
            if (MISTAKES.contains(finding.path("code").asText())) {
                mistakes.put(
                        finding.path("code").asText(),
                        finding.path("severity").asText() + " "
                                + finding.at("/remedy/text").asText());
            }
        }
        return mistakes;
    }

    private static int worst(Map<String, String> mistakes) {
        return mistakes.values().stream()
                .mapToInt(text -> SEVERITIES.indexOf(text.split(" ", 2)[0]))
                .max()
                .orElse(-1);
    }

    @Test
    void onePrimaryCircuitOneJudgementInEveryOperation() throws IOException {
        int judged = 0;
        int faulty = 0;
        int remedied = 0;
        for (int i = 0; i < SETTINGS; i++) {
            Setting it = setting();
            JsonNode spark = spark(it.spark());
            Map<String, String> mistakes = mistakes(spark);
            JsonNode change = change(it.spark());
            assertThat(mistakes(change.path("after"))).as("%s: after", it).isEqualTo(mistakes);
            // A note that stood before as well is no news of the change; what is more serious is said again.
            mistakes.values().removeIf(text -> text.startsWith("note"));
            assertThat(mistakes(change))
                    .as("%s: a change that changes nothing", it)
                    .isEqualTo(mistakes);
            mistakes = mistakes(spark);
            if (!it.bypassed() || it.ballastOhm() == 0) {
                String elements = it.ballastOhm() > 0 ? "&elementsOhm=" + it.ballastOhm() : "";
                JsonNode ballast = get("/v1/ballast?" + it.ballast() + elements);
                assertThat(mistakes(ballast)).as("%s: ballast", it).isEqualTo(mistakes);
                if (it.ballastOhm() > 0) {
                    JsonNode choice = get("/v1/ballast-choice?" + it.ballast() + "&ballastOhm=" + it.ballastOhm());
                    assertThat(mistakes(choice)).as("%s: choice", it).isEqualTo(mistakes);
                    assertThat(choice.path("feedNeed"))
                            .as("%s: wire and fuse", it)
                            .isEqualTo(ballast.path("feedNeed"))
                            .isNotEmpty();
                    assertThat(SEVERITIES.indexOf(choice.at("/exact/level").asText()))
                            .as("%s: level", it)
                            .isEqualTo(worst(mistakes));
                }
                judged++;
            }
            reviewed(it, mistakes);
            faulty += mistakes.isEmpty() ? 0 : 1;
            remedied += remedied(it, spark);
        }
        assertThat(judged).isGreaterThan(SETTINGS * 2 / 3);
        assertThat(faulty).isBetween(SETTINGS / 3, SETTINGS * 19 / 20);
        assertThat(remedied).isGreaterThan(SETTINGS / 2);
    }

    /**
     * The review of a plan with the same resistances names the same mistakes, as serious; where a figure is so close to a limit that
     * two hundredths of the supply decide, either. It judges contacts beside what overloads them, and has the same remedy for both.
     */
    private static void reviewed(Setting it, Map<String, String> mistakes) throws IOException {
        var response = LiveService.ask()
                .contentType("application/json")
                .body(it.plan())
                .post("/v1/plans/review");
        assertThat(response.statusCode()).as(response.asString()).isEqualTo(200);
        Map<String, String> review =
                mistakes(MAPPER.readTree(response.asByteArray()).path("result"));
        String contacts = review.get("contact-overloaded");
        if (contacts != null && !mistakes.containsKey("contact-overloaded") && !mistakes.isEmpty()) {
            review.remove("contact-overloaded");
            assertThat(review.values())
                    .as("%s: one cure", it)
                    .allMatch(text -> cure(text).isEmpty() || cure(text).equals(cure(contacts)));
        }
        List<Map<String, String>> close = new ArrayList<>(List.of(severities(mistakes)));
        for (double supplyShare : List.of(0.98, 1.02)) {
            close.add(severities(mistakes(spark(it.spark(supplyShare)))));
        }
        assertThat(severities(review)).as("%s: review", it).isIn(close);
    }

    private static String cure(String text) {
        return text.split(" ", 2)[1];
    }

    private static Map<String, String> severities(Map<String, String> mistakes) {
        Map<String, String> severities = new TreeMap<>(mistakes);
        severities.replaceAll((code, text) -> text.split(" ", 2)[0]);
        return severities;
    }

    /** Each remedy of each mistake is carried out: what is left is less serious. */
    private static int remedied(Setting it, JsonNode spark) throws IOException {
        int tried = 0;
        for (JsonNode finding : spark.path("findings")) {
            if (!MISTAKES.contains(finding.path("code").asText())) {
                continue;
            }
            for (JsonNode remedy : choices(finding.path("remedy"))) {
                Map<String, String> left = mistakes(spark(cured(it, remedy).spark()));
                assertThat(worst(left))
                        .as("%s: %s cured by %s leaves %s", it, finding.path("text"), remedy.path("text"), left)
                        .isLessThan(SEVERITIES.indexOf(finding.path("severity").asText()));
                tried++;
            }
        }
        return tried;
    }

    private static List<JsonNode> choices(JsonNode remedy) {
        if (remedy.isMissingNode() || remedy.isNull()) {
            return List.of();
        } else if (!remedy.path("code").asText().equals("choice")) {
            return List.of(remedy);
        }
        List<JsonNode> all = new ArrayList<>(choices(remedy.at("/arguments/first")));
        all.addAll(choices(remedy.at("/arguments/other")));
        return all;
    }

    private static Setting cured(Setting it, JsonNode remedy) {
        double ohm = remedy.at("/arguments/resistanceOhm").asDouble();
        return switch (remedy.path("code").asText()) {
            case "free-bypass" ->
                new Setting(it.nominalV(), it.coilOhm(), it.ballastOhm(), false, it.module(), it.limitA());
            case "remove-ballast" -> new Setting(it.nominalV(), it.coilOhm(), 0, false, it.module(), it.limitA());
            case "fit-ballast" -> new Setting(it.nominalV(), it.coilOhm(), ohm, false, it.module(), it.limitA());
            case "fit-coil" -> new Setting(it.nominalV(), ohm, 0, false, it.module(), it.limitA());
            case "fit-coil-and-ballast" -> new Setting(it.nominalV(), ohm, ohm, false, it.module(), it.limitA());
            case "fit-limiting-module" -> new Setting(it.nominalV(), it.coilOhm(), 0, false, true, 6.0);
            default -> throw new AssertionError("unknown remedy " + remedy);
        };
    }
}
