package loomwright.service.browser;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Sheets on paper: 1 pages, smallest writing and nothing cut of the bench sheet, 2 the pictures of the record. */
class PrintedSheetTest {
    private static final Pattern PAGE = Pattern.compile("/Type\\s*/Page\\b(?!s)");

    /** A point is 4/3 of a pixel. */
    private static final double PX_PER_PT = 4.0 / 3;

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

    @ParameterizedTest
    @CsvSource({
        "sandpiper-as-built,sandpiper-electronic-module,21.0,29.7",
        "sandpiper-as-built,sandpiper-electronic-module,21.59,27.94",
        "sandpiper-unguarded-bypass,sandpiper-bypass-relay,21.0,29.7",
        "sandpiper-unguarded-bypass,sandpiper-bypass-relay,21.59,27.94"
    })
    void aChangeOfUpToTwelveWiresTakesThreePages(String before, String after, double widthCm, double heightCm) {
        show(before, after, "bench");

        assertThat(pages(widthCm, heightCm)).isBetween(2L, 3L);
    }

    private static long pages(double widthCm, double heightCm) {
        String pdf = new String(browser.printed(widthCm, heightCm), StandardCharsets.ISO_8859_1);
        return PAGE.matcher(pdf).results().count();
    }

    /** No picture is parted, and no page has a caption without its picture. */
    @ParameterizedTest
    @CsvSource({"21.0,29.7", "21.59,27.94"})
    void eachPictureOfTheRecordTakesOnePage(double widthCm, double heightCm) {
        show("sandpiper-as-built", "sandpiper-bypass-relay", "record");
        long pages = pages(widthCm, heightCm);
        Object pictures = browser.script("const all = [...document.querySelectorAll('figure')];"
                + "all.forEach(each => each.remove()); return all.length");
        long figures = ((Number) pictures).longValue();

        assertThat(figures).isGreaterThan(8);
        // What stands before and behind the pictures may share a page without them.
        assertThat(pages - pages(widthCm, heightCm)).isBetween(figures, figures + 1);
    }

    /** As wide as what is printed of A4, by the rules for paper. */
    @ParameterizedTest
    @CsvSource({"sandpiper-as-built,sandpiper-electronic-module", "sandpiper-unguarded-bypass,sandpiper-bypass-relay"})
    void writingIsReadAndNothingIsCut(String before, String after) {
        show(before, after, "bench");
        browser.forPrint(true);
        try {
            // Pictures have a size of their own, which the page must not change.
            Object pictures = browser.script("document.body.style.width = '185mm';"
                    + "return [...document.querySelectorAll('svg')].flatMap(svg => {"
                    + " const scale = svg.width.baseVal.value / svg.viewBox.baseVal.width;"
                    + " return [svg.getBoundingClientRect().width / svg.width.baseVal.value,"
                    + " ...[...svg.querySelectorAll('text')].map(text => scale * parseFloat(text.getAttribute('font-size')) / "
                    + 8 * PX_PER_PT + ")].filter(part => part < 0.999); })");
            assertThat(pictures).isEqualTo(List.of());
            Object small =
                    browser.script("return [...document.querySelectorAll('td, th, li, p, dt, h1, h2, figcaption')]"
                            + ".filter(e => parseFloat(getComputedStyle(e).fontSize) < " + 7.99 * PX_PER_PT + ")"
                            + ".map(e => e.outerHTML.slice(0, 80))");
            assertThat(small).isEqualTo(List.of());
            Object cut = browser.script("const right = document.body.getBoundingClientRect().right;"
                    + "return [...document.querySelectorAll('body *')].filter(e =>"
                    + " e.getBoundingClientRect().right > right + 1 || e.scrollWidth > e.clientWidth + 1 && e.tagName === 'TD')"
                    + ".map(e => e.outerHTML.slice(0, 80))");
            assertThat(cut).isEqualTo(List.of());
            Object tallest = browser.script("return Math.max(...[...document.querySelectorAll('figure, tr')].map(e =>"
                    + " e.getBoundingClientRect().height))");
            // What may not be parted must fit on a page of Letter within its margins.
            assertThat(((Number) tallest).doubleValue()).isLessThan((279.4 - 24) / 25.4 * 96);
        } finally {
            browser.forPrint(false);
        }
    }

    private static void show(String before, String after, String document) {
        browser.openWithoutWaiting();
        Object page = browser.later(
                "Promise.all([arguments[0], arguments[1]].map(name => fetch(`/v1/examples/${name}`).then(r => r.json())))"
                        + ".then(([plan, after]) => fetch('/v1/plans/sheet', {method: 'POST',"
                        + " headers: {'Content-Type': 'application/json'}, body: JSON.stringify({plan, after, document: arguments[2]})}))"
                        + ".then(r => r.text()).then(done, failed);",
                before,
                after,
                document);
        browser.showHtml(String.valueOf(page));
    }
}
