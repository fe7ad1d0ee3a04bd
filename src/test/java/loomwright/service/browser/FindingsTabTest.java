package loomwright.service.browser;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.openqa.selenium.WebElement;

/** What is wrong, and what to do about it. */
class FindingsTabTest extends Workbench {
    @Test
    void aRemedyIsAppliedCheckedAgainAndTakenBack() {
        browser.openExample("without relay or diode");
        int wires = browser.rows("#wire-grid").size();
        browser.tab("findings");
        browser.waitUntil(here -> !here.find("#finding-list .apply").isEmpty());
        int before = browser.find("#finding-list li.danger[data-code=backfeed]").size();
        assertThat(before).isPositive();

        browser.one("#finding-list .apply").click();
        browser.waitUntil(here -> !here.find("#applied table").isEmpty()
                && here.find("#finding-list li").size() > 0
                && here.find("#finding-list li.danger[data-code=backfeed]").size() < before);
        assertThat(browser.text("#applied")).contains("gone");

        browser.one("#undo").click();
        browser.waitUntil(
                here -> here.find("#finding-list li.danger[data-code=backfeed]").size() == before);
        browser.tab("wires");
        assertThat(browser.rows("#wire-grid")).hasSize(wires);
    }

    /** The switches stand then as the feed needs them, and the picture is drawn for that. */
    @Test
    void theCurrentOfABackfeedIsFollowedToItsEnd() {
        browser.openExample("without relay or diode");
        browser.tab("findings");
        browser.waitUntil(here -> !here.find("#finding-list .walk").isEmpty());
        browser.script("[...document.querySelectorAll('#finding-list button')]"
                + ".find(each => each.textContent === 'Follow the current').click()");
        browser.waitUntil(here ->
                here.isDrawn() && !here.find("#finding-list .walk button").isEmpty());
        int steps = 1;
        while (browser.one("#finding-list .walk button:nth-child(2)").isEnabled()) {
            browser.one("#finding-list .walk button:nth-child(2)").click();
            steps++;
        }
        assertThat(steps).isGreaterThan(3);
        assertThat(browser.text("#finding-list .walk p")).startsWith(steps + " of " + steps);
    }

    /** The list's lighting fuse, 20 A by assumption, is too large for its wires of 1 mm². */
    @Test
    void aFuseOfTheRightSizeIsFittedByItsFinding() {
        paste(LIST);
        browser.tab("findings");
        browser.waitUntil(here -> !here.find("#finding-list .warning[data-code=fuse-too-large] .apply")
                .isEmpty());
        browser.one("#finding-list .warning[data-code=fuse-too-large] .apply").click();
        browser.waitUntil(here -> !here.find("#applied table").isEmpty()
                && !here.find("#finding-list li").isEmpty());
        assertThat(browser.find("#finding-list .warning[data-code=fuse-too-large]"))
                .isEmpty();
        browser.tab("parts");
        browser.waitUntil(here -> here.rows("#part-grid").stream().anyMatch(row -> row.matches("Fuse 2.*\\|15 A.*")));
    }

    /** The wire to the left headlamp, far too thin and long for its lamp, costs it more than may be lost. */
    @Test
    void aWireOfTheRightSizeIsRunByItsFinding() {
        List<String> thin = new ArrayList<>(LIST);
        thin.set(15, "lighting switch 56\theadlamp left\t0.5 mm2\t6 m\tblue");
        paste(thin);
        browser.tab("findings");
        String drop = "#finding-list li.warning[data-code=voltage-drop]";
        browser.waitUntil(here -> !here.find(drop + " .apply").isEmpty());
        assertThat(browser.text(drop)).contains("W16");
        browser.one(drop + " .apply").click();
        browser.waitUntil(here -> !here.find("#applied table").isEmpty()
                && !here.find("#finding-list li").isEmpty()
                && here.find(drop).stream().map(WebElement::getText).noneMatch(text -> text.contains("W16")));
        browser.tab("wires");
        // The rest of the row stays as it was written.
        assertThat(browser.rows("#wire-grid").get(15))
                .matches("W16\\|lighting switch 56\\|headlamp left\\|(?!0\\.5 )[\\d.]+ mm2\\|6 m\\|blue");
    }
}
