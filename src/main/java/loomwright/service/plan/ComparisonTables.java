package loomwright.service.plan;

import static loomwright.message.Arg.arg;
import static loomwright.message.Arg.texts;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import loomwright.answer.Answer;
import loomwright.answer.Finding;
import loomwright.comparison.PlanComparison;
import loomwright.comparison.PlanComparison.ItemChange;
import loomwright.comparison.PlanComparison.Kept;
import loomwright.comparison.PlanComparison.Leftover;
import loomwright.comparison.PlanComparison.Material;
import loomwright.comparison.PlanComparison.StepChange;
import loomwright.comparison.PropertyValue;
import loomwright.comparison.PropertyWording;
import loomwright.drawing.diagram.DiagramText;
import loomwright.message.Argument.Quantity;
import loomwright.message.Catalogue;
import loomwright.service.form.EnumWords;
import loomwright.service.form.Markdown;
import loomwright.service.form.PostText;
import loomwright.service.form.Table;
import org.jspecify.annotations.Nullable;

/** A comparison as one table, and as text for a forum post. */
public final class ComparisonTables {
    private ComparisonTables() {}

    /** One row for each difference: what it is about, before, after. */
    public static Table table(PlanComparison result) {
        List<List<@Nullable Object>> rows = new ArrayList<>();
        result.settings()
                .forEach(s -> rows.add(
                        Arrays.asList("setting", null, s.property(), "changed", text(s.before()), text(s.after()))));
        for (ItemChange change : result.changes()) {
            String what = EnumWords.of(change.item());
            String id = change.after() == null ? change.before() : change.after();
            rows.add(Arrays.asList(what, null, id, kinds(change), change.wasText(), change.isText()));
            change.properties()
                    .forEach(p -> rows.add(Arrays.asList(
                            what, null, id + " " + p.property(), "changed", text(p.before()), text(p.after()))));
        }
        for (StepChange step : result.steps()) {
            step.readings()
                    .forEach(r -> rows.add(Arrays.asList(
                            "reading",
                            step.step(),
                            r.at(),
                            EnumWords.of(r.quantity()) + " " + r.unit(),
                            r.before(),
                            r.after())));
            step.states()
                    .forEach(s ->
                            rows.add(Arrays.asList("state", step.step(), s.part(), "changed", s.before(), s.after())));
        }
        result.findings().appear().forEach(f -> rows.add(finding(f, "appears", null, f.text())));
        result.findings()
                .stay()
                .forEach(k -> rows.add(
                        finding(k.after(), "stays", k.before().text(), k.after().text())));
        result.findings().disappear().forEach(f -> rows.add(finding(f, "disappears", f.text(), null)));
        result.looseEnds()
                .newLooseEnds()
                .forEach(l ->
                        rows.add(Arrays.asList(EnumWords.of(l.kind()), null, l.id(), "left behind", null, l.text())));
        result.looseEnds()
                .resolvedLooseEnds()
                .forEach(l ->
                        rows.add(Arrays.asList(EnumWords.of(l.kind()), null, l.id(), "cleared up", l.text(), null)));
        material(rows, "needed", result.material().needed());
        material(rows, "removedMaterial", result.material().removedMaterial());
        return new Table(List.of("what", "step", "id", "change", "before", "after"), rows);
    }

    private static String kinds(ItemChange change) {
        return change.changes().stream().map(EnumWords::of).collect(Collectors.joining(" "));
    }

    private static List<@Nullable Object> finding(
            Finding finding, String change, @Nullable String before, @Nullable String after) {
        return Arrays.asList("finding", null, String.join(" ", finding.ids()), change, before, after);
    }

    private static void material(List<List<@Nullable Object>> rows, String change, Material material) {
        for (String line : lines(material)) {
            boolean needed = change.equals("needed");
            rows.add(Arrays.asList("material", null, null, change, needed ? null : line, needed ? line : null));
        }
    }

    private static List<String> lines(Material material) {
        List<String> lines = new ArrayList<>();
        material.parts()
                .forEach(p -> lines.add(PostText.PART_NEEDED
                        .with(
                                arg("label", p.label()),
                                arg("kind", p.kind()),
                                arg("data", PropertyWording.list(p.properties())))
                        .text()));
        material.wires()
                .forEach(w -> lines.add(PostText.WIRE_NEEDED
                        .with(
                                arg("look", orDash(w.colour())),
                                arg("size", orDash(w.size())),
                                arg("pieces", w.pieces()),
                                arg("totalM", w.totalM()),
                                texts("wires", w.wires()))
                        .text()));
        material.terminals()
                .forEach(t -> lines.add(PostText.TERMINAL_NEEDED
                        .with(
                                arg("count", t.number()),
                                arg("form", t.form() == null ? "none" : String.valueOf(t.form())),
                                arg("width", new Quantity(t.widthMm() == null ? 0 : t.widthMm(), "mm")),
                                arg("gender", String.valueOf(t.gender())),
                                arg("at", String.valueOf(t.at())),
                                arg("size", orDash(t.size())))
                        .text()));
        return lines;
    }

    private static String orDash(@Nullable String text) {
        return text == null ? PostText.NOT_STATED.text() : text;
    }

    /** The comparison as text, cautions first. */
    public static String markdown(Answer<PlanComparison> answer) {
        PlanComparison result = answer.result();
        Markdown text = new Markdown()
                .title(DiagramText.COMPARISON_TITLE
                        .with(arg("before", result.before()), arg("after", result.after()))
                        .text());
        text.cautions(answer);
        if (result.same()) {
            return text.paragraph(PostText.NO_DIFFERENCE.text()).grounds(answer).toString();
        }
        text.section(PostText.WHAT_IS_CHANGED.text());
        text.bullets(result.changes().stream().map(ComparisonTables::line).toList());
        text.section(PostText.NEW_LOOSE_ENDS.text());
        text.bullets(result.looseEnds().newLooseEnds().stream()
                .map((Leftover l) -> l.text() + " " + l.remedy().text())
                .toList());
        text.section(PostText.PUT_RIGHT.text());
        findings(text, result.findings().disappear());
        text.section(PostText.NEWLY_WRONG.text());
        findings(text, result.findings().appear());
        text.section(PostText.STILL_WRONG.text());
        findings(text, result.findings().stay().stream().map(Kept::after).toList());
        for (StepChange step : result.steps()) {
            text.section(
                    PostText.READINGS_AT.with(arg("when", step.description())).text());
            List<List<String>> rows = new ArrayList<>();
            step.readings()
                    .forEach(r -> rows.add(List.of(
                            r.at() + " " + EnumWords.of(r.quantity()),
                            reading(r.before(), r.unit()),
                            reading(r.after(), r.unit()))));
            step.states().forEach(s -> rows.add(List.of(s.part(), s.before(), s.after())));
            text.table(List.of(PostText.AT.text(), PostText.BEFORE.text(), PostText.AFTER.text()), rows);
        }
        text.section(PostText.NEEDED.text());
        text.bullets(lines(result.material().needed()));
        text.section(PostText.LEFT_OVER.text());
        text.bullets(lines(result.material().removedMaterial()));
        return text.grounds(answer).toString();
    }

    private static @Nullable String text(@Nullable PropertyValue value) {
        return value == null ? null : value.toString();
    }

    private static void findings(Markdown text, List<Finding> findings) {
        text.bullets(findings.stream()
                .map(f -> f.severity().text() + ": " + f.text())
                .toList());
    }

    private static String reading(@Nullable Double value, String unit) {
        return value == null ? PostText.FLOATING.text() : Catalogue.inUse().quantity(value, unit);
    }

    private static String line(ItemChange change) {
        String was = change.wasText();
        String is = change.isText();
        String text = was == null || is == null || was.equals(is)
                ? (is == null ? String.valueOf(was) : is)
                : was + " → " + is;
        String properties =
                change.properties().stream().map(p -> PropertyWording.change(p)).collect(Collectors.joining("; "));
        return change.description() + ": " + text + (properties.isEmpty() ? "" : " (" + properties + ")");
    }
}
