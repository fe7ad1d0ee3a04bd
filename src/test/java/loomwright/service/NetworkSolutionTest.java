package loomwright.service;

import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.nullValue;

import io.restassured.response.ValidatableResponse;
import org.hamcrest.CustomTypeSafeMatcher;
import org.hamcrest.Matcher;
import org.junit.jupiter.api.Test;

/** Networks over HTTP: signs, names and findings. The figures themselves are tested with the solver. */
class NetworkSolutionTest {
    private static ValidatableResponse solve(String elements) {
        return LiveService.ask()
                .contentType("application/json")
                .body("{\"reference\":\"earth\",\"elements\":[" + elements + "]}")
                .post("/v1/networks/solution")
                .then()
                .statusCode(200);
    }

    /** A whole figure is read as an integer, so the type of number does not count. */
    private static Matcher<Number> near(double expected, double tolerance) {
        return new CustomTypeSafeMatcher<>(expected + " within " + tolerance) {
            @Override
            protected boolean matchesSafely(Number found) {
                return Math.abs(found.doubleValue() - expected) <= tolerance;
            }
        };
    }

    /** 12 V over 1 ohm inside and 5 ohm outside: 2 A, 10 V; the source delivers, so its current and power are negative. */
    @Test
    void theFirstNodeOfASourceIsPositive() {
        solve("""
                {"id":"b","kind":"voltage-source","between":["plus","earth"],"voltageV":12,"resistanceOhm":1},
                {"id":"r","kind":"resistor","between":["plus","earth"],"resistanceOhm":5}""")
                .body("result.nodes[1].voltageV", near(10, 1e-9))
                .body("result.elements[0].currentA", near(-2, 1e-9))
                .body("result.elements[0].powerW", near(-20, 1e-9))
                .body("result.elements[1].currentA", near(2, 1e-9));
    }

    /** 2 A from earth through the source to the node, then through 3 ohm back: 6 V. */
    @Test
    void aCurrentIsDrivenFromTheFirstNodeToTheSecond() {
        solve("""
                {"id":"i","kind":"current-source","between":["earth","n"],"currentA":2},
                {"id":"r","kind":"resistor","between":["n","earth"],"resistanceOhm":3}""").body("result.nodes[1].voltageV", near(6, 1e-9)).body("result.elements[0].powerW", near(-12, 1e-9));
    }

    /** The anode comes first: 12 V less 0.7 V over 1 ohm is 11.3 A one way, nothing the other. */
    @Test
    void aDiodeConductsFromTheFirstNodeToTheSecond() {
        String source = """
                {"id":"b","kind":"voltage-source","between":["plus","earth"],"voltageV":12},
                {"id":"r","kind":"resistor","between":["k","earth"],"resistanceOhm":1},""";
        solve(source + "{\"id\":\"d\",\"kind\":\"diode\",\"between\":[\"plus\",\"k\"],\"forwardV\":0.7}")
                .body("result.elements[2].currentA", near(11.3, 1e-6));
        solve(source + "{\"id\":\"d\",\"kind\":\"diode\",\"between\":[\"k\",\"plus\"],\"forwardV\":0.7}")
                .body("result.elements[2].currentA", near(0, 1e-9));
    }

    /** A lamp at its rated voltage takes its rated power, by definition. */
    @Test
    void aLampAtItsRatedVoltageTakesItsRatedPower() {
        solve("""
                {"id":"b","kind":"voltage-source","between":["plus","earth"],"voltageV":12},
                {"id":"l","kind":"lamp","between":["plus","earth"],"ratedV":12,"ratedW":21},
                {"id":"p","kind":"power-load","between":["plus","earth"],"powerW":60,"minimumV":9}""")
                .body("result.elements[1].powerW", near(21, 1e-6))
                .body("result.elements[2].currentA", near(5, 1e-6))
                .body("basis.status", hasItem("common-practice"));
    }

    @Test
    void anOpenSwitchToNowhereHasNoVoltage() {
        solve("""
                {"id":"b","kind":"voltage-source","between":["plus","earth"],"voltageV":12},
                {"id":"r","kind":"resistor","between":["plus","earth"],"resistanceOhm":1},
                {"id":"s","kind":"switch","between":["plus","x"],"closed":false}""").body("result.elements[2].voltageV", nullValue()).body("result.findings.code", hasItem("floating"));
    }

    /** Two sources in series that hang on nothing still have volts between their ends. */
    @Test
    void whatFloatsTogetherHasVoltsWithoutACurrent() {
        solve("""
                {"id":"r","kind":"resistor","between":["x","earth"],"resistanceOhm":1},
                {"id":"one","kind":"voltage-source","between":["a","b"],"voltageV":12},
                {"id":"two","kind":"voltage-source","between":["b","c"],"voltageV":6}""")
                .body("result.elements[1].voltageV", near(12, 1e-9))
                .body("result.elements[2].voltageV", near(6, 1e-9));
    }

    /** Wheatstone's bridge, all 1 ohm but one arm of 2 ohm: 13/11 ohm, from memory. */
    @Test
    void aBridgeIsExplainedByAStarDeltaStep() {
        solve(BRIDGE)
                .body("result.equivalent.source", equalTo("b"))
                .body("result.equivalent.method", equalTo("star-delta"))
                .body("result.equivalent.totalOhm", near(13.0 / 11, 1e-6))
                .body("result.equivalent.steps.rule", hasItem("star-delta"))
                .body("result.elements[0].currentA", near(-12 * 11 / 13.0, 1e-6))
                .body("working.code", hasItem("reduced"));
    }

    private static final String BRIDGE = """
            {"id":"b","kind":"voltage-source","between":["plus","earth"],"voltageV":12},
            {"id":"r1","kind":"resistor","between":["plus","x"],"resistanceOhm":1},
            {"id":"r2","kind":"resistor","between":["plus","y"],"resistanceOhm":1},
            {"id":"r3","kind":"resistor","between":["x","y"],"resistanceOhm":1},
            {"id":"r4","kind":"resistor","between":["x","earth"],"resistanceOhm":1},
            {"id":"r5","kind":"resistor","between":["y","earth"],"resistanceOhm":2}""";

    @Test
    void whereThereAreOtherElementsNothingIsTakenTogether() {
        solve(BRIDGE + ",{\"id\":\"l\",\"kind\":\"lamp\",\"between\":[\"plus\",\"earth\"],\"ratedV\":12,\"ratedW\":21}")
                .body("result.equivalent", nullValue());
        solve(BRIDGE + ",{\"id\":\"c\",\"kind\":\"voltage-source\",\"between\":[\"z\",\"earth\"],\"voltageV\":6}")
                .body("result.equivalent", nullValue());
    }

    @Test
    void sourcesThatContradictAreAFindingAndNotAnError() {
        solve("""
                {"id":"a","kind":"voltage-source","between":["plus","earth"],"voltageV":12},
                {"id":"b","kind":"voltage-source","between":["plus","earth"],"voltageV":6}""")
                .body("result.solved", equalTo(false))
                .body("result.findings[0].code", equalTo("conflicting-sources"))
                .body("result.findings[0].elementIds", hasItem("a"));
    }

    @Test
    void aContactTooGoodToCalculateWithIsPointedAt() {
        LiveService.ask()
                .contentType("application/json")
                .body("""
                        {"reference":"b","elements":[
                        {"id":"s","kind":"switch","between":["a","b"],"closed":true,"contactOhm":1e-12}]}""")
                .post("/v1/networks/solution")
                .then()
                .statusCode(422)
                .body("errors.pointer", hasItem("/elements/0/contactOhm"));
    }

    @Test
    void namesThatDoNotFitArePointedAt() {
        LiveService.ask()
                .contentType("application/json")
                .body("""
                        {"reference":"ground","elements":[
                        {"id":"r","kind":"resistor","between":["a","a"],"resistanceOhm":1},
                        {"id":"r","kind":"resistor","between":["a","b"],"resistanceOhm":1e-10}]}""")
                .post("/v1/networks/solution")
                .then()
                .statusCode(422)
                .body("errors.pointer", hasItem("/reference"))
                .body("errors.pointer", hasItem("/elements/0/between/1"))
                .body("errors.pointer", hasItem("/elements/1/id"))
                .body("errors.pointer", hasItem("/elements/1/resistanceOhm"));
    }
}
