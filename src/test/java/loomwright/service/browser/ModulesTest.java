package loomwright.service.browser;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The modules of the help page that calculate nothing but keep order: lists, patches, figures, fields. */
class ModulesTest {
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

    /** Examples of RFC 6902, appendix A. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '!',
            value = {
                "{\"foo\":\"bar\"} ! [{\"op\":\"add\",\"path\":\"/baz\",\"value\":\"qux\"}] ! {\"foo\":\"bar\",\"baz\":\"qux\"}",
                "{\"foo\":[\"bar\",\"baz\"]} ! [{\"op\":\"add\",\"path\":\"/foo/1\",\"value\":\"qux\"}] ! {\"foo\":[\"bar\",\"qux\",\"baz\"]}",
                "{\"baz\":\"qux\",\"foo\":\"bar\"} ! [{\"op\":\"remove\",\"path\":\"/baz\"}] ! {\"foo\":\"bar\"}",
                "{\"foo\":[\"bar\",\"qux\",\"baz\"]} ! [{\"op\":\"remove\",\"path\":\"/foo/1\"}] ! {\"foo\":[\"bar\",\"baz\"]}",
                "{\"baz\":\"qux\",\"foo\":\"bar\"} ! [{\"op\":\"replace\",\"path\":\"/baz\",\"value\":\"boo\"}] ! {\"foo\":\"bar\",\"baz\":\"boo\"}",
                "{\"foo\":[\"all\",\"grass\",\"cows\",\"eat\"]} ! [{\"op\":\"move\",\"from\":\"/foo/1\",\"path\":\"/foo/3\"}] ! {\"foo\":[\"all\",\"cows\",\"eat\",\"grass\"]}",
                "{\"foo\":[\"bar\"]} ! [{\"op\":\"add\",\"path\":\"/foo/-\",\"value\":[\"abc\",\"def\"]}] ! {\"foo\":[\"bar\",[\"abc\",\"def\"]]}",
                "{\"/\":9,\"~1\":10} ! [{\"op\":\"test\",\"path\":\"/~01\",\"value\":10}] ! {\"/\":9,\"~1\":10}"
            })
    void aPatchIsAppliedAsTheStandardHasIt(String document, String patch, String expected) {
        assertThat(browser.later(
                        "import('/page/patch.js').then(m => JSON.stringify(m.patched(JSON.parse(arguments[0]), JSON.parse(arguments[1]))))"
                                + ".then(done, failed);",
                        document,
                        patch))
                .isEqualTo(browser.script("return JSON.stringify(JSON.parse(arguments[0]))", expected));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "[{\"op\":\"add\",\"path\":\"/baz/bat\",\"value\":\"qux\"}]",
                "[{\"op\":\"test\",\"path\":\"/foo\",\"value\":\"qux\"}]",
                "[{\"op\":\"remove\",\"path\":\"/nobody\"}]"
            })
    void aPatchThatDoesNotFitIsRefused(String patch) {
        assertThat(browser.later(
                        "import('/page/patch.js').then(m => { try { m.patched({foo: 'bar'}, JSON.parse(arguments[0])); return 'applied'; }"
                                + " catch (e) { return e.message; } }).then(done, failed);",
                        patch))
                .asString()
                .startsWith("The car has changed");
    }

    /** A plan written as a list, read by the page and written by it, is the same plan. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "sandpiper-as-built",
                "sandpiper-unguarded-bypass",
                "sandpiper-bypass-relay",
                "sandpiper-electronic-module",
                "otter-6v-positive-earth"
            })
    void thePageLosesNothingOfAPlan(String example) {
        assertThat(browser.later(
                        "(async () => { const l = await import('/page/list.js'); const s = await import('/page/service.js');"
                                + "const plan = await s.getJson('/v1/examples/' + arguments[0]);"
                                + "const there = await s.postJson('/v1/plans/conversion', plan);"
                                + "const back = await s.planOfList(l.write(l.parse(await s.listOfPlan(plan))).text);"
                                + "return JSON.stringify(there.result.plan) === JSON.stringify(back.result.plan); })().then(done, failed);",
                        example))
                .isEqualTo(true);
    }

    @ParameterizedTest
    @CsvSource({"0.0003, 0", "-0.458, -0.46", "12.614, 12.6", "168.3, 168", "3.4, 3.40", "1234.5, 1235"})
    void aFigureIsWhatAMeterShows(double value, String shown) {
        assertThat(browser.later(
                        "import('/page/words.js').then(m => m.figure(Number(arguments[0]))).then(done, failed);",
                        String.valueOf(value)))
                .isEqualTo(shown);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                "lengthM; 10 ft; lengthFt=10",
                "lengthM; 3,5; lengthM=3.5",
                "lengthM; 45 cm; lengthM=0.45",
                "gapMm; 0.025 in; gapIn=0.025",
                "gapMm; 0,65; gapMm=0.65",
                "elementsOhm; 0.7, 0.7; elementsOhm=0.7,0.7",
                "elementsOhm; 0,7 + 0,7; elementsOhm=0.7,0.7",
                "network; 3,5; network=3.5",
                "network; (3,5 || 2) + 1k5; network=(3.5 || 2) + 1k5",
                "size; 14 AWG; size=14 AWG",
                "lengthM; three; lengthM=three"
            })
    void aFieldTakesUnitsAndCommas(String name, String typed, String sent) {
        assertThat(browser.later(
                        "import('/page/calculators.js').then(m => m.parameter({name: arguments[0], value: arguments[1]}).join('='))"
                                + ".then(done, failed);",
                        name,
                        typed))
                .isEqualTo(sent);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {"bat; battery +,battery -", "sol; solenoid,starter solenoid", "+; battery +", "zz; ''"})
    void offersBeginWithWhatWasTypedOrHaveAWordThatDoes(String typed, String offered) {
        assertThat(browser.later(
                        "import('/page/completion.js').then(m => m.fitting(['battery +', 'starter solenoid', 'battery -', 'solenoid'],"
                                + " arguments[0]).join(',')).then(done, failed);",
                        typed))
                .isEqualTo(offered);
    }

    @Test
    void aPartIsRenamedWhereverItIsNamed() {
        assertThat(browser.later("import('/page/list.js').then(m => { const car = m.withBlock(m.emptyCar(), 'wires', 0,"
                        + " ['from', 'to'], [['fuse 1 out', 'fuse 10 in'], ['Fuse 1 in', 'fuse-1.b']]);"
                        + " return m.renamed(car, ['fuse 1', 'fuse-1'], 'Dash fuse').wires.map(w => `${w.from} > ${w.to}`).join(', '); })"
                        + ".then(done, failed);"))
                .isEqualTo("Dash fuse out > fuse 10 in, Dash fuse in > Dash fuse.b");
    }

    /** What stands on a part is what the catalogue of the service names for its kind. */
    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                "{\"kind\":\"dynamo\",\"limitA\":22,\"regulatedV\":14.2}; 14.2 V 22 A",
                "{\"kind\":\"control-box\",\"cutInV\":12.7}; 12.7 V",
                "{\"kind\":\"fusible-link\",\"size\":\"14 AWG\"}; 14 AWG",
                "{\"kind\":\"ammeter\",\"fullScaleA\":30}; 30 A",
                "{\"kind\":\"stabiliser\",\"outputV\":10}; 10 V",
                "{\"kind\":\"led\",\"ratedV\":12,\"currentA\":0.2}; 12 V 0.2 A",
                "{\"kind\":\"ballast\",\"elementsOhm\":[0.9,0.6]}; 0.9 ohm + 0.6 ohm",
                "{\"kind\":\"lamp\",\"ratedV\":12,\"ratedW\":45}; 12 V 45 W"
            })
    void aPartSaysWhatStandsOnIt(String part, String shown) {
        assertThat(browser.later(
                        "const part = JSON.parse(arguments[0]);"
                                + "Promise.all([import('/page/words.js'), import('/page/service.js').then(s => s.partCatalogue())])"
                                + ".then(([w, catalogue]) => w.valueOf(part, catalogue.kinds)).then(done, failed);",
                        part))
                .isEqualTo(shown);
    }

    /** Followed by hand in the plan of the example. */
    @ParameterizedTest
    @CsvSource({
        "head-left, W4 W5 W23 W24 W25 W27 W29",
        "solenoid, W4 W5 W6 W14 W15 W16",
        "starter, W3 W17 W18",
        "coil, W4 W5 W6 W7 W8 W9 W10 W11",
        "blower, W4 W5 W6 W32 W33 W34"
    })
    void aCircuitLeadsFromTheBatteryThroughItsLoadToEarth(String load, String wires) {
        assertThat(browser.later(
                        "const load = arguments[0]; (async () => { const m = await import('/page/circuit.js'); const s = await import('/page/service.js');"
                                + "const plan = await s.getJson('/v1/examples/sandpiper-as-built');"
                                + "return m.circuitOf(plan, load).filter(e => e.wire).map(e => e.wire.id).join(' '); })()"
                                + ".then(done, failed);",
                        load))
                .isEqualTo(wires);
    }

    /** The picture of one car or position of the lights changed in place into another is the other one, markup for markup. */
    @ParameterizedTest
    @CsvSource({
        "sandpiper-as-built, out, sandpiper-as-built, head",
        "sandpiper-as-built, head, sandpiper-as-built, side",
        "sandpiper-as-built, side, sandpiper-bypass-relay, out",
        "sandpiper-bypass-relay, head, sandpiper-electronic-module, side"
    })
    void aPictureBecomesAnother(String from, String fromLights, String to, String toLights) {
        assertThat(browser.later(
                        "const [from, fromLights, to, toLights] = arguments; (async () => {"
                                + "const { become } = await import('/page/become.js'); const s = await import('/page/service.js');"
                                + "const picture = async (name, lights) => { const plan = await s.getJson('/v1/examples/' + name);"
                                + " plan.parts.find(p => p.id === 'lights').position = lights;"
                                + " const svg = await s.postText('/v1/plans/diagram?marks=none', plan, 'image/svg+xml');"
                                + " return document.importNode(new DOMParser().parseFromString(svg, 'image/svg+xml').documentElement, true); };"
                                + "const [shown, wanted] = [await picture(from, fromLights), await picture(to, toLights)];"
                                + "const before = wanted.outerHTML; if (shown.outerHTML === before) { return 'alike to begin with'; }"
                                + "shown.querySelector('.dg-wire').classList.add('lit'); become(shown, wanted);"
                                + "shown.querySelectorAll('.lit').forEach(e => e.classList.remove('lit'));"
                                + "['data-step', 'viewBox'].forEach(a => shown.setAttribute(a, wanted.getAttribute(a)));"
                                + "return wanted.outerHTML === before && shown.isEqualNode(wanted); })().then(done, failed);",
                        from,
                        fromLights,
                        to,
                        toLights))
                .isEqualTo(true);
    }

    /** W8 is too thin, and what follows from that is worse than it is itself; W9 has nothing to do with it. */
    @Test
    void aWireTooThinStandsBeforeWhatComesOfIt() {
        assertThat(browser.later("import('/page/findings.js').then(m => m.causesFirst(["
                        + "{code: 'fuse-too-large', ids: ['fuse']}, {code: 'backfeed', ids: ['tail', 'W8']},"
                        + "{code: 'voltage-drop', ids: ['head', 'W9'], wire: 'W9'}, {code: 'voltage-drop', ids: ['stop', 'W8'], wire: 'W8'},"
                        + "{code: 'load-not-powered', ids: ['stop']}], f => f.wire, f => f.ids)"
                        + ".map(({ finding, causes }) => [finding.code, finding.ids[0], ...causes.map(c => c.wire)].join(' ')).join(', '))"
                        + ".then(done, failed);"))
                .isEqualTo(
                        "fuse-too-large fuse, voltage-drop stop, backfeed tail W8, voltage-drop head, load-not-powered stop W8");
    }

    @Test
    void aDamagedLinkIsRefused() {
        assertThat(
                        browser.later(
                                "import('/page/cars.js').then(m => m.fromLink('#car=abcdef')).then(done, e => done(e.message));"))
                .asString()
                .startsWith("The link to the car is damaged");
    }
}
