package loomwright.service.browser;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** The contract as a page: read by everybody, without scripts. */
class ReferencePageTest {
    private static Browser browser;

    @BeforeAll
    static void open() {
        browser = Browser.start();
    }

    @AfterAll
    static void close() {
        if (browser != null) {
            browser.close();
        }
    }

    @Test
    void theAccessibilityCheckerFindsNothingInEitherSchemeOnDesktopAndPhone() {
        browser.visit("/docs");
        browser.script("document.querySelector('#drawPlan').parentElement.open = true;"
                + "document.querySelector('#schema-Plan').parentElement.open = true");
        for (boolean dark : List.of(false, true)) {
            browser.dark(dark);
            for (var size : List.of(Browser.WIDE, Browser.PHONE)) {
                browser.resize(size);
                assertThat(dark ? browser.colourViolations() : browser.accessibilityViolations())
                        .isEmpty();
                assertThat(browser.script("return document.documentElement.scrollWidth <= window.innerWidth"))
                        .isEqualTo(true);
            }
        }
        browser.dark(false);
        browser.resize(Browser.WIDE);
    }

    @Test
    void aLinkToASchemaOpensIt() {
        browser.visit("/docs");
        browser.script("document.querySelector('#drawPlan').parentElement.open = true");
        browser.one("#drawPlan a[href='#schema-Plan']").click();
        browser.waitUntil(here -> here.one("#schema-Plan").isDisplayed());
    }
}
