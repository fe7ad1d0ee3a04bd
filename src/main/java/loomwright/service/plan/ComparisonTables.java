package loomwright.service.plan;

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
import loomwright.service.form.EnumWords;
import loomwright.service.form.Markdown;
import loomwright.service.form.Table;
import org.jspecify.annotations.Nullable;

/** A comparison as one table, and as text for a forum post. */
public final class ComparisonTables {
    private ComparisonTables() {}

    /** One row for each difference: what it is about, before, after. */
    public static Table table(PlanComparison result) {
        List<List<@Nullable Object>> rows = new ArrayList<>();
        result.settings()
                .forEach(s -> rows.add(Arrays.asList("setting", null, s.property(), "changed", s.before(), s.after())));
        for (ItemChange change : result.changes()) {
            String what = EnumWords.of(change.item());
            String id = change.after() == null ? change.before() : change.after();
            rows.add(Arrays.asList(what, null, id, kinds(change), change.wasText(), change.isText()));
            change.properties()
                    .forEach(p -> rows.add(
                            Arrays.asList(what, null, id + " " + p.property(), "changed", p.before(), p.after())));
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
        result.newLooseEnds()
                .forEach(l ->
                        rows.add(Arrays.asList(EnumWords.of(l.kind()), null, l.id(), "left behind", null, l.text())));
        result.resolvedLooseEnds()
                .forEach(l ->
                        rows.add(Arrays.asList(EnumWords.of(l.kind()), null, l.id(), "cleared up", l.text(), null)));
        material(rows, "needed", result.needed());
        material(rows, "removedMaterial", result.removedMaterial());
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
        material.parts().forEach(p -> lines.add(p.label() + " (" + p.kind() + "): " + p.data()));
        material.wires()
                .forEach(w -> lines.add("wire " + orDash(w.colour()) + " " + orDash(w.size()) + ": " + w.pieces()
                        + (w.pieces() == 1 ? " piece, " : " pieces, ") + Markdown.figure(w.totalM()) + " m ("
                        + String.join(", ", w.wires()) + ")"));
        material.terminals()
                .forEach(t -> lines.add(t.number() + (t.number() == 1 ? " terminal " : " terminals ")
                        + (t.form() == null
                                ? "of the form that fits the " + t.at()
                                : t.form() + " " + Markdown.figure(t.widthMm() == null ? 0 : t.widthMm()) + " mm "
                                        + t.gender())
                        + " for wire " + orDash(t.size())));
        return lines;
    }

    private static String orDash(@Nullable String text) {
        return text == null ? "(not stated)" : text;
    }

    /** The comparison as text, cautions first. */
    public static String markdown(Answer<PlanComparison> answer) {
        PlanComparison result = answer.result();
        Markdown text = new Markdown().title("From " + result.before() + " to " + result.after());
        text.cautions(answer);
        if (result.same()) {
            return text.paragraph("There is no difference.").grounds(answer).toString();
        }
        text.section("What is changed");
        text.bullets(result.changes().stream().map(ComparisonTables::line).toList());
        text.section("What hangs loose or has nothing behind it now");
        text.bullets(result.newLooseEnds().stream()
                .map((Leftover l) -> l.text() + " " + l.remedy().text())
                .toList());
        text.section("What is put right");
        findings(text, result.findings().disappear());
        text.section("What is new and wrong");
        findings(text, result.findings().appear());
        text.section("What was wrong and still is");
        findings(text, result.findings().stay().stream().map(Kept::after).toList());
        for (StepChange step : result.steps()) {
            text.section("Readings, " + step.description());
            List<List<String>> rows = new ArrayList<>();
            step.readings()
                    .forEach(r -> rows.add(List.of(
                            r.at() + " " + EnumWords.of(r.quantity()),
                            reading(r.before(), r.unit()),
                            reading(r.after(), r.unit()))));
            step.states().forEach(s -> rows.add(List.of(s.part(), s.before(), s.after())));
            text.table(List.of("At", "Before", "After"), rows);
        }
        text.section("Needed");
        text.bullets(lines(result.needed()));
        text.section("Left over");
        text.bullets(lines(result.removedMaterial()));
        return text.grounds(answer).toString();
    }

    private static void findings(Markdown text, List<Finding> findings) {
        text.bullets(findings.stream()
                .map(f -> EnumWords.of(f.severity()) + ": " + f.text())
                .toList());
    }

    private static String reading(@Nullable Double value, String unit) {
        return value == null ? "floating" : Markdown.figure(value) + " " + unit;
    }

    private static String line(ItemChange change) {
        String was = change.wasText();
        String is = change.isText();
        String text = was == null || is == null || was.equals(is)
                ? (is == null ? String.valueOf(was) : is)
                : was + " → " + is;
        String properties = change.properties().stream()
                .map(p -> p.property() + " " + orDash(p.before()) + " → " + orDash(p.after()))
                .collect(Collectors.joining("; "));
        return change.description() + ": " + text + (properties.isEmpty() ? "" : " (" + properties + ")");
    }
}
