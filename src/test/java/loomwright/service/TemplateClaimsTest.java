package loomwright.service;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.restassured.path.json.JsonPath;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The templates of old vehicles' parts do what each is there to show, with their switches on and off. */
class TemplateClaimsTest {
    private static Map<String, Object> plan(String template) {
        return LiveService.ask()
                .contentType("text/csv")
                .body(LiveService.ask().get("/v1/templates/" + template).asByteArray())
                .post("/v1/plans/conversion")
                .then()
                .statusCode(200)
                .extract()
                .jsonPath()
                .getMap("result.plan");
    }

    /** The template with one of its free switches moved. */
    @SuppressWarnings("unchecked")
    private static Map<String, Object> set(String template, String id, String position) {
        Map<String, Object> plan = plan(template);
        List<Map<String, Object>> parts =
                (List<Map<String, Object>>) Objects.requireNonNull(plan.get("parts"), "no parts");
        parts.stream()
                .filter(part -> id.equals(part.get("id")))
                .findFirst()
                .orElseThrow()
                .put("position", position);
        return plan;
    }

    /** A solved step; one that is the same as an earlier step is that one. */
    private static JsonPath in(Map<String, Object> plan, String step) {
        JsonPath answer = LiveService.ask()
                .contentType("application/json")
                .body(plan)
                .post("/v1/plans/solution?step=" + step)
                .then()
                .statusCode(200)
                .extract()
                .jsonPath();
        answer.setRootPath("result.steps[0]");
        return answer;
    }

    private static Map<String, Object> part(JsonPath step, String id) {
        return step.getMap("parts.find { it.part == '" + id + "' }");
    }

    private static double currentA(JsonPath step, String id, int branch) {
        return step.getDouble("parts.find { it.part == '" + id + "' }.branches[" + branch + "].currentA");
    }

    private static double voltageV(JsonPath step, String node) {
        return step.getDouble("nodes.find { it.node == '" + node + "' }.voltageV");
    }

    private static List<String> working(JsonPath step) {
        return step.getList("parts.findAll { it.activity == 'operates' }.part", String.class);
    }

    @Test
    void theDynamoCarChargesByItsAmmeterAndItsLampGoesOut() {
        Map<String, Object> car = plan("dynamo-charging");
        JsonPath stopped = in(car, "run");
        assertThat(part(stopped, "ammeter")).containsEntry("state", "discharge");
        assertThat(part(stopped, "control-box")).containsEntry("state", "open");
        assertThat(working(stopped)).containsExactly("charge-warning-lamp");
        JsonPath turning = in(car, "running");
        assertThat(part(turning, "ammeter")).containsEntry("state", "charge");
        assertThat(part(turning, "control-box")).containsEntry("state", "closed");
        assertThat(part(turning, "charge-warning-lamp")).containsEntry("activity", "dead");
        assertThat(currentA(turning, "ammeter", 0)).as("into the battery").isNegative();
    }

    @Test
    void theBoatsHouseBatteryIsChargedWithTheEngineRunningAndApartWhenItStands() {
        Map<String, Object> boat = set("boat-two-batteries", "cabin-switch", "on");
        JsonPath stopped = in(boat, "run");
        assertThat(part(stopped, "split-charge-relay")).containsEntry("state", "released");
        assertThat(currentA(stopped, "split-charge-relay", 1))
                .as("between the batteries")
                .isZero();
        assertThat(working(stopped)).contains("cabin-lamp");
        JsonPath turning = in(boat, "running");
        assertThat(part(turning, "split-charge-relay")).containsEntry("state", "pulled-in");
        double lampA = currentA(turning, "cabin-lamp", 0);
        assertThat(currentA(turning, "split-charge-relay", 1)).isGreaterThan(lampA + 1);
    }

    /** Rate: UN Regulation 48, 60 to 120 flashes a minute (from memory). */
    @ParameterizedTest
    @ValueSource(strings = {"off", "run"})
    void theTrailersHazardFlashesAllLampsWithTheKeyOffToo(String step) {
        JsonPath on = in(set("trailer-hazard", "hazard-switch", "on"), step);
        assertThat(part(on, "electronic-flasher")).containsEntry("state", "flashing");
        assertThat(working(on))
                .contains(
                        "indicator-front-left",
                        "indicator-rear-left",
                        "indicator-trailer-left",
                        "indicator-front-right",
                        "indicator-rear-right",
                        "indicator-trailer-right",
                        "indicator-tell-tale");
        assertThat(on.getDouble("flashes[0].ratePerMinute")).isBetween(60.0, 120.0);
        assertThat(working(in(plan("trailer-hazard"), step))).isEmpty();
    }

    @ParameterizedTest
    @CsvSource({"left, right", "right, left"})
    void theTrailersIndicatorsFlashOnOneSide(String side, String other) {
        JsonPath on = in(set("trailer-hazard", "indicator-switch", side), "run");
        assertThat(working(on))
                .contains("indicator-front-" + side, "indicator-rear-" + side, "indicator-trailer-" + side)
                .noneMatch(id -> id.endsWith(other));
    }

    /** 10 to 12 A each at 12 V (engineering dictionary), more at first. */
    @Test
    void theTractorsGlowPlugsGlowWhileTheButtonIsPressedAndNotElse() {
        JsonPath on = in(set("glow-plugs", "glow-switch", "pressed"), "run");
        for (int plug = 1; plug <= 3; plug++) {
            assertThat(currentA(on, "glow-plug-" + plug, 0)).isBetween(10.0, 12.5);
            assertThat(on.getDouble("switchOns.find { it.part == 'glow-plug-" + plug + "' }.currentA"))
                    .isGreaterThan(15);
        }
        assertThat(working(in(plan("glow-plugs"), "run"))).isEmpty();
        assertThat(working(in(set("glow-plugs", "glow-switch", "pressed"), "off")))
                .isEmpty();
    }

    /** Mean output of a bimetal stabiliser: 10 V (workshop page of a kit-car club), whatever the battery has. */
    @ParameterizedTest
    @ValueSource(strings = {"run", "running"})
    void theGaugesHaveTenVolts(String step) {
        JsonPath solved = in(plan("gauges-stabiliser"), step);
        assertThat(voltageV(solved, "stabiliser.I")).isCloseTo(10, within(0.05));
        assertThat(working(solved)).contains("fuel-gauge", "temperature-gauge");
    }

    @ParameterizedTest
    @CsvSource({"left, right", "right, left"})
    void theOneTellTaleLightsWithEitherSideAndFeedsNotTheOther(String side, String other) {
        JsonPath on = in(set("led-indicators", "indicator-switch", side), "run");
        assertThat(part(on, "electronic-flasher")).containsEntry("state", "flashing");
        assertThat(working(on)).contains("led-front-" + side, "led-rear-" + side, "led-tell-tale");
        assertThat(on.getList("parts.findAll { it.activity && it.activity != 'dead' }.part", String.class))
                .doesNotContain("led-front-" + other, "led-rear-" + other);
    }

    /** The resistor and the fan are 1.5 ohm each: half the volts, by Ohm's law, less what the wires take. */
    @Test
    void theFanHasTwoSpeedsAndIsOff() {
        assertThat(working(in(plan("fan-speeds"), "run"))).isEmpty();
        JsonPath slow = in(set("fan-speeds", "fan-speed-switch", "slow"), "run");
        JsonPath fast = in(set("fan-speeds", "fan-speed-switch", "fast"), "run");
        double fastA = currentA(fast, "heater-fan", 0);
        assertThat(fastA).isBetween(7.5, 8.5);
        assertThat(currentA(slow, "heater-fan", 0) / fastA).isCloseTo(0.51, within(0.02));
    }
}
