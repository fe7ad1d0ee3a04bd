package loomwright.service.browser;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.openqa.selenium.Keys;

/** The small calculators of the help page, with scripts and without. */
class CalculatorsTest {
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

    @BeforeEach
    void freshPage() {
        browser.open(Browser.WIDE);
    }

    /** 12.6 V over 0.05 + 1.4 + 1.5 + 0.03 ohm; the rest are checked where they are calculated. */
    @ParameterizedTest
    @CsvSource({
        "/v1/ballast, 6.342 V at the coil",
        "/v1/spark, kV required",
        "/v1/voltage-drop, V lost",
        "/v1/fuse, A",
        "/v1/resistance, 3.4 ohm"
    })
    void eachAnswersWithinThePage(String path, String headline) {
        browser.one(card(path) + " button").click();
        browser.waitForText(card(path) + " .figure", headline);
        assertThat(browser.text(card(path) + " .result")).contains("How it is calculated", "Cautions");
    }

    @Test
    void thePlotIsShown() {
        browser.one(card("/v1/spark") + " button").click();
        browser.waitUntil(
                here -> Boolean.TRUE.equals(
                        here.script(
                                "const i = document.querySelector('form[action=\"/v1/spark\"] img'); return !!i && i.naturalWidth > 0")));
    }

    @Test
    void aMistakeIsToldBesideItsFieldWhichGetsTheKeyboard() {
        browser.enter("#drop-length", "three");
        browser.one("#drop-length").sendKeys(Keys.ENTER);
        browser.waitForText("#drop-length-problem", "Accepted is a number");

        assertThat(browser.focused().getAttribute("id")).isEqualTo("drop-length");
        browser.enter("#drop-length", "3");
        browser.one("#drop-length").sendKeys(Keys.ENTER);
        browser.waitForText(card("/v1/voltage-drop") + " .figure", "V lost");
        assertThat(browser.text("#drop-length-problem")).isEmpty();
    }

    @Test
    void anEmptyFieldThatIsNeededSaysSo() {
        browser.enter("#resistance-network", " ");
        browser.one(card("/v1/resistance") + " button").click();
        browser.waitForText("#resistance-network-problem", "Needed:");
    }

    @Test
    void theCheckerFindsNothingAfterAnAnswerAndAMistake() {
        browser.one(card("/v1/spark") + " button").click();
        browser.waitForText(card("/v1/spark") + " .figure", "kV");
        browser.enter("#fuse-current", "x");
        browser.one(card("/v1/fuse") + " button").click();
        browser.waitForText("#fuse-current-problem", "Accepted");
        assertThat(browser.accessibilityViolations()).isEmpty();
    }

    @ParameterizedTest
    @CsvSource({
        "/v1/ballast, 6.342281879",
        "/v1/spark, 'required, kV'",
        "/v1/voltage-drop, ohm/m",
        "/v1/fuse, 'rating, A'",
        "/v1/resistance, 3.4"
    })
    void withoutScriptsTheAnswerIsAPage(String path, String figure) {
        try (Browser plain = Browser.withoutScripts()) {
            plain.openWithoutWaiting().one(card(path) + " button").click();
            plain.waitForText("h2", "Answer");
            assertThat(plain.text("main")).contains(figure, "Cautions", "How it is calculated");
        }
    }

    private static String card(String path) {
        return "form[action='" + path + "']";
    }
}
