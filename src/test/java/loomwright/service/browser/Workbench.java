package loomwright.service.browser;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;

/** A browser that opens the workbench anew before each test, and after it complains of nothing. */
abstract class Workbench {
    /** Twenty wires of an invented car: from, to, size, length, colour. */
    static final List<String> LIST = List.of(
            "battery -\tengine\t35 mm2\t0.6 m\tblack",
            "engine\tbody\t16 mm2\t0.4 m\tblack",
            "battery +\tstarter solenoid battery post\t35 mm2\t0.8 m\tred",
            "starter solenoid motor post\tstarter motor\t35 mm2\t0.4 m\tblack",
            "battery +\tfuse 1 in\t4 mm2\t0.3 m\tred",
            "fuse 1 out\tkey 30\t4 mm2\t1.2 m\tbrown",
            "key 50\tstarter solenoid small terminal\t2.5 mm2\t1.5 m\twhite/red",
            "key 15\tballast in\t2.5 mm2\t1.2 m\twhite",
            "ballast out\tcoil +\t2.5 mm2\t0.3 m\twhite/blue",
            "coil -\tpoints\t1.5 mm2\t0.5 m\twhite/black",
            "condenser\tpoints\t1 mm2\t0.2 m\tblack",
            "battery +\tfuse 2 in\t4 mm2\t0.4 m\tbrown",
            "fuse 2 out\tlighting switch 30\t2.5 mm2\t1 m\tbrown",
            "lighting switch 58\tside lamp left\t1 mm2\t2 m\tred",
            "lighting switch 58\ttail lamp right\t1 mm2\t4 m\tred",
            "lighting switch 56\theadlamp left\t2.5 mm2\t1.8 m\tblue",
            "lighting switch 56\theadlamp right\t2.5 mm2\t2.4 m\tblue",
            "key 15\tfuse 3 in\t2.5 mm2\t0.4 m\twhite",
            "fuse 3 out\theater\t1.5 mm2\t1.5 m\tgreen",
            "heater earth\tbody\t1.5 mm2\t0.5 m\tblack");

    /** Nine lamps, each with a switch of its own: 29 wires, and more moves than are asked for ahead. */
    static final List<String> NINE_SWITCHES = Stream.concat(
                    Stream.of("battery -\tbody\t16 mm2\t0.5 m", "battery +\tfuse 1 in\t4 mm2\t0.5 m"),
                    IntStream.rangeClosed(1, 9)
                            .boxed()
                            .flatMap(i -> Stream.of(
                                    "fuse 1 out\tswitch " + i + " in\t1.5 mm2\t1 m",
                                    "switch " + i + " out\tlamp " + i + " +\t1 mm2\t2 m",
                                    "lamp " + i + " -\tbody\t1 mm2\t1 m")))
            .toList();

    static Browser browser;

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
        browser.complaints();
    }

    @AfterEach
    void nothingWasComplainedOf() {
        // A refusal is an answer that the page shows; the browser notes its status all the same.
        assertThat(browser.complaints()).allMatch(message -> message.contains("status of 4"));
    }

    /** Begins an empty list and pastes a block into its first cell, as from a spreadsheet. */
    static void paste(List<String> rows) {
        paste(browser, rows);
    }

    static void paste(Browser browser, List<String> rows) {
        browser.waitUntil(here -> !here.find("#empty").isEmpty());
        browser.one("#empty").click();
        browser.waitUntil(here -> "from".equals(here.focused().getAttribute("data-column")));
        pasteIntoCell(browser, rows);
        browser.waitUntil(here -> here.isDrawn() && here.rows("#wire-grid").size() == rows.size() + 1);
    }

    static void pasteIntoCell(Browser browser, List<String> rows) {
        browser.script(
                "const data = new DataTransfer(); data.setData('text/plain', arguments[0]);"
                        + "document.activeElement.dispatchEvent(new ClipboardEvent('paste',"
                        + " {clipboardData: data, bubbles: true, cancelable: true}));",
                String.join("\n", rows));
    }
}
