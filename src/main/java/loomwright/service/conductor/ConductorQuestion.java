package loomwright.service.conductor;

import java.util.ArrayList;
import java.util.List;
import loomwright.answer.Answer;
import loomwright.answer.RejectedInput;
import loomwright.conductor.Ampacity;
import loomwright.conductor.ConductorSize;
import loomwright.conductor.Conductors;
import loomwright.service.form.Table;
import org.jspecify.annotations.Nullable;

/**
 * A conductor size to be described.
 *
 * @param size as people type it
 * @param temperatureC conductor temperature, −60 to 400 C; default 20
 */
public record ConductorQuestion(String size, @Nullable Double temperatureC) {
    static final double DEFAULT_TEMPERATURE_C = 20;

    /**
     * Describes the size.
     *
     * @throws RejectedInput if the size has two readings or none, or the temperature is out of range
     */
    public Answer<Conductors.Description> answer() {
        return Conductors.describe(parsedSize(), temperatureC == null ? DEFAULT_TEMPERATURE_C : temperatureC);
    }

    private ConductorSize parsedSize() {
        try {
            return ConductorSize.parse(size);
        } catch (RejectedInput rejected) {
            throw new RejectedInput(rejected.faults().stream()
                    .map(fault -> fault.under("/size"))
                    .toList());
        }
    }

    /** One row per printed ampacity with the figures of the size before it; one row where no table lists the size. */
    public static Table table(Conductors.Description size) {
        List<List<@Nullable Object>> rows = new ArrayList<>();
        for (Ampacity ampacity : size.ampacities()) {
            rows.add(row(size, ampacity));
        }
        if (rows.isEmpty()) {
            rows.add(row(size, null));
        }
        return new Table(
                List.of(
                        "name",
                        "system",
                        "areaMm2",
                        "circularMils",
                        "diameterMm",
                        "temperatureC",
                        "ohmPerM",
                        "ohmPer1000Ft",
                        "tinnedOhmPerM",
                        "ampacityTable",
                        "gauge",
                        "insulationC",
                        "allowedA"),
                rows);
    }

    private static List<@Nullable Object> row(Conductors.Description size, @Nullable Ampacity ampacity) {
        List<@Nullable Object> row = new ArrayList<>();
        row.add(size.name());
        row.add(size.system());
        row.add(size.section().areaMm2());
        row.add(size.section().circularMils());
        row.add(size.section().diameterMm());
        row.add(size.resistance().temperatureC());
        row.add(size.resistance().ohmPerM());
        row.add(size.resistance().ohmPer1000Ft());
        row.add(size.resistance().tinnedOhmPerM());
        row.add(ampacity == null ? null : ampacity.table());
        row.add(ampacity == null ? null : ampacity.gauge() + " AWG");
        row.add(ampacity == null ? null : ampacity.classC());
        row.add(ampacity == null ? null : ampacity.allowedA());
        return row;
    }
}
