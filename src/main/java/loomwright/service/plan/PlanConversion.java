package loomwright.service.plan;

import com.fasterxml.jackson.core.type.TypeReference;
import java.util.List;
import java.util.Map;
import loomwright.answer.Answer;
import loomwright.answer.Caution;
import loomwright.circuit.Plan;
import loomwright.list.ListWriter;
import loomwright.list.Sheet;
import loomwright.list.Workbooks;
import loomwright.service.input.Json;

/** A plan in another form: as a list, from a list, or as it was. */
public final class PlanConversion {
    private PlanConversion() {}

    /**
     * What a plan was turned into.
     *
     * @param plan the plan document
     */
    public record Converted(Plan plan) {}

    public static Answer<Converted> of(Plan plan) {
        return new Answer<>(new Converted(plan), List.of(), List.of(), List.of(Caution.LOCAL_CODES));
    }

    /** The tables of a plan as comma-separated text. */
    public static byte[] csv(Plan plan, Json json) {
        return ListWriter.csv(sheets(plan, json)).getBytes(java.nio.charset.StandardCharsets.UTF_8);
    }

    /** The tables of a plan for a forum post. */
    public static byte[] markdown(Plan plan, Json json) {
        return ListWriter.markdown(sheets(plan, json)).getBytes(java.nio.charset.StandardCharsets.UTF_8);
    }

    public static byte[] xlsx(Plan plan, Json json) {
        return Workbooks.writeXlsx(sheets(plan, json));
    }

    public static byte[] ods(Plan plan, Json json) {
        return Workbooks.writeOds(sheets(plan, json));
    }

    private static List<Sheet> sheets(Plan plan, Json json) {
        Map<String, Object> tree = json.exactMapper().convertValue(plan, new TypeReference<>() {});
        return ListWriter.write(tree);
    }
}
