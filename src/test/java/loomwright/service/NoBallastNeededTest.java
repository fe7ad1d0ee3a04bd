package loomwright.service;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.util.Locale;
import org.junit.jupiter.api.Test;

/** Which ballast, asked over HTTP: none for a coil that needs none. */
class NoBallastNeededTest {
    private static final ObjectMapper MAPPER = new ObjectMapper();

    private static JsonNode get(String request) throws IOException {
        var response = LiveService.ask().urlEncodingEnabled(false).get(request);
        assertThat(response.statusCode())
                .as(request + " " + response.asString())
                .isEqualTo(200);
        return MAPPER.readTree(response.asByteArray()).path("result");
    }

    /** A coil of 3 ohm is best without a ballast: that comes first, then what a ballast would do to it. */
    @Test
    void aCoilThatNeedsNoBallastIsAnsweredWithThatFirst() throws IOException {
        JsonNode direct = get("/v1/ballast-choice?wantedCoilV=7.8&coilPrimaryOhm=3");
        assertThat(direct.path("needsBallast").asBoolean()).isFalse();
        assertThat(direct.at("/without/level").asText()).isEqualTo("fits");
        assertThat(direct.at("/without/coilV").asDouble()).isCloseTo(12.6 * 3 / 3.08, within(1e-7));
        assertThat(direct.at("/exact/level").asText()).isEqualTo("warning");
        String csv = LiveService.ask()
                .accept("text/csv")
                .get("/v1/ballast-choice?wantedCoilV=7.8&coilPrimaryOhm=3")
                .asString();
        assertThat(csv.lines().skip(1).findFirst().orElseThrow().toLowerCase(Locale.ROOT))
                .startsWith("none,0");
        assertThat(get("/v1/ballast-choice?wantedCoilV=7&coilPrimaryOhm=1.5").has("without"))
                .isFalse();
    }

    /** The module's limit is the edge of its coil's window: a coil that has it is not above. */
    @Test
    void aCoilAtTheLimitOfItsModuleIsWithinItsWindow() throws IOException {
        assertThat(get("/v1/ballast?coilPrimaryOhm=0.7&elementsOhm=0.8&moduleDropV=1&moduleLimitA=6")
                        .path("verdict")
                        .asText())
                .isEqualTo("within-window");
    }
}
