package loomwright.service.plan;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import loomwright.answer.Answer;
import loomwright.message.Message;
import loomwright.readings.ReadingsSheet;
import loomwright.readings.ReadingsSheet.Reading;
import loomwright.service.form.Markdown;
import loomwright.service.form.Table;
import org.jspecify.annotations.Nullable;

/** The sheet of readings as a table and as text. */
public final class ReadingsTables {
    private ReadingsTables() {}

    /** One row for each reading, in the order to take them. */
    public static Table table(ReadingsSheet sheet) {
        List<List<@Nullable Object>> rows = new ArrayList<>();
        for (Reading r : sheet.readings()) {
            rows.add(Arrays.asList(
                    r.number(),
                    r.purpose(),
                    r.condition(),
                    r.situation(),
                    r.circuit(),
                    r.red(),
                    r.black(),
                    r.meter(),
                    r.shows(),
                    r.unit(),
                    r.lowest(),
                    r.nominal(),
                    r.highest(),
                    r.advice()));
        }
        return new Table(
                List.of(
                        "number",
                        "purpose",
                        "condition",
                        "situation",
                        "circuit",
                        "red",
                        "black",
                        "meter",
                        "shows",
                        "unit",
                        "lowest",
                        "nominal",
                        "highest",
                        "tells"),
                rows);
    }

    /** The sheet to work through: cautions first, then one table for each way the vehicle must stand. */
    public static String markdown(Answer<ReadingsSheet> answer) {
        ReadingsSheet sheet = answer.result();
        Markdown text = new Markdown().title("Readings: " + sheet.plan());
        text.cautions(answer);
        text.section("Before the first reading");
        text.bullets(sheet.first().stream().map(Message::text).toList());
        Map<String, List<List<String>>> bySituation = new LinkedHashMap<>();
        for (Reading r : sheet.readings()) {
            bySituation
                    .computeIfAbsent(r.situation(), none -> new ArrayList<>())
                    .add(List.of(
                            String.valueOf(r.number()),
                            r.redLabel() + " (" + r.red() + ")",
                            r.blackLabel() + " (" + r.black() + ")",
                            r.meter(),
                            shown(r),
                            "",
                            r.advice()));
        }
        bySituation.forEach((situation, rows) -> text.section(situation)
                .table(List.of("No.", "Red lead", "Black lead", "Meter", "Sound", "Read", "What it tells"), rows));
        text.section("Left out");
        text.bullets(sheet.leftOut().stream().map(Message::text).toList());
        return text.grounds(answer).toString();
    }

    private static String shown(Reading r) {
        Double lowest = r.lowest();
        Double nominal = r.nominal();
        Double highest = r.highest();
        if (lowest == null || nominal == null || highest == null) {
            return r.shows() == ReadingsSheet.Shows.OPEN ? "over range" : "nothing steady, near 0 V";
        }
        return Markdown.figure(lowest) + " to " + Markdown.figure(highest) + " " + r.unit() + " ("
                + Markdown.figure(nominal) + ")";
    }
}
