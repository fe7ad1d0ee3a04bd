package loomwright.service.browser;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The modules that say what of the picture is seen, and how the car stands in it. */
class PictureModulesTest {
    private static Browser browser;

    @BeforeAll
    static void open() {
        browser = Browser.start();
        browser.open(Browser.WIDE);
    }

    @AfterAll
    static void close() {
        if (browser != null) {
            browser.close();
        }
    }

    /** A picture of 1000 by 500 with writing of 6: a frame of 300 shows a part that is twice as large as drawn, about the battery. */
    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                "{width: 600, height: 300}; null; false; 0 0 1000 500",
                "{width: 300, height: 200}; {x: 500, y: 250}; false; 425 200 150 100",
                "{width: 300, height: 200}; {x: 20, y: 480}; false; 0 430 150 100",
                "{width: 300, height: 200}; {x: 990, y: 10}; false; 850 0 150 100",
                "{width: 300, height: 200}; null; false; 425 0 150 100",
                "{width: 300, height: 200}; {x: 500, y: 250}; true; 0 0 1000 500"
            })
    void aPhoneBeginsAtTheBatteryLargeEnoughToRead(String frame, String battery, boolean whole, String shown) {
        assertThat(browser.later("import('/page/frame.js').then(m => m.fitted({width: 1000, height: 500}, " + frame
                        + ", 6, " + battery + ", " + whole
                        + ")).then(v => done(`${v.x} ${v.y} ${v.width} ${v.height}`), failed);"))
                .isEqualTo(shown);
    }

    @Test
    void thePointUnderTheFingersStaysThere() {
        assertThat(browser.later("import('/page/frame.js').then(m => { const size = {width: 1000, height: 500};"
                        + " const near = m.zoomed({x: 0, y: 0, width: 1000, height: 500}, 0.5, {x: 800, y: 100}, size);"
                        + " const most = m.zoomed(near, 0.001, {x: 800, y: 100}, size);"
                        + " return [(800 - near.x) / near.width, (100 - near.y) / near.height, near.width, most.width].join(' '); })"
                        + ".then(done, failed);"))
                .isEqualTo("0.8 0.2 500 80");
    }

    @Test
    void aPositionOfTheSwitchesIsAskedForOnceUnlessItFailed() {
        assertThat(browser.later("""
                (async () => {
                  const { viewsBySwitches } = await import('/page/views.js');
                  let asked = [];
                  const views = viewsBySwitches((switches, sheet) => { asked.push(`${JSON.stringify(switches)}${sheet}`);
                    return switches.broken ? Promise.reject(new Error()) : Promise.resolve(switches); });
                  await views.of({b: 'on', a: 'off'}, 0);
                  await views.of({a: 'off', b: 'on'}, 0);
                  await views.of({a: 'off', b: 'on'}, 2);
                  await views.of({broken: 'on'}, 0).catch(() => 0);
                  await views.of({broken: 'on'}, 0).catch(() => 0);
                  views.keep({c: 'on'}, 0, 'kept');
                  await views.of({c: 'on'}, 0);
                  return [asked.length, views.known({b: 'on', a: 'off'}, 0)?.a, views.known({a: 'off'}, 0), views.known({broken: 'on'}, 0), views.known({c: 'on'}, 0)].join();
                })().then(done, failed);""")).isEqualTo("4,off,,,kept");
    }

    /** The first moves become the position that the rest begins in; the key is turned to where it stood first of all. */
    @Test
    void aTrailTooLongForTheServiceBeginsLater() {
        assertThat(browser.later("""
                import('/page/views.js').then(({ longer }) => {
                  const moves = ['key:run', 'lights:head', 'key:crank', 'horn:on', 'key:run'];
                  const trail = moves.reduce((before, move) => longer(before, move, 3), { switches: { dip: 'low' }, moves: [] });
                  return JSON.stringify(trail);
                }).then(done, failed);"""))
                .isEqualTo(
                        "{\"switches\":{\"dip\":\"low\",\"lights\":\"head\"},\"moves\":[\"key:crank\",\"horn:on\",\"key:run\"]}");
    }
}
