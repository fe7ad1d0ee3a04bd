package loomwright.service.browser;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.openqa.selenium.Keys;

/** What turning the key and moving switches does to the picture. */
class KeyAndSwitchesTest extends Workbench {
    @Test
    void theKeyAndSwitchesMovedQuicklyEndWhereTheyWereLeft() {
        browser.openExample("as built");
        browser.tab("parts");
        browser.choose("#switches select", "head");
        browser.choose("#switches select", "out");
        browser.choose("#switches select", "head");
        browser.one("input[value=run]").sendKeys(Keys.ARROW_RIGHT);
        browser.waitUntil(here ->
                here.isDrawn() && "crank".equals(here.one("#diagram svg").getAttribute("data-step")));
        assertThat(browser.one("input[value=crank]").isSelected()).isTrue();
        browser.waitUntil(here -> here.find("#part-grid tbody tr").stream()
                .anyMatch(row -> row.getText().contains("on") && row.getText().contains(".")));
        String shown = String.valueOf(browser.script("return document.querySelector('#switches select').value"));
        assertThat(shown).isEqualTo("head");
        assertThat(String.valueOf(browser.script("return document.querySelector('#diagram svg').textContent")))
                .contains("head");
    }

    @Test
    void turningTheKeyMovesNothingAndIsShownBeforeAnythingIsAnswered() {
        browser.openExample("as built");
        String places =
                "return [...document.querySelectorAll('#diagram .dg-symbol')].map(s => s.getAttribute('transform')).join()";
        Object before = browser.script(places);
        for (String step : List.of("crank", "off", "running")) {
            assertThat(browser.script(
                            "document.querySelector('input[value=' + arguments[0] + ']').click();"
                                    + "return document.querySelector('#diagram svg').dataset.step",
                            step))
                    .isEqualTo(step);
        }
        assertThat(browser.script(places)).isEqualTo(before).asString().contains("translate");
    }

    /** Shown whole, a picture of this size has writing of four pixels; a reader needs nine. */
    @Test
    void thePictureShownWholeNamesItsPartsLegiblyAndNoNameLiesOnAnother() {
        browser.openExample("as built");
        browser.waitUntil(here -> !here.find("#diagram .dg-said").isEmpty());
        Object overlapping = browser.script("""
                const boxes = [...document.querySelectorAll('#diagram .dg-said')].map(t => t.getBoundingClientRect());
                const frame = document.querySelector('#diagram').getBoundingClientRect();
                const meet = (a, b) => a.left < b.right - 2 && b.left < a.right - 2 && a.top < b.bottom - 4 && b.top < a.bottom - 4;
                return boxes.filter((a, i) => a.height < 9 || a.left < frame.left || a.right > frame.right
                    || boxes.some((b, k) => k > i && meet(a, b))).length""");
        assertThat(overlapping).isEqualTo(0L);
        Object named = browser.script("""
                const owners = selector => new Set([...document.querySelectorAll(selector)].map(t => t.dataset.owner)).size;
                return owners('#diagram .dg-name.dg-said') / owners('#diagram .dg-name')""");
        assertThat(((Number) named).doubleValue()).isGreaterThanOrEqualTo(0.75);
        for (int i = 0; i < 5; i++) {
            browser.one("#zoom-in").click();
        }
        browser.waitUntil(here -> here.find("#diagram .dg-said").isEmpty());
    }

    /** The bypass wire holds the solenoid in after cranking; drawn by the key alone it is off. */
    @Test
    void aRelayThatStaysInAfterAMoveIsShownIn() {
        browser.openExample("without relay or diode");
        browser.script("document.querySelector('input[value=crank]').click()");
        browser.script("document.querySelector('input[value=run]').click()");
        browser.waitUntil(here -> !here.find("#held").isEmpty());
        assertThat(browser.text("#held")).contains("Starter solenoid: pulled in");
        browser.waitUntil(here -> here.isDrawn()
                && String.valueOf(
                                here.script(
                                        "return [...document.querySelectorAll('#diagram [data-owner=solenoid]')]"
                                                + ".filter(t => getComputedStyle(t).display !== 'none').map(t => t.textContent).join()"))
                        .contains("pulled in"));
        browser.script("document.querySelector('input[value=off]').click()");
        browser.waitUntil(here -> here.find("#held").isEmpty());
    }

    @Test
    void aPhoneShowsOneCircuitToReadFromTheBattery() {
        browser.openExample("as built");
        browser.resize(Browser.PHONE);
        browser.choose("#circuit-of", "Left headlamp");
        assertThat(browser.one("#picture").isDisplayed()).isFalse();
        assertThat(browser.text("#strip li:first-child")).contains("Battery");
        assertThat(browser.text("#strip"))
                .contains("W25", "Left headlamp", "W29")
                .doesNotContain("Right headlamp");
        assertThat(browser.script("return Math.min(...[...document.querySelectorAll('#strip *')]"
                        + ".map(e => parseFloat(getComputedStyle(e).fontSize))) >= 12"))
                .isEqualTo(true);
        // Nearer the edge it may lie under the tabs, which stand still.
        browser.script(
                "document.querySelector('#strip li:nth-child(2) button').scrollIntoView({block: 'center', behavior: 'instant'})");
        browser.one("#strip li:nth-child(2) button").click();
        assertThat(browser.text("#selected")).contains("W4");
        browser.choose("#circuit-of", "the whole picture");
        assertThat(browser.one("#picture").isDisplayed()).isTrue();
        browser.resize(Browser.WIDE);
    }

    /** Nothing was asked for ahead: a car of so many switches has too many moves. */
    @Test
    void aMoveIsOneRequestAndTurnsTheLampOn() {
        paste(NINE_SWITCHES);
        browser.waitUntil(
                here -> "2"
                        .equals(
                                String.valueOf(
                                        here.script(
                                                "return performance.getEntriesByType('resource').filter(e => /review|backfeed/.test(e.name)).length"))));
        String on = "return [...document.querySelectorAll('#diagram [data-owner=lamp-3]')]"
                + ".filter(t => getComputedStyle(t).display !== 'none').map(t => t.textContent).join()";
        Object off = browser.script(on);
        Object asked = browser.later("""
                const began = performance.now();
                const picture = document.querySelector('#diagram');
                new MutationObserver((_, watch) => { watch.disconnect(); setTimeout(() => done(
                  performance.getEntriesByType('resource').filter(e => e.startTime >= began).map(e => e.name).join(" ")), 500); })
                  .observe(picture, {attributes: true, attributeFilter: ['data-drawn']});
                const chooser = document.querySelector('#switches select[data-switch=switch-3]');
                chooser.value = 'on';
                chooser.dispatchEvent(new Event('change', {bubbles: true}));
                """);
        assertThat(String.valueOf(asked).split(" "))
                .hasSize(1)
                .allMatch(address -> address.contains("/v1/plans/diagram?"));
        assertThat(browser.script(on)).isNotEqualTo(off);
    }
}
