package loomwright.service.browser;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.Keys;

/** The circuit part of the help page: plan, key, switches, changes, findings. */
class HelpPageTest {
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

    @AfterEach
    void nothingWasComplainedOf() {
        // A refusal is an answer that the page shows; the browser notes its status all the same.
        assertThat(browser.complaints()).allMatch(message -> message.contains("status of 4"));
    }

    @Test
    void theFirstDemonstrationPlanIsThereWithTheKeyOn() {
        assertThat(browser.text("#plan-name")).isEqualTo("Sandpiper 1500, as built");
        assertThat(browser.one("input[value=run]").isSelected()).isTrue();
        assertThat(browser.text("#wires caption")).isEqualTo("Wires, key on, engine stopped");
        assertThat(browser.row("#parts", "coil")).contains("operates");
    }

    @Test
    void theArrowKeysTurnTheKey() {
        browser.one("input[value=run]").sendKeys(Keys.ARROW_RIGHT);
        browser.waitForText("#wires caption", "cranking");

        assertThat(browser.row("#parts", "solenoid")).contains("pulled-in");
        browser.waitUntil(Browser::isDrawn);
        assertThat(browser.text("#diagram svg")).contains("W3");
    }

    @Test
    void aSwitchLightsItsLamps() {
        browser.choose("#example", "the same with a bypass wire from the starter terminal, without relay or diode");
        browser.waitForText("#plan-name", "unguarded");
        assertThat(browser.row("#parts", "head-left")).contains("dead");

        browser.choose("#free-switches select", "head");
        browser.waitUntil(here -> here.row("#parts", "head-left").contains("operates"));
    }

    @Test
    void aChangeShowsTheFigureBeforeAndCanBeTakenBack() {
        String before = browser.row("#parts", "coil").get(3);
        browser.choose("#item", "Ballast resistor (ballast)");
        browser.enter("#properties input", "1.4, 1.4");
        browser.one("#changer button").click();
        browser.waitForText("#change-list", "1.4, 1.4");

        assertThat(browser.row("#parts", "coil").get(4)).isEqualTo(before);
        assertThat(Double.parseDouble(browser.row("#parts", "coil").get(3))).isLessThan(Double.parseDouble(before));

        browser.one("#undo").click();
        browser.waitUntil(here -> !here.one("#changes").isDisplayed());
        assertThat(browser.row("#parts", "coil").get(3)).isEqualTo(before);
    }

    @Test
    void aChangeThatCannotBeIsRefusedBesideItsField() {
        browser.choose("#item", "Wire W9, ballast.b to coil.15");
        browser.enter("#properties input[name$=lengthM]", "long");
        browser.one("#changer button").click();
        browser.waitForText("#properties .problem", "Accepted is");

        assertThat(browser.one("#properties input[name$=lengthM]").getAttribute("aria-invalid"))
                .isEqualTo("true");
        assertThat(browser.one("#properties input[name$=lengthM] + .problem").getText())
                .contains("a number");
    }

    @Test
    void findingsComeWithSeverityAndRemedy() {
        browser.one("#check").click();
        browser.waitForText("#finding-summary", "danger");
        assertThat(browser.text("#finding-list")).contains("Remedy:");
    }

    @Test
    void aPlanFileIsOpened(@TempDir Path folder) throws IOException {
        Path file = folder.resolve("lamp.json");
        Files.writeString(file, """
                {"schema": "loomwright/plan/1", "name": "One <b>lamp</b>", "system": {"nominalVoltageV": 12},
                 "parts": [{"kind": "battery", "id": "battery"}, {"kind": "earth", "id": "body"},
                   {"kind": "lamp", "id": "lamp", "ratedV": 12, "ratedW": 5, "meantLive": ["off"]}],
                 "wires": [{"id": "W1", "from": "battery.plus", "to": "lamp.a", "size": "1 mm2", "lengthM": 1},
                   {"id": "W2", "from": "lamp.b", "to": "body.31", "size": "1 mm2", "lengthM": 1},
                   {"id": "W3", "from": "battery.minus", "to": "body.31", "size": "16 mm2", "lengthM": 1}]}
                """);
        browser.one("#file").sendKeys(file.toString());
        browser.waitForText("#plan-name", "One <b>lamp</b>");
        browser.waitUntil(Browser::isDrawn);
        assertThat(browser.find("#diagram b, #plan-name b")).isEmpty();
    }

    @Test
    void aFileThatIsNoPlanIsRefusedBesideItsField(@TempDir Path folder) throws IOException {
        Path file = folder.resolve("broken.json");
        Files.writeString(file, "{\"schema\": ");
        browser.one("#file").sendKeys(file.toString());
        browser.waitForText("#file-problem", "broken.json is not JSON");

        Path other = folder.resolve("empty.json");
        Files.writeString(other, "{\"schema\": \"loomwright/plan/1\"}");
        browser.one("#file").sendKeys(other.toString());
        browser.waitForText("#file-problem", "/parts");
        assertThat(browser.text("#plan-name")).as("the plan before stays").isEqualTo("Sandpiper 1500, as built");
    }

    @Test
    void nothingComesFromAnotherAddress() {
        assertThat(String.valueOf(browser.script("return performance.getEntriesByType('resource').map(e => e.name)"
                        + ".filter(n => !n.startsWith(location.origin) && !n.startsWith('data:')).join(' ')")))
                .isEmpty();
    }

    @Test
    void theAccessibilityCheckerFindsNothing() {
        browser.one("#check").click();
        browser.waitForText("#finding-summary", "danger");
        assertThat(browser.accessibilityViolations()).isEmpty();
    }

    @Test
    void aPhoneShowsItWithoutScrollingSideways() {
        browser.open(Browser.PHONE);
        assertThat(browser.script("return document.documentElement.scrollWidth <= window.innerWidth"))
                .isEqualTo(true);
        assertThat(browser.accessibilityViolations()).isEmpty();
    }
}
