package loomwright.service;

import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.everyItem;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.hasItems;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.startsWith;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The review of the demo plans over HTTP, each answer held to the contract. */
class PlanReviewTest {
    private static String plan(String name) {
        return LiveService.ask().get("/v1/examples/" + name).asString();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "sandpiper-as-built",
                "sandpiper-bypass-relay",
                "sandpiper-electronic-module",
                "otter-6v-positive-earth"
            })
    void aDemoPlanHasNoBackfeedThatIsADanger(String name) {
        LiveService.ask()
                .contentType("application/json")
                .body(plan(name))
                .post("/v1/plans/review")
                .then()
                .statusCode(200)
                .body("result.findings.findAll { it.severity == 'danger' }.code", everyItem(not("backfeed")));
    }

    @Test
    void theUnguardedBypassStartsTheEngine() {
        LiveService.ask()
                .contentType("application/json")
                .body(plan("sandpiper-unguarded-bypass"))
                .post("/v1/plans/review")
                .then()
                .statusCode(200)
                .body(
                        "result.findings.findAll { it.code == 'backfeed' }.ids.flatten()",
                        hasItems("starter", "solenoid"))
                .body("result.findings.code", hasItem("bypass-not-isolated"));
    }

    @Test
    void aSpreadsheetGetsOneRowForEachFinding() {
        LiveService.ask()
                .contentType("application/json")
                .accept("text/csv")
                .body(plan("otter-6v-positive-earth"))
                .post("/v1/plans/review")
                .then()
                .statusCode(200)
                .body(startsWith("severity,code,ids,text,remedy,source,figure1,value1,figure2,value2,"))
                .body(containsString("\r\nnote,fuse-too-large,F1 W10,"));
    }
}
