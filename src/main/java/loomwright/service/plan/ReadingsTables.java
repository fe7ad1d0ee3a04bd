package loomwright.service.plan;

import static loomwright.message.Arg.arg;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import loomwright.answer.Answer;
import loomwright.message.Argument.Quantity;
import loomwright.message.Message;
import loomwright.readings.ReadingsSheet;
import loomwright.readings.ReadingsSheet.Reading;
import loomwright.service.form.Markdown;
import loomwright.service.form.PostText;
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
                    r.taken().condition(),
                    r.taken().situation(),
                    r.circuit(),
                    r.leads().red(),
                    r.leads().black(),
                    r.meter(),
                    r.expected().shows(),
                    r.expected().unit(),
                    r.expected().lowest(),
                    r.expected().nominal(),
                    r.expected().highest(),
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
        Markdown text = new Markdown()
                .title(PostText.READINGS_OF.with(arg("plan", sheet.plan())).text());
        text.cautions(answer);
        text.section(PostText.BEFORE_FIRST_READING.text());
        text.bullets(sheet.first().stream().map(Message::text).toList());
        Map<String, List<List<String>>> bySituation = new LinkedHashMap<>();
        for (Reading r : sheet.readings()) {
            bySituation
                    .computeIfAbsent(r.taken().situation(), none -> new ArrayList<>())
                    .add(List.of(
                            String.valueOf(r.number()),
                            r.leads().redLabel() + " (" + r.leads().red() + ")",
                            r.leads().blackLabel() + " (" + r.leads().black() + ")",
                            r.meter(),
                            shown(r),
                            "",
                            r.advice()));
        }
        bySituation.forEach((situation, rows) -> text.section(situation)
                .table(
                        Stream.of(
                                        PostText.NUMBER,
                                        PostText.RED_LEAD,
                                        PostText.BLACK_LEAD,
                                        PostText.METER,
                                        PostText.EXPECTED,
                                        PostText.MEASURED,
                                        PostText.WHAT_IT_MEANS)
                                .map(PostText::text)
                                .toList(),
                        rows));
        text.section(PostText.NOT_ON_THE_SHEET.text());
        text.bullets(sheet.leftOut().stream().map(Message::text).toList());
        return text.grounds(answer).toString();
    }

    private static String shown(Reading r) {
        Double lowest = r.expected().lowest();
        Double nominal = r.expected().nominal();
        Double highest = r.expected().highest();
        if (lowest == null || nominal == null || highest == null) {
            return (r.expected().shows() == ReadingsSheet.Shows.OPEN ? PostText.OVER_RANGE : PostText.NOTHING_STEADY)
                    .text();
        }
        String unit = r.expected().unit().equals("ohm") ? "Ω" : r.expected().unit();
        return PostText.FROM_TO
                .with(
                        arg("lowest", new Quantity(lowest, unit)),
                        arg("highest", new Quantity(highest, unit)),
                        arg("nominal", new Quantity(nominal, unit)))
                .text();
    }
}
