package loomwright.service.browser;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** A fault is looked for with a meter. */
class MeasureTabTest extends Workbench {
    private static final int MOST_READINGS = 12;

    /** Answers the reading on the screen from the solution of the faulty car; ohms are left out. */
    private static final String METER = """
            (async () => {
              const s = await import('/page/service.js');
              const form = document.querySelector('form.reading');
              const { red, black, condition, quantity, switches } = form.dataset;
              if (quantity !== 'volts') {
                [...document.querySelectorAll('#panel-measure button')].find(b => b.textContent === 'I cannot reach this point').click();
                return;
              }
              const plan = await s.getJson('/v1/examples/sandpiper-as-built');
              plan.wires.find(w => w.id === 'W34').toJointResistanceOhm = 2.5;
              for (const [id, position] of Object.entries(JSON.parse(switches))) {
                const part = plan.parts.find(p => p.id === id);
                if (part.positions) { part.position = position; } else { part.closedWhenStopped = position === 'closed'; }
              }
              const solved = (await s.postJson(`/v1/plans/solution?step=${condition}&only=nodes`, plan)).result;
              const nodeOf = end => solved.nodes.find(n => n.node === end || n.terminals.includes(end)).node;
              const volts = end => end === 'earth' ? 0 : solved.steps[0].nodes.find(n => n.node === nodeOf(end)).voltageV;
              document.querySelector('#reading').value = (volts(red) - volts(black)).toFixed(2);
              form.requestSubmit();
            })().then(done, failed);
            """;

    /** The meter is that of a car whose earth wire W34 has a bad joint; the session has to come to that. */
    @Test
    void aBadEarthIsFoundWithAMeter() {
        browser.openExample("as built");
        browser.tab("measure");
        browser.waitUntil(here -> !here.find("#begin").isEmpty());
        browser.choose("#complaint-load", "Heater blower");
        browser.choose("#complaint", "is weak");
        browser.one("#begin").click();
        List<Object> asked = new ArrayList<>();
        browser.waitUntil(here -> !here.find("#reading, #outcome, #doubt").isEmpty());
        while (browser.find("#outcome").isEmpty() && asked.size() < MOST_READINGS) {
            asked.add(browser.script("const { red, black, condition, switches } ="
                    + " document.querySelector('form.reading').dataset;"
                    + "return [...[red, black].sort(), condition, switches].join(' ')"));
            browser.later(METER);
            browser.waitUntil(here -> !here.find("#reading, #outcome, #doubt").isEmpty());
        }
        assertThat(browser.text("#panel-measure")).contains("What to repair", "W34");
        assertThat(asked).doesNotHaveDuplicates();

        browser.tab("print");
        browser.one("#sheet").click();
        browser.waitUntil(here -> here.one("#sheet-view").isDisplayed());
        Object measured = browser.script("return [...document.querySelector('#sheet-view').shadowRoot"
                + ".querySelectorAll('#measured tbody tr')].map(row => row.textContent)");
        assertThat((List<?>) measured).hasSizeGreaterThan(1);
        Object kept = browser.later("""
                const make = URL.createObjectURL;
                URL.createObjectURL = blob => { if (/text.html/.test(blob.type)) { blob.text().then(done, failed); } return make.call(URL, blob); };
                [...document.querySelectorAll('#panel-print button')].find(b => b.textContent.startsWith('Bench sheet (')).click();
                """);
        assertThat(String.valueOf(kept)).contains("id=\"measured\"").endsWith("</html>\n");
        for (Object row : (List<?>) measured) {
            assertThat(String.valueOf(kept)).contains(String.valueOf(row).substring(0, 5));
        }
    }
}
