package loomwright.service.page;

import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.startsWith;

import loomwright.service.LiveService;
import loomwright.service.problem.ProblemType;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** The type of a problem leads to a page that explains it. */
class ProblemPagesTest {
    @ParameterizedTest
    @EnumSource
    void everyTypeLeadsToItsPage(ProblemType type) {
        LiveService.ask()
                .get(type.uri())
                .then()
                .statusCode(200)
                .contentType(startsWith("text/html"))
                .body(containsString(type.title()))
                .body(containsString(type.text().substring(0, 20)));
    }

    @Test
    void anUnknownTypeHasNone() {
        LiveService.ask().get("/problems/no-such").then().statusCode(404);
    }
}
