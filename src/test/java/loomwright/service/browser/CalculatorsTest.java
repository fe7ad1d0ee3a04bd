package loomwright.service.browser;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.regex.Pattern;
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
        browser.open(Browser.WIDE).go("/#calculators");
    }

    /** The headline is the figure that the service gives by itself to a cell of a spreadsheet, with the page's own values. */
    @ParameterizedTest
    @CsvSource({"/v1/ballast", "/v1/spark", "/v1/circuit", "/v1/voltage-drop", "/v1/fuse", "/v1/resistance"})
    void theHeadlineIsTheFigureOfTheService(String path) {
        browser.one(card(path) + " button").click();
        browser.waitUntil(here -> !here.find(card(path) + " .figure").isEmpty());
        double figure = Double.parseDouble(String.valueOf(browser.later(
                "const form = document.querySelector(arguments[0]);"
                        + "fetch(`${arguments[1]}?${new URLSearchParams(new FormData(form))}`, {headers: {Accept: 'text/plain'}})"
                        + ".then(r => r.text()).then(done, failed);",
                card(path),
                path)));
        List<Double> headline = Pattern.compile("\\d+(\\.\\d+)?")
                .matcher(browser.text(card(path) + " .figure"))
                .results()
                .map(number -> Double.parseDouble(number.group()))
                .toList();

        assertThat(headline)
                .as("a number of the headline is " + figure)
                .anySatisfy(number -> assertThat(number).isCloseTo(figure, within(0.005 * Math.max(1, figure))));
        assertThat(browser.text(card(path) + " .result")).contains("How it is calculated", "Cautions");
    }

    @Test
    void feetInchesAndDecimalCommasAreTaken() {
        browser.enter("#drop-length", "10 ft");
        browser.enter("#drop-current", "3,5");
        browser.one(card("/v1/voltage-drop") + " button").click();
        browser.waitUntil(
                here -> !here.find(card("/v1/voltage-drop") + " .figure").isEmpty());
        double asked = Double.parseDouble(String.valueOf(browser.later(
                "fetch('/v1/voltage-drop?size=2.5%20mm2&lengthFt=10&currentA=3.5&supplyV=12&circuit=general',"
                        + " {headers: {Accept: 'text/plain'}}).then(r => r.text()).then(done, failed);")));
        assertThat(browser.one(card("/v1/voltage-drop") + " .figure").getAttribute("data-figure"))
                .satisfies(figure ->
                        assertThat(Double.parseDouble(String.valueOf(figure))).isEqualTo(asked));
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
        browser.waitForText("#drop-length-problem", "Accepted: a number");

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
        "/v1/circuit, 'ISO 2 mm2'",
        "/v1/voltage-drop, mΩ/m",
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
