package loomwright.service;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.InputStream;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;

/** One case, one verdict, one limit, one size, whichever operation is asked. */
class JudgementCasesTest {
    private static final ObjectMapper MAPPER = new ObjectMapper();
    private static final List<String> LEVELS = List.of("none", "note", "warning", "danger");

    /** A path, after a blank the body of a POST. */
    private static JsonNode ask(String request) throws IOException {
        int blank = request.indexOf(' ');
        var response = blank < 0
                ? LiveService.ask().urlEncodingEnabled(false).get(request)
                : LiveService.ask()
                        .contentType("application/json")
                        .body(request.substring(blank + 1))
                        .post(request.substring(0, blank));
        assertThat(response.statusCode()).as(response.asString()).isEqualTo(200);
        return MAPPER.readTree(response.asByteArray());
    }

    @ParameterizedTest(name = "{0}: {1}: {2} is {3}")
    @CsvFileSource(
            resources = "/judgement/cases.csv",
            delimiter = ';',
            quoteCharacter = '`',
            numLinesToSkip = 3,
            maxCharsPerColumn = 10_000)
    void aCaseIsJudgedAlikeEverywhere(String name, String request, String pointer, String expected) throws IOException {
        JsonNode found = ask(request).at(pointer);
        if (expected.startsWith("finding:")) {
            assertThat(findings(found)).contains(expected.substring("finding:".length()));
        } else if (expected.startsWith("no:")) {
            assertThat(found.toString()).doesNotContain('"' + expected.substring("no:".length()) + '"');
        } else if (expected.startsWith("worst:")) {
            assertThat(worst(found)).as(found.toString()).isEqualTo(expected.substring("worst:".length()));
        } else if (expected.contains("..")) {
            String[] ends = expected.split("\\.\\.", 2);
            assertThat(found.isNumber()).as(pointer).isTrue();
            assertThat(found.asDouble()).isBetween(Double.valueOf(ends[0]), Double.valueOf(ends[1]));
        } else {
            assertThat(found.asText()).isEqualTo(expected);
        }
    }

    private static List<String> findings(JsonNode findings) {
        return StreamSupport.stream(findings.spliterator(), false)
                .map(f -> f.path("code").asText() + "=" + f.path("severity").asText())
                .toList();
    }

    private static String worst(JsonNode findings) {
        return StreamSupport.stream(findings.spliterator(), false)
                .map(f -> f.path("severity").asText())
                .reduce("none", (a, b) -> LEVELS.indexOf(a) >= LEVELS.indexOf(b) ? a : b);
    }

    /** Of the rule book's list, those that are plans; {@link JudgementPlansTest} asks them. */
    private static final Set<String> PLANS = Set.of(
            "budget-split",
            "dim-headlamp",
            "led-by-current",
            "drain-60Ah",
            "charging-shows-charge",
            "no-diode-in-charge-wire");

    /**
     * The rule book's whole list. What cannot be asked: kilovolts of a plan, which knows no plug gap; a bypass that stays on of
     * {@code /v1/ballast}, {@code /v1/ballast-choice} and {@code /v1/coil-choice}, which bypass while cranking alone; the
     * cranking current of a starter cable of {@code /v1/fuse}, because it has none; ambient and bundle of {@code /v1/spark} and
     * {@code /v1/ballast}.
     */
    @Test
    void everyCaseOfTheListIsAsked() throws IOException {
        Set<String> asked = new TreeSet<>(PLANS);
        try (InputStream cases = JudgementCasesTest.class.getResourceAsStream("/judgement/cases.csv")) {
            new String(Objects.requireNonNull(cases).readAllBytes(), UTF_8)
                    .lines()
                    .skip(3)
                    .map(line -> line.substring(0, line.indexOf(';')))
                    .forEach(asked::add);
        }
        assertThat(asked)
                .contains(
                        "size-17.5A-metric",
                        "size-60A-charge-AWG",
                        "thin-1A-panel-lamp",
                        "cliff-0.75-against-18AWG",
                        "bundle-14A-loom",
                        "ambient-law-70C",
                        "drop-headlamps",
                        "starter-200A",
                        "budget-split",
                        "fuse-10A-1.5mm2",
                        "two-55W-lamps",
                        "fuse-too-large",
                        "default-says-so",
                        "direct-coil-behind-ballast",
                        "0.6-ohm-on-points",
                        "1.3-ohm-on-12V",
                        "24V-coil",
                        "ballast-steps",
                        "bypass-left-on",
                        "kv-band",
                        "dim-headlamp",
                        "led-by-current",
                        "drain-60Ah",
                        "charging-shows-charge",
                        "no-diode-in-charge-wire");
    }

    /** Square root of the rise that is left: factors of IEC 60364-5-52 for PVC at 40, 50 and 60 degrees. */
    @Test
    void ampacityFallsWithTheAmbientAsTheStandardSays() throws IOException {
        double[] factors = {1, 0.87, 0.71, 0.50};
        double at30 = 0;
        for (int i = 0; i < factors.length; i++) {
            double allowedA = ask("/v1/fuse?currentA=10&size=2.5%20mm2&insulationC=70&ambientC=" + (30 + 10 * i))
                    .at("/result/allowedA")
                    .asDouble();
            at30 = i == 0 ? allowedA : at30;
            assertThat(allowedA / at30).isBetween(factors[i] - 0.02, factors[i] + 0.02);
        }
    }
}
