package loomwright.service.plan;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import loomwright.backfeed.BackfeedReport.PathStep;
import loomwright.backfeed.sneak.SneakReport;
import loomwright.backfeed.sneak.SneakReport.Sneak;
import loomwright.backfeed.sneak.SneakReport.SneakOccurrence;
import loomwright.service.form.EnumWords;
import loomwright.service.form.Table;
import org.jspecify.annotations.Nullable;

/** The sneak paths of a plan as a table. */
public final class SneakTables {
    private static final List<String> COLUMNS = List.of(
            "load",
            "severity",
            "step",
            "activity",
            "operated",
            "effectiveV",
            "currentA",
            "changes",
            "path",
            "clues",
            "fault");

    private SneakTables() {}

    /** One row for each load, path and step, without a fault and then with each. */
    public static Table sneaks(SneakReport report) {
        List<List<@Nullable Object>> rows = new ArrayList<>();
        report.sneaks().forEach(sneak -> add(rows, null, sneak));
        report.withFaults().forEach(faulty -> faulty.sneaks().forEach(sneak -> add(rows, faulty.words(), sneak)));
        return new Table(COLUMNS, rows);
    }

    private static void add(List<List<@Nullable Object>> rows, @Nullable String fault, Sneak sneak) {
        String path = sneak.path().steps().stream().map(PathStep::id).distinct().collect(Collectors.joining(" "));
        String clues = sneak.clues().stream().map(c -> EnumWords.of(c.kind())).collect(Collectors.joining(" "));
        for (SneakOccurrence occurrence : sneak.occurrences()) {
            rows.add(Arrays.asList(
                    sneak.load(),
                    sneak.severity(),
                    occurrence.step(),
                    occurrence.activity(),
                    occurrence.operated(),
                    occurrence.effectiveV(),
                    occurrence.currentA(),
                    changes(occurrence),
                    path,
                    clues,
                    fault));
        }
    }

    private static String changes(SneakOccurrence occurrence) {
        return occurrence.changes().entrySet().stream()
                .map(e -> e.getKey() + " " + e.getValue())
                .collect(Collectors.joining("; "));
    }
}
