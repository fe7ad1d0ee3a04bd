package loomwright.service.plan;

import static loomwright.message.Arg.arg;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.BiConsumer;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import loomwright.answer.Answer;
import loomwright.answer.Finding;
import loomwright.backfeed.BackfeedReport;
import loomwright.backfeed.BackfeedReport.Occurrence;
import loomwright.backfeed.BackfeedReport.Remedy;
import loomwright.backfeed.BackfeedReport.UnintendedFeed;
import loomwright.message.Catalogue;
import loomwright.message.Message;
import loomwright.mistakes.MistakesReport;
import loomwright.mistakes.MistakesReport.Mistake;
import loomwright.operation.PlanReadings;
import loomwright.operation.PlanReadings.StepReadings;
import loomwright.review.ReviewReport;
import loomwright.service.form.Markdown;
import loomwright.service.form.PostText;
import org.jspecify.annotations.Nullable;

/** The answers about plans as text for a forum post, what matters most first. */
public final class PlanPosts {
    private PlanPosts() {}

    /** Volts, amperes and states, a column for each step. */
    public static String readings(Answer<PlanReadings> answer) {
        List<StepReadings> steps = answer.result().steps();
        Markdown text = new Markdown().title(answer.result().plan());
        List<String> findings = steps.stream()
                .flatMap(step -> step.findings().stream().map(f -> step.description() + ": " + f.text()))
                .toList();
        if (!findings.isEmpty()) {
            text.section(PostText.WHAT_IS_WRONG.text()).bullets(findings);
        }
        bySteps(
                text,
                PostText.VOLTS,
                steps,
                (step, column) -> step.nodes().forEach(n -> column.accept(n.node(), volts(n.voltageV()))));
        bySteps(
                text,
                PostText.AMPERES,
                steps,
                (step, column) -> step.wires()
                        .forEach(w -> column.accept(w.wire(), Catalogue.inUse().quantity(w.currentA(), "A"))));
        bySteps(
                text,
                PostText.VOLTS_OF_CONNECTORS,
                steps,
                (step, column) -> step.connectors()
                        .forEach(c -> c.contacts()
                                .forEach(b -> column.accept(
                                        PostText.BETWEEN
                                                .with(arg("from", b.from()), arg("to", b.to()))
                                                .text(),
                                        volts(b.voltageV())))));
        bySteps(
                text,
                PostText.WHAT_PARTS_DO,
                steps,
                (step, column) -> step.parts().forEach(p -> column.accept(p.part(), p.stateText())));
        return text.close(answer).toString();
    }

    /** A table with a row for each thing and a column for each step; a row without any entry is left out. */
    private static void bySteps(
            Markdown text,
            PostText title,
            List<StepReadings> steps,
            BiConsumer<StepReadings, BiConsumer<String, String>> cells) {
        Map<String, List<String>> rows = new LinkedHashMap<>();
        for (int i = 0; i < steps.size(); i++) {
            int before = i;
            cells.accept(steps.get(i), (id, cell) -> {
                List<String> row = rows.computeIfAbsent(id, key -> new ArrayList<>());
                while (row.size() < before) {
                    row.add("");
                }
                row.add(cell);
            });
        }
        List<String> columns = Stream.concat(
                        Stream.of(PostText.AT.text()),
                        steps.stream().map(step -> step.step().text()))
                .toList();
        List<List<String>> lines = rows.entrySet().stream()
                .filter(row -> row.getValue().stream().anyMatch(cell -> !cell.isEmpty()))
                .map(row -> line(row.getKey(), row.getValue(), steps.size()))
                .toList();
        if (!lines.isEmpty()) {
            text.section(title.text()).table(columns, lines);
        }
    }

    private static List<String> line(String id, List<String> cells, int width) {
        List<String> line = new ArrayList<>(List.of(id));
        line.addAll(cells);
        while (line.size() <= width) {
            line.add("");
        }
        return line;
    }

    /** What is fed when it should be off, and the best remedy. */
    public static String backfeed(Answer<BackfeedReport> answer) {
        BackfeedReport report = answer.result();
        Markdown text = new Markdown().title(report.plan()).section(PostText.LIVE_WHEN_OFF.text());
        if (report.unintendedFeeds().isEmpty()) {
            text.paragraph(PostText.NO_BACKFEED.text());
        }
        for (UnintendedFeed feed : report.unintendedFeeds()) {
            text.bullet(feed.severity().text(), feed.verdict().text() + alsoIn(feed) + remedy(feed));
        }
        return text.end().close(answer).toString();
    }

    private static String alsoIn(UnintendedFeed feed) {
        List<String> steps = feed.occurrences().stream()
                .map(Occurrence::description)
                .distinct()
                .toList();
        return steps.size() < 2
                ? ""
                : " "
                        + PostText.ALL_SUCH_TIMES
                                .with(arg("times", String.join("; ", steps)))
                                .text();
    }

    private static String remedy(UnintendedFeed feed) {
        if (feed.remedies().isEmpty()) {
            return " " + PostText.NO_REMEDY.text();
        }
        Remedy remedy = feed.remedies().get(0);
        return then(remedy.change().text() + " " + remedy.effect().text());
    }

    /** The findings, worst first. */
    public static String review(Answer<ReviewReport> answer) {
        ReviewReport report = answer.result();
        Markdown text = new Markdown()
                .title(report.plan())
                .paragraph(PostText.COUNTS
                        .with(
                                arg("dangers", report.counts().danger()),
                                arg("warnings", report.counts().warning()),
                                arg("notes", report.counts().note()))
                        .text());
        if (!report.findings().isEmpty()) {
            text.section(PostText.FINDINGS.text());
        }
        for (Finding finding : report.findings()) {
            text.bullet(finding.severity().text(), finding.text() + then(finding.remedyText()) + guessed(finding));
        }
        return text.end().close(answer).toString();
    }

    private static String guessed(Finding finding) {
        return finding.restsOn().isEmpty() ? "" : " " + finding.doubts();
    }

    private static String volts(@Nullable Double voltageV) {
        return voltageV == null ? PostText.FLOATING.text() : Catalogue.inUse().quantity(voltageV, "V");
    }

    private static String then(@Nullable String remedy) {
        return remedy == null
                ? ""
                : " " + PostText.WITH_REMEDY.with(arg("remedy", remedy)).text();
    }

    /** What each mistake does. */
    public static String mistakes(Answer<MistakesReport> answer) {
        MistakesReport report = answer.result();
        Markdown text = new Markdown().title(report.plan()).section(PostText.MISTAKES.text());
        if (!report.withoutMistake().summary().isEmpty()) {
            text.bullet(
                    PostText.PLAN_AS_IT_IS.text(),
                    report.withoutMistake().summary().stream()
                            .map(Message::text)
                            .collect(Collectors.joining(" ")));
        }
        for (Mistake mistake : report.mistakes()) {
            text.bullet(
                    mistake.severity().text(),
                    mistake.description().text() + " "
                            + Stream.concat(mistake.summary().stream(), mistake.notes().stream())
                                    .distinct()
                                    .map(Message::text)
                                    .collect(Collectors.joining(" ")));
        }
        return text.end().close(answer).toString();
    }
}
