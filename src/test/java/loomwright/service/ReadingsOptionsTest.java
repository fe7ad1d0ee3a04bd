package loomwright.service;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.everyItem;
import static org.hamcrest.Matchers.greaterThan;
import static org.hamcrest.Matchers.hasSize;

import io.restassured.response.ValidatableResponse;
import org.junit.jupiter.api.Test;

/** The sheet of readings takes the plan as its body and what is wanted of it from the query. */
class ReadingsOptionsTest {
    private static final String PLAN =
            LiveService.ask().get("/v1/examples/sandpiper-as-built").asString();

    private static ValidatableResponse readings(String query, String body) {
        return LiveService.ask()
                .contentType("application/json")
                .body(body)
                .post("/v1/plans/readings" + query)
                .then();
    }

    @Test
    void conditionsLoadAndTolerancesAreOptions() {
        readings("?conditions=run&load=head-left&tolerances=W1:10,F1:5&meterAccuracyPercent=2", PLAN)
                .statusCode(200)
                .body("result.readings.findAll { it.quantity == 'volts' }.size()", greaterThan(0))
                .body("result.readings.findAll { it.quantity == 'volts' }.condition", everyItem(equalTo("run")));
    }

    @Test
    void aWiderToleranceWidensWhatIsExpected() {
        assertThat(highest("?conditions=run&tolerancePercent=30"))
                .isGreaterThan(highest("?conditions=run&tolerancePercent=1"));
    }

    /** The highest ohms that are expected, all together. */
    private static double highest(String query) {
        return readings(query, PLAN)
                .statusCode(200)
                .extract()
                .jsonPath()
                .getDouble("result.readings.findAll { it.unit == 'ohm' && it.shows == 'figure' }.highest.sum()");
    }

    @Test
    void aToleranceThatCannotBeReadIsNamed() {
        readings("?tolerances=W1:10,head-left", PLAN)
                .statusCode(greaterThan(399))
                .body("errors", hasSize(1))
                .body("errors[0].code", equalTo("malformed"))
                .body("errors[0].value", equalTo("head-left"));
        readings("?tolerances=W999:10", PLAN).statusCode(422).body("errors[0].code", equalTo("unknown-reference"));
    }

    @Test
    void aWrappedPlanIsOneFault() {
        readings("", "{\"plan\": " + PLAN + "}")
                .statusCode(400)
                .body("errors", hasSize(1))
                .body("errors[0].code", equalTo("wrong-shape"));
    }
}
