package loomwright.service.plan;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import loomwright.answer.Finding;
import loomwright.backfeed.BackfeedReport;
import loomwright.backfeed.BackfeedReport.Occurrence;
import loomwright.backfeed.BackfeedReport.UnintendedFeed;
import loomwright.message.Message;
import loomwright.mistakes.MistakesReport;
import loomwright.mistakes.MistakesReport.Mistake;
import loomwright.operation.PlanReadings;
import loomwright.operation.PlanReadings.StepReadings;
import loomwright.review.ReviewReport;
import loomwright.service.form.Table;
import org.jspecify.annotations.Nullable;

/** The answers about plans as one table each. */
public final class PlanTables {
    public static final List<String> READINGS =
            List.of("step", "what", "id", "voltageV", "currentA", "powerW", "state");
    public static final List<String> BACKFEED =
            List.of("load", "severity", "step", "activity", "pulledIn", "effectiveV", "currentA", "switches", "remedy");
    /** One figure a column: a spreadsheet cannot calculate with several in a cell. */
    public static final List<String> REVIEW = List.of(
            "severity",
            "code",
            "ids",
            "text",
            "remedy",
            "source",
            "figure1",
            "value1",
            "figure2",
            "value2",
            "figure3",
            "value3",
            "figure4",
            "value4");

    private static final int FIGURES = 4;

    private PlanTables() {}

    /** One row for each node, wire, part and contact of a connector in each step. */
    public static Table readings(PlanReadings readings) {
        List<List<@Nullable Object>> rows = new ArrayList<>();
        for (StepReadings step : readings.steps()) {
            step.nodes()
                    .forEach(n -> rows.add(Arrays.asList(
                            step.step(),
                            "node",
                            n.node(),
                            n.voltageV(),
                            null,
                            null,
                            n.floating() ? "floating" : null)));
            step.wires()
                    .forEach(w -> rows.add(Arrays.asList(
                            step.step(),
                            "wire",
                            w.wire(),
                            w.dropV(),
                            w.currentA(),
                            w.powerW(),
                            w.againstFeed() ? "against feed" : null)));
            step.parts()
                    .forEach(p -> rows.add(
                            Arrays.asList(step.step(), "part", p.part(), p.acrossV(), null, p.powerW(), p.state())));
            step.connectors()
                    .forEach(c -> c.contacts()
                            .forEach(b -> rows.add(Arrays.asList(
                                    step.step(),
                                    "contact",
                                    c.connector() + ": " + b.from(),
                                    b.voltageV(),
                                    b.currentA(),
                                    b.currentA() * b.voltageV(),
                                    null))));
        }
        return new Table(READINGS, rows);
    }

    /** One row for each load fed when it should be off and step, with the cheapest remedy. */
    public static Table backfeed(BackfeedReport report) {
        List<List<@Nullable Object>> rows = new ArrayList<>();
        for (UnintendedFeed feed : report.unintendedFeeds()) {
            String remedy = feed.remedies().isEmpty()
                    ? null
                    : feed.remedies().get(0).change().text();
            for (Occurrence occurrence : feed.occurrences()) {
                rows.add(Arrays.asList(
                        feed.load(),
                        feed.severity(),
                        occurrence.step(),
                        occurrence.level().activity(),
                        occurrence.level().pulledIn(),
                        occurrence.level().effectiveV(),
                        occurrence.level().currentA(),
                        switches(occurrence),
                        remedy));
            }
        }
        return new Table(BACKFEED, rows);
    }

    /** One row for each mistake. */
    public static Table mistakes(MistakesReport report) {
        List<List<@Nullable Object>> rows = new ArrayList<>();
        for (Mistake m : report.mistakes()) {
            rows.add(Arrays.asList(
                    m.severity(),
                    m.kind(),
                    String.join("; ", m.ids()),
                    m.description().text(),
                    texts(m.summary()),
                    String.join("; ", m.fusesBlown()),
                    texts(m.notes())));
        }
        return new Table(List.of("severity", "kind", "ids", "description", "summary", "fusesBlown", "notes"), rows);
    }

    /** One row for each finding, with the first of its figures in reading order. */
    public static Table review(ReviewReport report) {
        List<List<@Nullable Object>> rows = new ArrayList<>();
        for (Finding finding : report.findings()) {
            List<@Nullable Object> row = new ArrayList<>(Arrays.asList(
                    finding.severity(),
                    finding.code(),
                    String.join(" ", finding.ids()),
                    finding.text(),
                    finding.remedyText(),
                    finding.basis().source()));
            List<Finding.Figure> figures = finding.figures();
            for (int i = 0; i < FIGURES; i++) {
                row.add(i < figures.size() ? figures.get(i).name() : null);
                row.add(i < figures.size() ? figures.get(i).value() : null);
            }
            rows.add(row);
        }
        return new Table(REVIEW, rows);
    }

    private static String texts(List<Message> sentences) {
        return sentences.stream().map(Message::text).collect(Collectors.joining(" "));
    }

    private static String switches(Occurrence occurrence) {
        return occurrence.switches().entrySet().stream()
                .map(e -> e.getKey() + " " + e.getValue())
                .collect(Collectors.joining("; "));
    }
}
