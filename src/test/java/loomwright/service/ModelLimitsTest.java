package loomwright.service;

import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.nullValue;

import io.restassured.response.ValidatableResponse;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Where no published law is known, the answer that rests on another says so. */
class ModelLimitsTest {
    private static ValidatableResponse post(String path, String construction, String load) {
        return LiveService.ask()
                .contentType("application/json")
                .body(("{'schema':'loomwright/plan/1','name':'Heater','system':{'nominalVoltageV':12},'parts':["
                                + "{'kind':'battery','id':'battery'},{'kind':'earth','id':'body'},"
                                + "{'kind':'fuse','id':'F1','ratingA':16,'construction':'" + construction + "'},"
                                + "{'kind':'load','id':'plug'," + load + "}],"
                                + "'wires':[{'id':'W1','from':'battery.minus','to':'body.31','resistanceOhm':0.001},"
                                + "{'id':'W2','from':'battery.plus','to':'F1.a','resistanceOhm':0.005},"
                                + "{'id':'W3','from':'F1.b','to':'plug.a','resistanceOhm':0.005},"
                                + "{'id':'W4','from':'plug.b','to':'body.31','resistanceOhm':0.005}]}")
                        .replace('\'', '"'))
                .post(path)
                .then()
                .statusCode(200);
    }

    @ParameterizedTest
    @CsvSource({
        "/v1/plans/review, ceramic",
        "/v1/plans/review, self-resetting",
        "/v1/plans/mistakes, ceramic",
    })
    void aCeramicFuseAndABreakerOpenAsBladeFusesDoForWantOfTimes(String path, String construction) {
        post(path, construction, "'resistanceOhm':1.1")
                .body("assumptions.find { it.code == 'opening-times-unknown' }.ids", hasSize(1))
                .body("assumptions.find { it.code == 'opening-times-unknown' }.assumed.construction", equalTo("blade"));
    }

    @ParameterizedTest
    @ValueSource(strings = {"blade", "glass", "bolt-down"})
    void aFuseWithTimesOfItsOwnDoesNot(String construction) {
        post("/v1/plans/review", construction, "'resistanceOhm':1.1")
                .body("assumptions.find { it.code == 'opening-times-unknown' }", nullValue());
    }

    /** Of a battery whose charge is stated to be low, unless the plan says its resistance. */
    @ParameterizedTest
    @CsvSource({"30, '', 1", "80, '', 0", "30, ',\"internalResistanceOhm\":0.05', 0"})
    void aLowBatterySagsMoreThanItIsKnownBy(int percent, String ohm, int said) {
        String plan = ("{'schema':'loomwright/plan/1','name':'Lamp','system':{'nominalVoltageV':12},'parts':["
                        + "{'kind':'battery','id':'battery','stateOfChargePercent':" + percent + ohm + "},"
                        + "{'kind':'earth','id':'body'},{'kind':'lamp','id':'lamp','ratedV':12,'ratedW':21}],"
                        + "'wires':[{'id':'W1','from':'battery.minus','to':'body.31','resistanceOhm':0.001},"
                        + "{'id':'W2','from':'battery.plus','to':'lamp.a','resistanceOhm':0.005},"
                        + "{'id':'W3','from':'lamp.b','to':'body.31','resistanceOhm':0.005}]}")
                .replace('\'', '"');
        for (String path : List.of("/v1/plans/solution", "/v1/plans/review")) {
            LiveService.ask()
                    .contentType("application/json")
                    .body(plan)
                    .post(path)
                    .then()
                    .statusCode(200)
                    .body("assumptions.findAll { it.code == 'low-battery-resistance-unknown' }", hasSize(said));
        }
    }

    @Test
    void aLoadThatWarmsIsSolvedInTwoStatesAndSaysSo() {
        post("/v1/plans/solution", "blade", "'resistanceOhm':1.1,'switchOnOhm':0.55")
                .body("assumptions.find { it.code == 'warming-unknown' }.ids", equalTo(List.of("plug")));
        post("/v1/plans/solution", "blade", "'resistanceOhm':1.1")
                .body("assumptions.find { it.code == 'warming-unknown' }", nullValue());
    }
}
