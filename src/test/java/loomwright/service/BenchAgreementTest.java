package loomwright.service;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import java.util.stream.StreamSupport;
import loomwright.judgement.ignition.IgnitionMistake;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Which coil suits is what /v1/spark says of each: one judge. */
class BenchAgreementTest {
    private static final ObjectMapper MAPPER = new ObjectMapper();
    private static final List<String> MISTAKES = Stream.of(IgnitionMistake.Kind.values())
            .map(IgnitionMistake.Kind::code)
            .toList();

    private static JsonNode result(String request) throws IOException {
        var response = LiveService.ask().get(request);
        assertThat(response.statusCode()).as(response.asString()).isEqualTo(200);
        return MAPPER.readTree(response.asByteArray()).path("result");
    }

    /** What is wrong with a coil, leaving out what its heat while running adds. */
    private static List<String> ofSpark(double coilOhm, String around) throws IOException {
        JsonNode findings = result(String.format(
                        Locale.ROOT,
                        "/v1/spark?speedRpm=3000&supplyV=14.2&primaryResistanceOhm=%s&%s",
                        coilOhm,
                        around))
                .path("findings");
        return StreamSupport.stream(findings.spliterator(), false)
                .map(f -> f.path("code").asText())
                .filter(MISTAKES::contains)
                .toList();
    }

    @ParameterizedTest
    @CsvSource({
        "ballastOhm=1.5, ballastResistanceOhm=1.5&switchedBy=contact-breaker",
        "ballastOhm=0, switchedBy=contact-breaker",
        "ballastOhm=0.5, ballastResistanceOhm=0.5&switchedBy=contact-breaker",
        "switchedBy=module&moduleLimitA=7, switchedBy=module&currentLimitA=7"
    })
    void aCoilSuitsWhereSparkFindsNothing(String choice, String spark) throws IOException {
        JsonNode answer = result("/v1/coil-choice?" + choice);
        for (JsonNode kind : answer.path("kinds")) {
            List<String> mistakes = StreamSupport.stream(kind.path("mistakes").spliterator(), false)
                    .map(JsonNode::asText)
                    .toList();
            List<String> found = ofSpark(kind.path("primaryOhm").asDouble(), spark);
            assertThat(found).as(kind.toString()).containsAll(mistakes);
            assertThat(found.isEmpty()).as(kind.toString()).isEqualTo(mistakes.isEmpty());
        }
        for (JsonNode range : answer.path("suitable")) {
            double fromOhm = range.path("fromOhm").asDouble();
            double toOhm = range.path("toOhm").asDouble();
            assertThat(ofSpark((fromOhm + toOhm) / 2, spark))
                    .as(range.toString())
                    .isEmpty();
            if (fromOhm > 0.25) {
                assertThat(ofSpark(0.95 * fromOhm, spark)).as(range.toString()).isNotEmpty();
            }
            if (toOhm < 18) {
                assertThat(ofSpark(1.05 * toOhm, spark)).as(range.toString()).isNotEmpty();
            }
        }
    }
}
