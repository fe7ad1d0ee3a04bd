package loomwright.service.browser;

import java.io.PrintStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/**
 * Measures how long the workbench takes, for docs/performance.md. Not a test: it says what it finds. To run it:
 *
 * <pre>{@code mvn -q test-compile exec:java -Dexec.classpathScope=test -Dexec.mainClass=loomwright.service.browser.PageTimes}</pre>
 */
public final class PageTimes {
    private static final int ROUNDS = 15;
    private static final int WARM_UP = 5;

    /** After so many pictures the service runs as fast as it will. */
    private static final int WARM = 80;

    /** Waits until the picture has been exchanged and a frame been drawn; hands on the milliseconds. */
    private static final String UNTIL_DRAWN = """
            const frame = document.querySelector('#diagram');
            const began = performance.now();
            const watch = new MutationObserver(() => { watch.disconnect();
              requestAnimationFrame(() => setTimeout(() => done(performance.now() - began))); });
            watch.observe(frame, {attributes: true, attributeFilter: ['data-drawn']});
            """;

    private static final String EDIT = UNTIL_DRAWN + """
            const cell = document.querySelector('#wire-grid input[data-column=length]');
            cell.value = `${(1 + arguments[0] / 100).toFixed(2)} m`;
            cell.dispatchEvent(new FocusEvent('focusout', {bubbles: true}));
            """;

    private static final String KEY = """
            const began = performance.now();
            const steps = document.querySelectorAll('#steps input');
            steps[arguments[0] % steps.length].click();
            requestAnimationFrame(() => setTimeout(() => done(performance.now() - began)));
            """;

    private static final String SWITCH = UNTIL_DRAWN + """
            const chooser = document.querySelector('#switches select');
            chooser.selectedIndex = (chooser.selectedIndex + 1) % chooser.options.length;
            chooser.dispatchEvent(new Event('change', {bubbles: true}));
            """;

    /** A position of the switches that was never shown before: of the ways to set eight of them, each is one move from the last. */
    private static final String ANOTHER_SWITCH = UNTIL_DRAWN + """
            const choosers = [...document.querySelectorAll('#switches select')];
            const gray = i => i ^ (i >> 1);
            const moved = 31 - Math.clz32(gray(arguments[0] + 1) ^ gray(arguments[0]));
            choosers[moved].selectedIndex = 1 - choosers[moved].selectedIndex;
            choosers[moved].dispatchEvent(new Event('change', {bubbles: true}));
            """;

    private PageTimes() {}

    /** Prints a line for each time. */
    public static void main(String[] arguments) {
        PrintStream out = System.out;
        try (Browser browser = Browser.start()) {
            browser.open(Browser.WIDE).openExample("as built");
            // The checks take the processor that the browser needs.
            browser.waitUntil(here -> !here.find("#finding-count:not([hidden])").isEmpty());
            out.println("key turned, 35 wires: " + median(browser, KEY));
            out.println("switch moved, 35 wires: " + median(browser, SWITCH));
            browser.open(Browser.WIDE);
            Workbench.paste(browser, Workbench.NINE_SWITCHES);
            out.println("switch moved that nobody asked for ahead, 29 wires: " + median(browser, ANOTHER_SWITCH));
            IntStream.range(WARM_UP + ROUNDS, WARM).forEach(i -> browser.later(ANOTHER_SWITCH, i));
            out.println("the same, after " + WARM + " moves: " + median(browser, ANOTHER_SWITCH, WARM));
            browser.open(Browser.WIDE).openExample("as built");
            out.println("cell changed, 35 wires: " + median(browser, EDIT));
            browser.open(Browser.WIDE);
            Workbench.paste(browser, lamps());
            out.println("cell changed, 150 wires: " + median(browser, EDIT));
            browser.visit("/docs");
            for (int i = 0; i < WARM_UP; i++) {
                browser.visit("/docs");
            }
            out.println(
                    "/docs: "
                            + browser.script(
                                    "return Math.round(performance.getEntriesByType('navigation')[0].domContentLoadedEventEnd) + ' ms'"));
        }
    }

    /** A car of 150 wires: battery, and 37 lamps of four wires each behind a fuse. */
    private static List<String> lamps() {
        List<String> wires =
                new ArrayList<>(List.of("battery -\tbody\t35 mm2\t0.5 m", "battery +\tstud\t35 mm2\t0.5 m"));
        IntStream.rangeClosed(1, 37).forEach(i -> {
            wires.add("stud\tfuse " + i + " in\t2.5 mm2\t0.3 m");
            wires.add("fuse " + i + " out\tjoint " + i + "\t1.5 mm2\t1 m");
            wires.add("joint " + i + "\tlamp " + i + " +\t1 mm2\t2 m");
            wires.add("lamp " + i + " -\tbody\t1 mm2\t1 m");
        });
        return wires;
    }

    private static String median(Browser browser, String script) {
        return median(browser, script, 0);
    }

    /** The median of rounds from {@code first} on, after the warming up. */
    private static String median(Browser browser, String script, int first) {
        List<Double> times = IntStream.range(first, first + WARM_UP + ROUNDS)
                .mapToObj(i -> Double.parseDouble(String.valueOf(browser.later(script, i))))
                .skip(WARM_UP)
                .sorted()
                .collect(Collectors.toList());
        return String.format(
                Locale.ROOT,
                "median %.0f ms, slowest %.0f ms",
                times.get(times.size() / 2),
                times.get(times.size() - 1));
    }
}
