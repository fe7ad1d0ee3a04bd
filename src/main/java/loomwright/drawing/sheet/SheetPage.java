package loomwright.drawing.sheet;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.stream.Stream;
import loomwright.answer.Answer;
import loomwright.answer.Basis;
import loomwright.answer.Finding;
import loomwright.comparison.PlanComparison;
import loomwright.comparison.PlanComparison.Item;
import loomwright.comparison.PlanComparison.ItemChange;
import loomwright.comparison.PropertyWording;
import loomwright.drawing.sheet.Html.Cell;
import org.jspecify.annotations.Nullable;

/** Puts a sheet together: cautions, work and material first, then pictures, what to expect, what is found, what to measure. */
public final class SheetPage {
    static final String STYLE = resource("sheet.css");

    private final JobSheet sheet;
    private final Html html = new Html();

    private SheetPage(JobSheet sheet) {
        this.sheet = sheet;
    }

    /** The sheet as one file of HTML. */
    public static String of(Answer<JobSheet> answer) {
        return new SheetPage(answer.result()).write(answer);
    }

    private String write(Answer<JobSheet> answer) {
        List<Basis> basis = answer.basis();
        head();
        SheetHead.writeCautions(html, answer.cautions());
        SheetHead.writeReading(html, answer.assumptions());
        PlanComparison comparison = sheet.comparison();
        if (comparison != null) {
            work(comparison);
        }
        html.open("section", "")
                .heading((comparison == null ? SheetText.MATERIAL_OF_PLAN : SheetText.MATERIAL_TO_GET).text());
        MaterialTables.write(html, sheet.material());
        if (comparison != null) {
            html.element("h3", "", SheetText.LEFT_OVER.text());
            MaterialTables.write(html, comparison.material().removedMaterial());
        }
        html.close();
        pictures();
        html.open("section", "").heading(SheetText.LOADS.text());
        new ConditionTable(sheet).write(html);
        html.close();
        findings(comparison);
        html.open("section", "").heading(SheetText.READINGS.text());
        ReadingsTable.write(html, sheet.readings());
        html.close();
        html.open("section", "basis").heading(SheetText.BASIS.text());
        html.list("", basis.stream().map(Basis::inWords).toList()).close();
        return Html.page(sheet.title(), STYLE, html, "record");
    }

    private void head() {
        SheetHead.write(html, sheet.title(), sheet.goal(), sheet.comparison());
        sheet.goal().notes().forEach(html::paragraph);
    }

    private void pictures() {
        List<SheetText> captions = List.of(
                sheet.comparison() == null ? SheetText.THE_CIRCUIT : SheetText.AS_IT_IS, SheetText.AS_IT_WILL_BE);
        for (int i = 0; i < sheet.pictures().size(); i++) {
            for (JobSheet.SheetPicture one : sheet.pictures().get(i)) {
                String caption = captions.get(i).text() + (one.title().isEmpty() ? "" : ". " + one.title());
                Pictures.write(html, caption, one.picture());
            }
        }
    }

    private void work(PlanComparison comparison) {
        html.open("section", "").heading(SheetText.WORK.text());
        List<List<Cell>> rows = Stream.concat(
                        comparison.changes().stream().map(SheetPage::change),
                        comparison.looseEnds().newLooseEnds().stream()
                                .map(l -> List.of(
                                        Cell.tick(),
                                        Cell.of(SheetText.LEFT_BEHIND.text()),
                                        Cell.of(l.text() + " " + l.remedy().text()))))
                .toList();
        if (rows.isEmpty()) {
            html.paragraph(SheetText.NOTHING_CHANGES.text());
        } else {
            html.table("work", List.of("", SheetText.WHAT.text(), SheetText.WHERE.text()), rows);
        }
        html.close();
    }

    private static List<Cell> change(ItemChange change) {
        String what = change.description();
        String was = thing(change.item(), change.wasText());
        String is = thing(change.item(), change.isText());
        String text = was.isEmpty() ? is : is.isEmpty() || was.equals(is) ? was : was + " → " + is;
        String properties = String.join(
                "; ", change.properties().stream().map(PropertyWording::change).toList());
        return List.of(
                Cell.tick(),
                Cell.of(change.item().text() + " " + what),
                Cell.of(text + (properties.isEmpty() ? "" : " (" + properties + ")")));
    }

    /** A part is described by what it is called and its kind, a wire by its size among other things. */
    private static String thing(Item item, @Nullable String text) {
        String given = SheetWords.orBlank(text);
        return switch (item) {
            case PART, CONNECTOR -> given;
            case WIRE -> PropertyWording.size(given);
        };
    }

    private void findings(@Nullable PlanComparison comparison) {
        html.open("section", "").heading((comparison == null ? SheetText.FINDINGS : SheetText.FINDINGS_LEFT).text());
        findings(sheet.review().findings());
        if (comparison != null && !comparison.findings().disappear().isEmpty()) {
            html.element("h3", "", SheetText.CURED.text());
            html.list(
                    "",
                    comparison.findings().disappear().stream()
                            .map(Finding::text)
                            .toList());
        }
        html.close();
    }

    private void findings(List<Finding> findings) {
        if (findings.isEmpty()) {
            html.paragraph(SheetText.NONE.text());
            return;
        }
        FindingsTable.write(html, findings);
    }

    private static String resource(String name) {
        try (InputStream in = SheetPage.class.getResourceAsStream(name)) {
            if (in == null) {
                throw new IllegalStateException(name + " is not on the class path");
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
