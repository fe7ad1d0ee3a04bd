package loomwright.service.browser;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/** The contract as a page to read. */
class ReferenceTest {
    @Test
    void anOperationLeadsToItsSchemaWithoutScripts() {
        try (Browser browser = Browser.withoutScripts()) {
            browser.visit("/docs").one("details:has(> #solvePlan) > summary").click();
            assertThat(browser.text("#solvePlan")).contains("Plan", "after");
            browser.one("#solvePlan a[href='#schema-Plan']").click();
            assertThat(browser.text("#schema-Plan")).contains("wires", "parts");
        }
    }
}
