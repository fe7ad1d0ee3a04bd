package loomwright.service;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItems;
import static org.hamcrest.Matchers.nullValue;

import java.util.List;
import loomwright.service.limits.Options;
import loomwright.service.problem.ProblemType;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Input by query is the same input as by body, and as strict. */
class QueryTest {
    @ParameterizedTest(name = "{0}: {2} at {1}")
    @CsvSource(
            delimiter = ';',
            value = {
                "/v1/resistance; network; missing",
                "/v1/resistance?network=; network; missing",
                "/v1/resistance?network=1&network=2; network; duplicate",
                "/v1/resistance?network=1&netwrok=2; netwrok; unknown-name",
                "/v1/resistance?network=1&NETWORK=2; NETWORK; unknown-name",
                "/v1/resistance?network=1&acrossV=twelve; acrossV; wrong-type",
                "/v1/resistance?network=1&acrossV=1%2C234; acrossV; wrong-type",
                "/v1/resistance?network=1&acrossV=12%20A; acrossV; wrong-type",
                "/v1/resistance?network=1&acrossV=NaN; acrossV; wrong-type",
                "/v1/resistance?network=1&acrossV=0x10; acrossV; wrong-type",
                "/v1/resistance?network=1&acrossV=1e7; acrossV; out-of-range",
                "/v1/resistance?network=1&format=pdf; format; not-one-of"
            })
    void aFaultNamesItsParameter(String url, String parameter, String code) {
        LiveService.ask()
                .get(url)
                .then()
                .statusCode(400)
                .body("errors[0].parameter", equalTo(parameter))
                .body("errors[0].code", equalTo(code))
                .body("errors[0].pointer", nullValue());
    }

    /** A form sends its empty fields too. */
    @Test
    void anEmptyParameterIsLeftOut() {
        assertThat(LiveService.ask()
                        .get("/v1/resistance?network=4&acrossV=&format=text")
                        .asString())
                .isEqualTo(LiveService.ask()
                        .get("/v1/resistance?network=4&format=text")
                        .asString());
    }

    @ParameterizedTest
    @ValueSource(strings = {"12%2C5", "12.5%20V", "12%2C5%20volts"})
    void aDecimalCommaAndTheUnitAreRead(String written) {
        String plain = LiveService.ask()
                .get("/v1/resistance?network=4&acrossV=12.5&format=text")
                .asString();
        assertThat(LiveService.ask()
                        .get("/v1/resistance?network=4&acrossV=" + written + "&format=text")
                        .asString())
                .isEqualTo(plain);
    }

    @Test
    void moreDigitsThanANumberHoldsAreNone() {
        LiveService.ask()
                .get("/v1/resistance?network=4&acrossV=1" + "0".repeat(400))
                .then()
                .statusCode(400)
                .body("errors[0].parameter", equalTo("acrossV"));
    }

    @Test
    void allFaultsAreNamedAtOnce() {
        LiveService.ask()
                .get("/v1/resistance?acrossV=x&colour=red")
                .then()
                .statusCode(400)
                .body("errors.code", hasItems("missing", "wrong-type", "unknown-name"));
    }

    @Test
    void aNumberThatNoDoubleHoldsHasItsOwnType() {
        LiveService.ask()
                .get("/v1/resistance?network=1&acrossV=1e400")
                .then()
                .statusCode(400)
                .body("type", equalTo(ProblemType.NUMBER_TOO_LARGE.uri()));
    }

    @Test
    void whatCannotBeReadIsPointedAtByParameterOrPointer() {
        LiveService.ask()
                .get("/v1/resistance?network=1%2B")
                .then()
                .statusCode(422)
                .body("errors[0].parameter", equalTo("network"));
        LiveService.ask()
                .contentType("application/json")
                .body("{\"network\":\"1+\"}")
                .post("/v1/resistance")
                .then()
                .statusCode(422)
                .body("errors[0].pointer", equalTo("/network"));
    }

    @ParameterizedTest
    @ValueSource(strings = {"4+%2B+(6+%7C%7C+3)", "4+(6%7C%7C3)", "4%20(6%E2%88%A53)"})
    void aSpreadsheetCellGetsOneBareNumber(String network) {
        byte[] body = LiveService.ask()
                .get("/v1/resistance?network=" + network + "&format=text")
                .then()
                .statusCode(200)
                .header("Content-Type", "text/plain;charset=utf-8")
                .extract()
                .asByteArray();
        assertThat(body).asString().isEqualTo("6");
    }

    @Test
    void theFormParameterGoesBeforeTheHeader() {
        LiveService.ask()
                .accept("application/json")
                .get("/v1/resistance?network=1&format=csv")
                .then()
                .statusCode(200)
                .contentType("text/csv");
    }

    @Test
    void aFormThatThisAnswerDoesNotHaveIsNotAcceptable() {
        for (String form : List.of("svg", "png")) {
            LiveService.ask()
                    .get("/v1/resistance?network=1&format=" + form)
                    .then()
                    .statusCode(406);
        }
    }

    @Test
    void checkingEveryRequestChangesNoAnswer() {
        Options strict = Options.DEFAULT.withPort(0).withCheckEveryRequest(true);
        try (Server server = Server.start(strict)) {
            for (ContractExamples.Example example : ContractExamples.all()) {
                if (!example.body().isMissingNode()) {
                    String body = example.body().toString();
                    assertThat(post(server, example, body)).isEqualTo(post(null, example, body));
                }
            }
        }
    }

    private static String post(@Nullable Server server, ContractExamples.Example example, String body) {
        return (server == null ? LiveService.ask() : LiveService.ask(server))
                .header("X-Request-Id", "same")
                .contentType("application/json")
                .body(body)
                .post(example.operation().path())
                .asString();
    }
}
