package loomwright.service.browser;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;

/** What is wrong, and what to do about it. */
class FindingsTabTest extends Workbench {
    @Test
    void aRemedyIsAppliedCheckedAgainAndTakenBack() {
        browser.openExample("without relay or diode");
        List<String> wires = browser.rows("#wire-grid");
        browser.tab("parts");
        List<String> parts = browser.rows("#part-grid");
        assertThat(parts).isNotEmpty();
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
        browser.tab("parts");
        assertThat(browser.rows("#part-grid")).isEqualTo(parts);
        browser.tab("wires");
        assertThat(browser.rows("#wire-grid")).isEqualTo(wires);
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
        browser.waitUntil(here ->
                here.find("#finding-list .warning[data-code=fuse-too-large]").isEmpty());
        browser.tab("parts");
        browser.waitUntil(here -> here.rows("#part-grid").stream().anyMatch(row -> row.matches("Fuse 2.*\\|15 A.*")));
    }

    /** The wire to the left headlamp, far too thin and long for its lamp, costs it more than may be lost. */
    @Test
    void aWireOfTheRightSizeIsRunByItsFinding() {
        List<String> thin = new ArrayList<>(LIST);
        thin.set(15, "lighting switch 56\theadlamp left\t0.5 mm2\t6 m\tblue");
        paste(thin);
        List<String> written = browser.rows("#wire-grid");
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

        browser.one("#undo").click();
        browser.waitUntil(here -> here.rows("#wire-grid").equals(written));
        browser.tab("findings");
        browser.waitUntil(
                here -> here.find(drop).stream().map(WebElement::getText).anyMatch(text -> text.contains("W16")));
    }

    /** A rear fog lamp, its thin earth shared with the tail lamp, lifts that earth: tail and side lamp glow through each other. */
    private static final List<String> THIN_EARTH = List.of(
            "battery -\tbody\t16 mm2\t0.5 m",
            "battery +\tfuse 1 in\t4 mm2\t0.5 m",
            "fuse 1 out\tlighting switch 30\t2.5 mm2\t1 m",
            "fuse 1 out\tfog switch in\t2.5 mm2\t1 m",
            "lighting switch 58\ttail lamp left\t1.5 mm2\t4 m",
            "lighting switch 58\tside lamp left\t1.5 mm2\t2 m",
            "lighting switch 56\theadlamp\t2.5 mm2\t2 m",
            "headlamp earth\tbody\t2.5 mm2\t0.5 m",
            "side lamp left earth\tbody\t1 mm2\t0.5 m",
            "fog switch out\tfog lamp\t2.5 mm2\t4 m",
            "tail lamp left earth\tjoint 1\t1.5 mm2\t0.3 m",
            "fog lamp earth\tjoint 1\t2.5 mm2\t0.3 m",
            "joint 1\tbody\t0.5 mm2\t18 m");

    private static final String BACKFEEDS = "#finding-list li[data-code=backfeed]";

    @Test
    void ofAThinEarthTheEarthIsMendedFirstAndThatIsEnough() {
        paste(THIN_EARTH);
        browser.tab("findings");
        browser.waitUntil(here -> here.find(BACKFEEDS).size() == 2);
        // Both lamps glow because of wire W13, and nothing else has a cause of its own.
        assertThat(browser.find(BACKFEEDS + " .mend-first[data-finding='voltage-drop W13']"))
                .hasSize(2);
        assertThat(browser.find("#finding-list .mend-first")).hasSize(2);
        assertThat(browser.script("const cards = [...document.querySelectorAll('#finding-list > li')];"
                        + " return cards.findIndex(c => c.dataset.code === 'voltage-drop')"
                        + " < cards.findIndex(c => c.dataset.code === 'backfeed')"))
                .isEqualTo(true);

        browser.one("#finding-list li[data-code=voltage-drop] .apply").click();
        browser.waitUntil(here -> here.find("#applied table").size() == 2
                && here.find("#finding-list li").size() > 0
                && here.find(BACKFEEDS).isEmpty());
        assertThat(browser.script("return [...document.querySelectorAll('#applied .wide:last-child tbody tr')]"
                        + ".map(row => row.cells[0].textContent + row.cells[4].textContent[0]).join()"))
                .asString()
                .contains("Fog lamp+");
        browser.tab("wires");
        browser.waitUntil(here -> here.rows("#wire-grid").get(12).contains("|2.5 mm2|"));
    }

    /** Which rating the fuse has is asked; its finding leads to the question. */
    @Test
    void aFindingLeadsToTheQuestionThatItRestsOn() {
        paste(LIST);
        browser.tab("findings");
        String fuse = "#finding-list li[data-code=fuse-too-large]";
        browser.waitUntil(here -> !here.find(fuse + " .rests-on-question").isEmpty());
        browser.one(fuse + " .rests-on-question a").click();
        browser.waitUntil(here -> here.one("#question-list").isDisplayed());
    }

    /** Nobody has said how strong the lamps are, but what the fuse is too large for is written down. */
    @Test
    void aFindingSaysWhichAssumptionItRestsOn() {
        paste(THIN_EARTH);
        browser.tab("findings");
        String drop = "#finding-list li[data-code=voltage-drop]";
        browser.waitUntil(here -> !here.find(drop).isEmpty());
        assertThat(browser.text(drop + " .rests-on-assumption")).contains("55 W");
        browser.tab("parts");
        browser.script("const rows = [...document.querySelectorAll('#part-grid tbody tr')];"
                + "const value = rows.map(r => [...r.querySelectorAll('input')]).find(i => i[0].value === 'Fog lamp')[2];"
                + "value.value = '55 W'; value.dispatchEvent(new Event('change', {bubbles: true}));");
        browser.waitUntil(here -> here.find(drop).isEmpty());
        browser.waitUntil(here -> !here.find(drop).isEmpty());
        browser.tab("findings");
        assertThat(browser.script("return document.querySelector('" + drop + "').textContent"))
                .asString()
                .contains("Fog lamp")
                .doesNotContain("no rated power");
    }

    /** The remedy sets the fuse; a wire that is made thinner afterwards has the wrong fuse because of that. */
    @Test
    void aFindingSaysWhichRemedyItRestsOn() {
        paste(LIST);
        browser.tab("findings");
        String fuse = "#finding-list li[data-code=fuse-too-large]:not(.note)";
        browser.waitUntil(here -> !here.find(fuse + " .apply").isEmpty());
        browser.one(fuse + " .apply").click();
        browser.waitUntil(here -> !here.find("#applied table").isEmpty()
                && !here.find("#finding-list li").isEmpty()
                && here.find(fuse).isEmpty());
        browser.tab("wires");
        browser.enter("#wire-grid-12-size", "0.35 mm2" + Keys.TAB);
        browser.tab("findings");
        browser.waitUntil(here -> !here.find(fuse).isEmpty());
        assertThat(browser.text(fuse + " .rests-on-change")).contains("20 A", "15 A");
    }

    /** The relay holds itself in after the key is off: by key and switches alone it is out. */
    @Test
    void aSequenceIsSteppedThroughAndWhatWasSetComesBack(@TempDir Path folder) throws IOException {
        Path file = folder.resolve("held.json");
        Files.writeString(file, Files.readString(Path.of("src/test/resources/plans/relay-held-through-lamp.json")));
        browser.one("#file").sendKeys(file.toString());
        browser.waitUntil(Browser::isDrawn);
        browser.tab("findings");
        browser.waitUntil(here -> !here.find(BACKFEEDS).isEmpty());
        browser.one(BACKFEEDS + " > .buttons button:last-child").click();
        browser.waitForText(".walk [role=status]", "pulled in");
        assertThat(browser.one("input[value=run]").isSelected()).isTrue();
        assertThat(browser.find("#held")).isEmpty();
        browser.one(".walk button:nth-child(2):enabled").click();
        browser.waitUntil(here -> !here.find("#held").isEmpty());
        assertThat(browser.one("input[value=off]").isSelected()).isTrue();
        assertThat(browser.script("return [...document.querySelectorAll('#diagram [data-owner=relay]')]"
                        + ".filter(t => getComputedStyle(t).display !== 'none').map(t => t.textContent).join()"))
                .asString()
                .contains("pulled in")
                .doesNotContain("not pulled in");
        browser.one(".walk button:nth-child(3)").click();
        browser.waitUntil(here -> here.find("#held").isEmpty() && here.isDrawn());
        assertThat(browser.one("input[value=run]").isSelected()).isTrue();
    }
}
