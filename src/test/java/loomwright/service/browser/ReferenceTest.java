package loomwright.service.browser;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

/** The contract as a page to read. */
class ReferenceTest {
    @Test
    void theAccessibilityCheckerFindsNothingFoldedOrOpen() {
        try (Browser browser = Browser.start()) {
            browser.visit("/docs");
            for (boolean dark : List.of(false, true)) {
                browser.dark(dark);
                for (var size : List.of(Browser.WIDE, Browser.PHONE)) {
                    browser.resize(size);
                    assertThat(browser.accessibilityViolations()).isEmpty();
                    browser.script("document.querySelector('#solvePlan').open = true;"
                            + "document.querySelector('#schema-Wire').open = true");
                    assertThat(browser.accessibilityViolations()).isEmpty();
                    assertThat(browser.script("return document.documentElement.scrollWidth <= window.innerWidth"))
                            .isEqualTo(true);
                }
            }
            assertThat(browser.complaints()).isEmpty();
        }
    }

    @Test
    void anOperationLeadsToItsSchemaWithoutScripts() {
        try (Browser browser = Browser.withoutScripts()) {
            browser.visit("/docs").one("#solvePlan summary").click();
            assertThat(browser.text("#solvePlan")).contains("Plan", "after");
            browser.one("#solvePlan a[href='#schema-Plan']").click();
            browser.one("#schema-Plan summary").click();
            assertThat(browser.text("#schema-Plan")).contains("wires", "parts");
        }
    }
}
