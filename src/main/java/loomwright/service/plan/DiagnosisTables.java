package loomwright.service.plan;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import java.util.stream.Collectors;
import loomwright.answer.Answer;
import loomwright.diagnosis.DiagnosisReport;
import loomwright.diagnosis.DiagnosisReport.Explanation;
import loomwright.diagnosis.DiagnosisReport.NextReading;
import loomwright.diagnosis.DiagnosisReport.Outcome;
import loomwright.diagnosis.DiagnosisReport.ReadingCheck;
import loomwright.diagnosis.DiagnosisReport.Shown;
import loomwright.diagnosis.DiagnosisReport.Suspect;
import loomwright.diagnosis.DiagnosisReport.SuspectFault;
import loomwright.diagnosis.Sign;
import loomwright.service.form.CellNumbers;
import loomwright.service.form.EnumWords;
import loomwright.service.form.Markdown;
import loomwright.service.form.Table;
import org.jspecify.annotations.Nullable;

/** A diagnosis as one table, and as text for a forum post. */
public final class DiagnosisTables {
    private DiagnosisTables() {}

    /** One row for each candidate; those of one rank are tied. */
    public static Table table(DiagnosisReport report) {
        List<List<@Nullable Object>> rows = new ArrayList<>();
        for (Explanation explanation : report.explanations()) {
            for (Suspect suspect : explanation.candidates()) {
                rows.add(Arrays.asList(
                        explanation.rank(),
                        explanation.explains(),
                        suspect.probability(),
                        join(suspect, fault -> EnumWords.of(fault.kind())),
                        join(suspect, fault -> String.join(" ", fault.ids())),
                        join(suspect, fault -> figure(fault.resistanceOhm())),
                        String.join(" ", suspect.fusesBlown()),
                        explanation.worstDeviation(),
                        suspect.description().text(),
                        join(suspect, fault -> figure(fault.restV())),
                        join(suspect, fault -> figure(fault.factor()))));
            }
        }
        return new Table(
                List.of(
                        "rank",
                        "explains",
                        "probability",
                        "kinds",
                        "ids",
                        "resistanceOhm",
                        "fusesBlown",
                        "worstDeviation",
                        "description",
                        "restV",
                        "factor"),
                rows);
    }

    private static String join(Suspect suspect, Function<SuspectFault, String> text) {
        return suspect.faults().stream().map(text).collect(Collectors.joining("; "));
    }

    private static String figure(@Nullable Double value) {
        return value == null ? "" : CellNumbers.text(value);
    }

    /** The diagnosis as text, cautions first. */
    public static String markdown(Answer<DiagnosisReport> answer) {
        DiagnosisReport report = answer.result();
        Markdown text = new Markdown().title("Diagnosis of " + report.plan());
        text.paragraph(report.outcome());
        text.cautions(answer);
        text.section("What may be wrong, likeliest first");
        for (Explanation explanation : report.explanations()) {
            text.paragraph(String.format(
                    Locale.ROOT,
                    "%d. %.3g %%, %s%s",
                    explanation.rank(),
                    100 * explanation.probability(),
                    unexplained(explanation.notExplained().size()),
                    explanation.candidates().size() == 1 ? ":" : "; the readings cannot tell these apart:"));
            text.bullets(explanation.candidates().stream()
                    .map(c -> c.description().text())
                    .toList());
        }
        text.section("What to measure next");
        if (report.nextReadings().isEmpty()) {
            text.paragraph("Nothing that could be measured tells the leading ones apart any further.");
        } else {
            text.bullets(
                    report.nextReadings().stream().map(DiagnosisTables::next).toList());
        }
        text.section("The readings");
        List<List<String>> rows = new ArrayList<>();
        for (ReadingCheck check : report.readings()) {
            Shown planned = check.compared().planned();
            rows.add(List.of(
                    where(check),
                    EnumWords.of(check.condition()) + switches(check),
                    shown(check.compared().measured()),
                    planned == null ? "no solution" : shown(planned),
                    check.compared().deviates() ? "deviates" : ""));
        }
        return text.table(List.of("Where", "Key", "Measured", "By the plan", ""), rows)
                .grounds(answer)
                .toString();
    }

    private static String unexplained(int readings) {
        return switch (readings) {
            case 0 -> "explains all readings";
            case 1 -> "leaves one reading unexplained";
            default -> "leaves " + readings + " readings unexplained";
        };
    }

    private static String where(ReadingCheck check) {
        String part = check.part();
        return part == null ? check.red() + " to " + check.black() : part;
    }

    private static String switches(ReadingCheck check) {
        return check.switches().entrySet().stream()
                .map(s -> ", " + s.getKey() + " " + s.getValue())
                .collect(Collectors.joining());
    }

    private static String next(NextReading next) {
        return next.text() + " "
                + next.outcomes().stream()
                        .map(o -> outcome(o) + ": " + o.meaning().text())
                        .collect(Collectors.joining(" "));
    }

    private static String outcome(Outcome outcome) {
        Double lowest = outcome.lowest();
        Double highest = outcome.highest();
        return lowest == null || highest == null
                ? "Over range"
                : Markdown.figure(lowest) + " to " + Markdown.figure(highest);
    }

    private static String shown(Shown shown) {
        Double voltageV = shown.voltageV();
        if (voltageV != null) {
            return Markdown.figure(voltageV) + " V";
        }
        Sign sign = shown.sign();
        if (sign != null) {
            return sign.text();
        }
        Double resistanceOhm = shown.resistanceOhm();
        return resistanceOhm == null ? "open" : Markdown.figure(resistanceOhm) + " ohm";
    }
}
