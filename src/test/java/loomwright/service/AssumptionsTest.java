package loomwright.service;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.everyItem;
import static org.hamcrest.Matchers.hasItems;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.nullValue;
import static org.hamcrest.Matchers.startsWith;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A demo plan that says of no load when it is meant to be live: each answer lists what it filled in, and holds to the contract. */
class AssumptionsTest {
    private static final String STATED =
            ",\\s*\"meantLive\":\\s*\\[[^\\]]*\\](,\\s*\"meantLiveWhen\":\\s*\\[\\{.*?\\}\\}\\])?";

    private static String plan(String name) {
        return LiveService.ask().get("/v1/examples/" + name).asString();
    }

    private static String unsaid(String name) {
        String unsaid = plan(name).replaceAll(STATED, "");
        assertThat(unsaid).doesNotContain("meantLive");
        return unsaid;
    }

    @ParameterizedTest
    @ValueSource(strings = {"solution", "backfeed", "review", "mistakes"})
    void eachAnswerListsWhatItFilledIn(String operation) {
        LiveService.ask()
                .contentType("application/json")
                .body(unsaid("sandpiper-as-built"))
                .post("/v1/plans/" + operation)
                .then()
                .statusCode(200)
                .body(
                        "assumptions.code",
                        hasItems(
                                "meant-live-starter",
                                "meant-live-ignition",
                                "meant-live-charge-lamp",
                                "meant-live-switched"))
                .body("assumptions.find { it.code == 'meant-live-starter' }.assumed.meantLive", hasItems("crank"));
    }

    @Test
    void soDoesASheetOfReadingsForItsPlan() {
        LiveService.ask()
                .contentType("application/json")
                .body(unsaid("otter-6v-positive-earth"))
                .post("/v1/plans/readings")
                .then()
                .statusCode(200)
                .body("assumptions.code", everyItem(startsWith("meant-live-")));
    }

    @Test
    void anAnswerWithoutAssumptionsHasNoList() {
        LiveService.ask()
                .contentType("application/json")
                .body(plan("sandpiper-as-built"))
                .post("/v1/plans/solution")
                .then()
                .statusCode(200)
                .body("assumptions", nullValue());
    }

    @Test
    void aForumPostTellsThem() {
        LiveService.ask()
                .contentType("application/json")
                .accept("text/markdown")
                .body(unsaid("sandpiper-as-built"))
                .post("/v1/plans/review")
                .then()
                .statusCode(200)
                .body(containsString("\n## Assumptions\n"));
    }

    /** Sound wiring is sound, whether or not the plan says what it is for. */
    @ParameterizedTest
    @ValueSource(strings = {"sandpiper-as-built", "sandpiper-bypass-relay", "sandpiper-electronic-module"})
    void whatIsFilledInMakesNoDangerOfASoundCar(String name) {
        LiveService.ask()
                .contentType("application/json")
                .body(unsaid(name))
                .post("/v1/plans/review")
                .then()
                .statusCode(200)
                .body("result.findings.findAll { it.severity == 'danger' }.code", everyItem(not("backfeed")));
    }
}
