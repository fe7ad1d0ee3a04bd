package loomwright.service.browser;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.Keys;

/** The workbench of the help page, as an owner uses it. */
class WorkbenchTest extends Workbench {
    private static final int FIRST_VIEW_BYTES = 60_000;

    @Test
    void threeWaysToBeginInLittleWeightFromThisServiceAlone() {
        browser.waitUntil(here -> !here.find("#templates button").isEmpty());
        assertThat(browser.find("#welcome h3")).hasSize(3);
        // Each with a symbol for every part of its small picture: one without is drawn as a mere line.
        assertThat(browser.find("#templates .small-picture")).hasSameSizeAs(browser.find("#templates button"));
        assertThat(browser.find("#templates .small-picture path[d='M0 14H32']")).isEmpty();
        Object weight = browser.script("return performance.getEntriesByType('resource')"
                + ".concat(performance.getEntriesByType('navigation')).reduce((sum, e) => sum + e.encodedBodySize, 0)");
        assertThat(((Number) weight).intValue()).isPositive().isLessThan(FIRST_VIEW_BYTES);
        assertThat(String.valueOf(browser.script("return performance.getEntriesByType('resource').map(e => e.name)"
                        + ".filter(n => !n.startsWith(location.origin) && !n.startsWith('data:')).join(' ')")))
                .isEmpty();
    }

    @Test
    void twentyWiresAreTypedByKeyboardAlone() {
        browser.waitUntil(here -> !here.find("#empty").isEmpty());
        browser.one("#empty").sendKeys(Keys.ENTER);
        browser.waitUntil(here -> "from".equals(here.focused().getAttribute("data-column")));
        for (String row : LIST) {
            String[] cells = row.split("\t", -1);
            for (int i = 0; i < cells.length; i++) {
                browser.type(cells[i], i < cells.length - 1 ? Keys.TAB : Keys.ENTER);
            }
        }
        browser.waitUntil(
                here -> here.isDrawn() && here.find("#diagram [data-wire]").size() >= LIST.size());

        List<String> rows = browser.rows("#wire-grid");
        assertThat(rows).hasSize(LIST.size() + 1);
        for (int i = 0; i < LIST.size(); i++) {
            assertThat(rows.get(i)).isEqualTo("W" + (i + 1) + "|" + LIST.get(i).replace('\t', '|'));
        }
        assertThat(browser.focused().getAttribute("id")).isEqualTo("wire-grid-" + LIST.size() + "-from");
        assertThat(browser.text("#wires-problem")).isEmpty();
    }

    /** The keys of a combobox after the patterns of WAI-ARIA: down opens and moves, Enter takes, Escape closes. */
    @Test
    void anOfferIsTakenByKeyboardAndTheFieldKeepsTheKeyboard() {
        paste(LIST);
        browser.script("document.querySelector('#wire-grid-20-from').focus()");
        browser.type("start", Keys.ARROW_DOWN);
        String offered = String.valueOf(browser.script("return document.getElementById("
                + "document.activeElement.getAttribute('aria-activedescendant')).textContent"));
        assertThat(offered).startsWith("start");
        browser.type(Keys.ENTER);
        assertThat(browser.focused().getAttribute("id")).isEqualTo("wire-grid-20-from");
        assertThat(browser.focused().getAttribute("value")).isEqualTo(offered);

        browser.type(Keys.TAB, "zz", Keys.ARROW_DOWN, Keys.ESCAPE, Keys.ESCAPE);
        assertThat(browser.focused().getAttribute("id")).isEqualTo("wire-grid-20-to");
        assertThat(browser.focused().getAttribute("value")).isEmpty();
    }

    @Test
    void aBlockIsPastedUndoneAndSharedByALink() {
        paste(LIST);
        assertThat(browser.rows("#wire-grid"))
                .hasSize(LIST.size() + 1)
                .contains("W1|" + LIST.get(0).replace('\t', '|'));

        browser.one("#undo").click();
        browser.waitUntil(here -> here.rows("#wire-grid").size() == 1);
        browser.one("#redo").click();
        browser.waitUntil(here -> here.rows("#wire-grid").size() == LIST.size() + 1);

        browser.one("#share").click();
        browser.waitUntil(here ->
                !String.valueOf(here.one("#share-link").getAttribute("value")).isEmpty());
        String link = String.valueOf(browser.one("#share-link").getAttribute("value"));
        List<String> rows = browser.rows("#wire-grid");
        browser.open(Browser.WIDE).go(link.substring(link.indexOf('#') - 1));
        browser.waitUntil(Browser::isDrawn);
        assertThat(browser.rows("#wire-grid")).isEqualTo(rows);
    }

    @Test
    void whatIsLeftOutIsAssumedInGreyUntilTypedOver() {
        paste(List.of(
                "battery +\tleft headlamp +\t1 mm2",
                "left headlamp -\tbody\t1 mm2\t1 m",
                "battery -\tbody\t16 mm2\t1 m"));
        browser.waitUntil(here -> here.rows("#wire-grid").get(0).matches("W1.*\\(\\d.* m\\).*"));
        browser.enter("#wire-grid tbody tr:first-child input[data-column=length]", "3 m" + Keys.ENTER);
        browser.waitUntil(here -> here.rows("#wire-grid").get(0).contains("|3 m|"));
        browser.waitUntil(here -> here.text("#assumption-count").matches(".*[1-9].*"));
    }

    @Test
    void aCarIsStillThereAfterTheOpeningPageWasLookedAt() {
        browser.openExample("as built");
        browser.one("#new").click();
        browser.waitUntil(here -> here.one("#welcome").isDisplayed());
        browser.one("#back").click();
        browser.waitUntil(here -> here.one("#workbench").isDisplayed());
        assertThat(browser.rows("#wire-grid")).hasSizeGreaterThan(30);
    }

    @Test
    void aListPastedIntoTheFirstPageIsDrawnAtOnceAndNamedBeforeItIsPrinted() {
        browser.waitUntil(here -> !here.find("#examples button").isEmpty());
        browser.script(
                "const box = document.querySelector('#paste'); box.value = arguments[0];"
                        + "box.dispatchEvent(new ClipboardEvent('paste', {bubbles: true}));",
                "from\tto\tsize\tlength\tcolour\n" + String.join("\n", LIST));
        browser.waitUntil(Browser::isDrawn);
        assertThat(browser.rows("#wire-grid")).hasSize(LIST.size() + 1);

        browser.tab("print");
        browser.enter("#print-name", "Sandpiper" + Keys.TAB);
        browser.waitUntil(here -> here.text("#car").contains("Sandpiper"));
        browser.waitUntil(here -> here.one("#sheet").isEnabled());
        browser.one("#sheet").click();
        browser.waitUntil(here -> here.one("#sheet-view").isDisplayed());
        assertThat(browser.script("return document.querySelector('#sheet-view').shadowRoot.textContent"))
                .asString()
                .contains("Sandpiper");
    }

    /** An unfinished row before it is not sent, so that the line in question is not the row of that number. */
    @Test
    void anErrorIsToldAtTheRowThatItIsIn() {
        List<String> wrong = new ArrayList<>(LIST.subList(0, 5));
        wrong.set(1, "engine\t\t16 mm2");
        wrong.add("lamp +\tlamp +\t1 mm2\t1 m\tred");
        browser.waitUntil(here -> !here.find("#empty").isEmpty());
        browser.one("#empty").click();
        browser.waitUntil(here -> "from".equals(here.focused().getAttribute("data-column")));
        pasteIntoCell(browser, wrong);
        browser.waitUntil(here -> !here.text("#wires-problem").isEmpty());
        assertThat(browser.text("#wires-problem")).contains("W6", "lamp +");
        assertThat(browser.find("#wire-grid .problem:not(:empty)"))
                .extracting(cell -> cell.getAttribute("id"))
                .containsExactly("wire-grid-5-to-problem");
    }

    /** What the contract objects to is told at its cell too. */
    @Test
    void aLengthOutOfRangeIsToldAtItsCell() {
        List<String> wrong = new ArrayList<>(LIST.subList(0, 5));
        wrong.set(3, "starter solenoid motor post\tstarter motor\t35 mm2\t5000 m\tblack");
        browser.waitUntil(here -> !here.find("#empty").isEmpty());
        browser.one("#empty").click();
        browser.waitUntil(here -> "from".equals(here.focused().getAttribute("data-column")));
        pasteIntoCell(browser, wrong);
        browser.waitUntil(here -> !here.text("#wires-problem").isEmpty());
        assertThat(browser.text("#wires-problem")).contains("W4", "5000");
        assertThat(browser.find("#wire-grid .problem:not(:empty)"))
                .extracting(cell -> cell.getAttribute("id"))
                .containsExactly("wire-grid-3-length-problem");
    }

    /** A wire is made thinner: that is what differs, and what has to be bought. */
    @Test
    void aCopyIsComparedWithTheCarAsItIsChangedAndTheAnswerStays() {
        paste(LIST);
        browser.tab("compare");
        browser.one("#keep-copy").click();
        browser.waitUntil(here -> !here.find("#compare").isEmpty());
        browser.tab("wires");
        int drawn = Integer.parseInt(browser.one("#diagram").getAttribute("data-drawn"));
        browser.enter("#wire-grid-13-size", "0.5 mm2" + Keys.TAB);
        browser.waitUntil(here -> Integer.parseInt(here.one("#diagram").getAttribute("data-drawn")) > drawn);
        browser.tab("compare");
        browser.one("#compare").click();
        browser.waitUntil(here -> !here.find("#comparison svg").isEmpty());
        assertThat(browser.find("#comparison > ul:first-of-type li"))
                .singleElement()
                .satisfies(change -> assertThat(change.getText()).contains("W14", "0.5", "1 mm²"));
        browser.tab("findings");
        browser.tab("compare");
        assertThat(browser.find("#comparison svg")).isNotEmpty();
    }

    /** The answer of a comparison that was stopped does not come after all. */
    @Test
    void aComparisonThatTakesLongIsStopped() {
        paste(LIST);
        browser.tab("compare");
        browser.one("#keep-copy").click();
        browser.waitUntil(here -> !here.find("#compare").isEmpty());
        assertThat(browser.script("document.querySelector('#compare').click();"
                        + "const begun = document.querySelectorAll('#comparison progress').length;"
                        + "document.querySelector('#comparison button').click();"
                        + "return begun"))
                .isEqualTo(1L);
        assertThat(browser.find("#comparison progress")).isEmpty();
        browser.one("#compare").click();
        browser.waitUntil(here -> !here.find("#comparison h3").isEmpty());
        assertThat(browser.find("#comparison h3")).hasSize(1);
    }

    @Test
    void mistakesAreTriedAndThoseOfOnePartPickedOut() {
        paste(LIST.subList(0, 6));
        browser.tab("mistakes");
        browser.waitUntil(here -> here.one("#try").isEnabled());
        browser.one("#try").click();
        browser.waitUntil(here -> !here.find("#panel-mistakes ol li").isEmpty());
        int all = browser.find("#panel-mistakes ol li").size();
        browser.choose("#mistake-of", "Fuse 1");
        int some = browser.find("#panel-mistakes ol li").size();
        assertThat(some).isPositive().isLessThan(all);
        browser.one("#panel-mistakes ol li button").click();
        assertThat(browser.find("#diagram .lit")).isNotEmpty();
    }

    @Test
    void theSheetIsPrinted() {
        browser.openExample("6 v");
        browser.tab("print");
        browser.waitUntil(here -> here.one("#sheet").isEnabled());
        browser.one("#sheet").click();
        browser.waitUntil(here -> here.one("#sheet-view").isDisplayed());
        assertThat(String.valueOf(
                        browser.script("return document.querySelector('#sheet-view').shadowRoot.textContent")))
                .contains("Otter", "Before you touch");
        assertThat(new String(browser.printed(), 0, 5, StandardCharsets.ISO_8859_1))
                .isEqualTo("%PDF-");
    }

    @Test
    void aHostileFileRunsNothing(@TempDir Path folder) throws IOException {
        Path file = folder.resolve("car.json");
        Files.writeString(file, """
                {"schema": "loomwright/plan/1", "name": "<img src=x onerror=alert(1)>", "system": {"nominalVoltageV": 12},
                 "parts": [{"kind": "battery", "id": "battery"}, {"kind": "earth", "id": "body"},
                   {"kind": "lamp", "id": "lamp", "label": "<script>alert(1)</script><style>*{display:none}</style>",
                    "ratedV": 12, "ratedW": 5, "meantLive": ["off"]}],
                 "wires": [{"id": "W1", "from": "battery.plus", "to": "lamp.a", "size": "1 mm2", "lengthM": 1},
                   {"id": "W2", "from": "lamp.b", "to": "body.31", "size": "1 mm2", "lengthM": 1},
                   {"id": "W3", "from": "battery.minus", "to": "body.31", "size": "16 mm2", "lengthM": 1}]}
                """);
        browser.one("#file").sendKeys(file.toString());
        browser.waitUntil(Browser::isDrawn);
        browser.tab("parts");
        assertThat(browser.find("body script, main style, main img, #diagram script"))
                .isEmpty();
    }

    @Test
    void aFileThatIsNoCarIsRefused(@TempDir Path folder) throws IOException {
        Path file = folder.resolve("broken.json");
        Files.writeString(file, "{\"schema\": ");
        browser.one("#file").sendKeys(file.toString());
        browser.waitUntil(here -> !here.text("#open-problem").isEmpty());
    }

    @Test
    void theAccessibilityCheckerFindsNothingInEitherSchemeOnDesktopAndPhone() {
        assertThat(browser.accessibilityViolations()).isEmpty();
        browser.openExample("without relay or diode");
        browser.waitUntil(here -> here.one("#finding-count").isDisplayed());
        for (boolean dark : List.of(false, true)) {
            browser.dark(dark);
            for (var size : List.of(Browser.WIDE, Browser.PHONE)) {
                browser.resize(size);
                for (String tab : List.of("wires", "parts", "findings", "measure", "mistakes", "compare", "print")) {
                    browser.tab(tab);
                    assertThat(dark ? browser.colourViolations() : browser.accessibilityViolations())
                            .as(tab)
                            .isEmpty();
                }
                assertThat(browser.script("return document.documentElement.scrollWidth <= window.innerWidth"))
                        .isEqualTo(true);
            }
        }
        browser.dark(false);
    }
}
