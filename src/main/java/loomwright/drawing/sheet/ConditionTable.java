package loomwright.drawing.sheet;

import static loomwright.message.Arg.arg;
import static loomwright.message.Arg.messages;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import loomwright.circuit.Coil;
import loomwright.circuit.Condition;
import loomwright.circuit.Consumer;
import loomwright.circuit.ContactBreaker;
import loomwright.circuit.Plan;
import loomwright.circuit.Switch;
import loomwright.comparison.PlanComparison;
import loomwright.comparison.PlanComparison.Quantity;
import loomwright.comparison.PlanComparison.ReadingChange;
import loomwright.drawing.sheet.Html.Cell;
import loomwright.message.Message;
import loomwright.operation.FeedStrength;
import loomwright.operation.PlanReadings.PartReading;
import loomwright.operation.PlanReadings.StepReadings;
import loomwright.operation.Step;
import org.jspecify.annotations.Nullable;

/** What each load gets in every position of the key, and what it got before the change. */
final class ConditionTable {
    private final JobSheet sheet;
    private final Map<Step, Map<String, ReadingChange>> was = new HashMap<>();

    ConditionTable(JobSheet sheet) {
        this.sheet = sheet;
        PlanComparison comparison = sheet.comparison();
        if (comparison != null) {
            comparison
                    .steps()
                    .forEach(step -> was.put(
                            step.step(),
                            step.readings().stream()
                                    .filter(r -> r.quantity() == Quantity.ACROSS)
                                    .collect(Collectors.toMap(ReadingChange::at, r -> r))));
        }
    }

    void write(Html html) {
        html.lead(SheetText.VOLTS_ACROSS
                .with(messages("positions", standing(sheet.goal())))
                .text());
        List<String> head = new ArrayList<>(List.of(SheetText.LOAD.text()));
        sheet.steps().forEach(step -> head.add(step.description()));
        List<List<Cell>> rows = new ArrayList<>(List.of(supply()));
        for (Consumer load : consumers()) {
            rows.add(row(load));
        }
        html.table("conditions", head, rows);
        html.paragraph((sheet.comparison() == null ? SheetText.SIGNS : SheetText.SIGNS_COMPARED).text());
    }

    private List<Consumer> consumers() {
        return sheet.goal().parts().stream()
                .filter(Consumer.class::isInstance)
                .map(Consumer.class::cast)
                .toList();
    }

    private List<Cell> supply() {
        Plan plan = sheet.goal();
        List<Cell> cells = new ArrayList<>(List.of(Cell.of(SheetText.SUPPLY.text())));
        for (Step step : sheet.steps()) {
            cells.add(Cell.of(
                    SheetWords.volts(plan.batterySupply(step.condition()).emfV())));
        }
        return cells;
    }

    private List<Cell> row(Consumer load) {
        List<Cell> cells = new ArrayList<>(List.of(Cell.of(load.displayName())));
        for (StepReadings step : sheet.conditions().steps()) {
            cells.add(step.parts().stream()
                    .filter(reading -> reading.part().equals(load.id()))
                    .findFirst()
                    .map(reading -> cell(step.step(), load, reading))
                    .orElse(Cell.of(SheetText.NO_SOLUTION.text())));
        }
        return cells;
    }

    private Cell cell(Step step, Consumer load, PartReading reading) {
        Double acrossV = reading.acrossV();
        FeedStrength activity = reading.activity();
        String volts = acrossV == null ? SheetText.FLOATS.text() : SheetWords.volts(acrossV);
        String does = activity == null || activity == FeedStrength.DEAD ? "" : " " + activity.text();
        String before = before(was.getOrDefault(step, Map.of()).get(reading.part()));
        String sign = activity == null ? "" : sign(step, load, Boolean.TRUE.equals(reading.meantLive()), activity);
        if (!sign.isEmpty()) {
            return new Cell(sign + volts + does + before, "wrong");
        }
        return new Cell(volts + does + before, activity == FeedStrength.DEAD ? "dead" : "");
    }

    /**
     * A trickle is reported in words, it is no reason for alarm. With the key off a dead load is no fault: what may be live
     * then, may be so for the moment after running only. Nor is a dead coil with the engine stopped, where the breaker may
     * stand open and a module need not conduct.
     */
    private static String sign(Step step, Consumer load, boolean meant, FeedStrength activity) {
        if (meant) {
            boolean mayRest = step == Step.OFF || step.passing() || (load instanceof Coil && !step.engineTurning());
            return mayRest || activity == FeedStrength.OPERATES ? "" : "? ";
        }
        return activity == FeedStrength.DEAD || activity == FeedStrength.LEAKS ? "" : "! ";
    }

    private static String before(@Nullable ReadingChange change) {
        if (change == null) {
            return "";
        }
        Double before = change.before();
        return " (" + (before == null ? SheetText.FLOATS.text() : SheetWords.volts(before)) + ")";
    }

    /** Where the free switches and the contacts stand. */
    private static List<Message> standing(Plan plan) {
        List<Message> stand = new ArrayList<>();
        plan.listParts(Switch.class).stream()
                .filter(Switch::free)
                .forEach(s -> stand.add(SheetText.STANDS.with(
                        arg("part", s.displayName()),
                        arg("position", s.in(Condition.OFF).name()))));
        plan.listParts(ContactBreaker.class)
                .forEach(b -> stand.add(SheetText.BREAKER_STANDS.with(
                        arg("part", b.displayName()), arg("stands", b.closedWhenStopped() ? "closed" : "open"))));
        return stand;
    }
}
