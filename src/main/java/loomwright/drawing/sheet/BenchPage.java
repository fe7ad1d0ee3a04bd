package loomwright.drawing.sheet;

import static loomwright.message.Arg.arg;
import static loomwright.message.Arg.texts;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import loomwright.answer.Answer;
import loomwright.answer.Assumption;
import loomwright.answer.Caution;
import loomwright.answer.Finding;
import loomwright.circuit.TerminalRef;
import loomwright.drawing.diagram.PaperPictures;
import loomwright.drawing.sheet.Html.Cell;
import loomwright.message.Message;
import loomwright.message.MessageCode;
import loomwright.readings.ReadingsSheet.Reading;

/** Puts a bench sheet on few pages, in the order in which it is used. */
final class BenchPage {
    private final BenchSheet sheet;
    private final WorkWords words;
    private final Html html = new Html();

    private BenchPage(BenchSheet sheet) {
        this.sheet = sheet;
        this.words = new WorkWords(sheet.goal());
    }

    /** The sheet as one file of HTML. */
    static String of(Answer<BenchSheet> answer) {
        return new BenchPage(answer.result()).write(answer.cautions(), answer.assumptions());
    }

    private String write(List<Caution> cautions, List<Assumption> assumptions) {
        SheetHead.write(html, sheet.title(), sheet.goal(), sheet.comparison());
        SheetHead.writeCautions(html, cautions);
        SheetHead.writeReading(html, assumptions);
        if (sheet.comparison() != null) {
            html.open("section", "").heading(SheetText.WORK.text());
            html.table(
                    "steps",
                    List.of("", "", SheetText.STEP.text()),
                    sheet.work().stream()
                            .map(step -> List.of(
                                    Cell.tick(),
                                    new Cell(String.valueOf(step.number()), "number"),
                                    Cell.of(step.message().text())))
                            .toList());
            html.close();
            findingsLeft();
            toBuy();
        } else {
            findings();
        }
        readings();
        html.open("p", "more").text(WorkText.RECORD_HAS_MORE.text()).close();
        // Last, because it may take a page of its own, wherever that begins.
        pictures();
        return Html.page(sheet.title(), SheetPage.STYLE, html, "bench");
    }

    /** What is still wrong after a change, in short. */
    private void findingsLeft() {
        List<Finding> all = sheet.findings();
        if (!all.isEmpty()) {
            html.open("section", "").heading(WorkText.FINDINGS_LEFT.text());
            html.list(
                    "",
                    all.stream()
                            .limit(BenchSheet.MOST_FINDINGS)
                            .map(finding -> WorkText.FINDING_LEFT
                                    .with(
                                            arg("severity", finding.severity()),
                                            arg("text", finding.message().shortText()))
                                    .text())
                            .toList());
            more(all);
            html.close();
        }
    }

    private void more(List<Finding> all) {
        if (all.size() > BenchSheet.MOST_FINDINGS) {
            html.paragraph(WorkText.FINDINGS_MORE
                    .with(arg("count", all.size() - BenchSheet.MOST_FINDINGS))
                    .text());
        }
    }

    /** Of a plan alone the findings are the work. */
    private void findings() {
        List<Finding> all = sheet.findings();
        html.open("section", "").heading(SheetText.FINDINGS.text());
        if (all.isEmpty()) {
            html.paragraph(SheetText.NONE.text()).close();
            return;
        }
        FindingsTable.write(html, all.subList(0, Math.min(all.size(), BenchSheet.MOST_FINDINGS)));
        more(all);
        html.close();
    }

    private void toBuy() {
        List<Message> lines = Shopping.list(sheet.material());
        if (lines.isEmpty()) {
            return;
        }
        html.open("section", "").heading(SheetText.TO_BUY.text());
        html.list("ticks", lines.stream().map(Message::text).toList());
        if (!sheet.material().wires().isEmpty()) {
            html.paragraph(WorkText.SLACK.with(arg("lengthM", Shopping.SLACK_M)).text());
        }
        html.close();
    }

    private void pictures() {
        PaperPictures pictures = sheet.pictures();
        if (pictures.pictures().isEmpty()) {
            return;
        }
        html.open("figure", "close")
                .element(
                        "figcaption",
                        "",
                        WorkText.PICTURE_CAPTION
                                .with(arg("of", sheet.comparison() == null ? "findings" : "work"))
                                .text());
        pictures.pictures().forEach(picture -> html.picture(picture));
        pictures.keys().forEach(keys -> html.picture(keys));
        if (!pictures.leftOut().isEmpty()) {
            html.paragraph(WorkText.NOT_IN_PICTURE
                    .with(texts(
                            "numbers",
                            pictures.leftOut().stream()
                                    .sorted()
                                    .map(String::valueOf)
                                    .toList()))
                    .text());
        }
        html.close();
    }

    private void readings() {
        html.open("section", "").heading(SheetText.READINGS.text());
        List<List<Cell>> rows = new ArrayList<>();
        Map<List<MessageCode>, Integer> said = new HashMap<>();
        String situation = "";
        int number = 0;
        for (Reading reading : sheet.readings()) {
            if (!reading.taken().situation().equals(situation)) {
                situation = reading.taken().situation();
                rows.add(List.of(Cell.of(situation)));
            }
            number++;
            Integer before =
                    said.putIfAbsent(reading.tells().stream().map(Message::code).toList(), number);
            rows.add(List.of(
                    Cell.of(String.valueOf(number)),
                    Cell.of(lead(reading.leads().red(), reading.leads().redLabel())),
                    Cell.of(lead(reading.leads().black(), reading.leads().blackLabel())),
                    new Cell(ReadingsTable.sound(reading), "sound"),
                    Cell.box(),
                    new Cell(
                            before == null
                                    ? reading.advice()
                                    : SheetText.AS_READING
                                            .with(arg("number", before))
                                            .text(),
                            "tells")));
        }
        html.table(
                "few",
                List.of(
                        "",
                        SheetText.RED_LEAD.text(),
                        SheetText.BLACK_LEAD.text(),
                        SheetText.EXPECTED.text(),
                        SheetText.MEASURED.text(),
                        SheetText.WHAT_IT_MEANS.text()),
                rows);
        html.close();
    }

    /** Where a lead goes, with the colours of the wires that are there. */
    private String lead(String point, String label) {
        String colours = point.equals("earth") ? "" : words.coloursAt(TerminalRef.parse(point));
        return colours.isEmpty()
                ? label
                : WorkText.WIRES_THERE
                        .with(arg("label", label), arg("colours", colours))
                        .text();
    }
}
