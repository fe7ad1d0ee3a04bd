package loomwright.readings;

import static loomwright.message.Arg.arg;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.UnaryOperator;
import loomwright.answer.Answer;
import loomwright.answer.Assumption;
import loomwright.answer.Basis;
import loomwright.answer.Caution;
import loomwright.answer.Progress;
import loomwright.circuit.Plan;
import loomwright.circuit.PlanCautions;
import loomwright.message.Message;
import loomwright.network.NetworkLimits;
import loomwright.operation.IntentAssumptions;
import loomwright.operation.PlanAnswer;
import loomwright.operation.PlanSolver;
import loomwright.operation.Quantity;
import loomwright.readings.ReadingsSheet.Purpose;
import loomwright.readings.ReadingsSheet.Reading;

/** The sheet of readings of a plan: what to measure, in which order, and what a sound circuit shows. */
public final class ReadingsAnswer {
    /** Below this a plain meter and its leads tell nothing about a winding. */
    private static final double MEASURABLE_OHM = 0.5;

    private final ReadingsQuestion question;
    private final Plan plan;
    private final SolvedVariants variants;
    private final Progress progress;

    private ReadingsAnswer(ReadingsQuestion question, NetworkLimits limits, Progress progress) {
        this.question = question;
        this.plan = question.plan();
        this.progress = progress;
        this.variants = new SolvedVariants(plan, new PlanSolver(limits, progress.untold()));
    }

    /**
     * Draws up the sheet.
     *
     * @param progress hears before each solution, and may end it
     * @throws loomwright.answer.RejectedInput with all faults of the plan and of the options
     * @throws loomwright.network.NoConvergence if a network could not be solved within the limits
     */
    public static Answer<ReadingsSheet> of(ReadingsQuestion asked, NetworkLimits limits, Progress progress) {
        return answer(asked, UnaryOperator.identity(), limits, progress);
    }

    /**
     * Draws up a sheet of ten readings at most, those that tell most about some loads.
     *
     * @param loads whose circuits are of interest, most first; where none of them has a circuit, all have
     * @throws loomwright.answer.RejectedInput with all faults of the plan and of the options
     * @throws loomwright.network.NoConvergence if a network could not be solved within the limits
     */
    public static Answer<ReadingsSheet> ofFew(
            ReadingsQuestion asked, List<String> loads, NetworkLimits limits, Progress progress) {
        return answer(asked, all -> FewReadings.of(all, loads), limits, progress);
    }

    private static Answer<ReadingsSheet> answer(
            ReadingsQuestion asked,
            UnaryOperator<List<ReadingCandidate>> choice,
            NetworkLimits limits,
            Progress progress) {
        return new ReadingsAnswer(asked.requireSound(), limits, progress)
                .answer(choice, IntentAssumptions.of(asked.plan(), id -> List.of()));
    }

    private Answer<ReadingsSheet> answer(UnaryOperator<List<ReadingCandidate>> choice, List<Assumption> assumptions) {
        Selection selection = Selection.of(question, variants);
        List<ReadingCandidate> chosen = choice.apply(selection.candidates());
        Ranges bounds = new Ranges(variants, question.asFractions());
        Map<ReadingCandidate, Range> ranges = bounds.of(chosen, progress);
        List<Message> leftOut = new ArrayList<>(selection.leftOut());
        List<Reading> readings = new ArrayList<>();
        for (ReadingCandidate candidate : chosen) {
            Range range = ranges.getOrDefault(candidate, Range.NONE);
            boolean tooLow = candidate.purpose() == Purpose.OWN_RESISTANCE
                    && range.nominal().orElse(MEASURABLE_OHM) < MEASURABLE_OHM;
            if (tooLow) {
                leftOut.add(ReadingText.RESISTANCE_TOO_LOW.with(
                        arg(
                                "point",
                                ReadingWording.label(plan, candidate.probe().from())),
                        arg("limitOhm", MEASURABLE_OHM)));
            } else {
                readings.add(SheetRow.of(
                        plan, candidate, range, readings.size() + 1, question.meterAccuracyPercent() / 100));
            }
        }
        ReadingsSheet sheet = new ReadingsSheet(plan.name(), ReadingWording.first(plan), readings, leftOut);
        return new Answer<>(sheet, working(sheet, bounds.solutions()), basis(), assumptions, cautions(sheet));
    }

    private List<Message> working(ReadingsSheet sheet, int solutions) {
        long ohms = sheet.readings().stream()
                .filter(r -> r.quantity() == Quantity.OHMS)
                .count();
        return List.of(
                ReadingText.READINGS_COUNTED.with(
                        arg("readings", sheet.readings().size()), arg("ohmReadings", ohms)),
                ReadingText.OHM_BOUNDS.with(),
                ReadingText.VOLT_BOUNDS.with(arg("solutions", solutions)),
                ReadingText.METER_ERROR.with(arg("accuracyPercent", question.meterAccuracyPercent())));
    }

    private List<Basis> basis() {
        List<Basis> basis = new ArrayList<>(PlanAnswer.basis(plan));
        basis.add(Basis.computed("bounds of resistances", "Rayleigh's monotonicity law"));
        basis.add(Basis.commonPractice(
                "tolerances that neither plan nor request gives: wires 10 %, contacts 50 %, ballast and"
                        + " resistors 5 %, windings 10 %, motors 15 %, lamps 10 % of their watts and 20 % of their cold resistance,"
                        + " other loads 10 %, semiconductors 20 %, regulator 2 %, fuses and battery resistance 20 %"));
        basis.add(Basis.commonPractice("a meter of 2000 counts; its ohm range tests with too little for diodes and"
                + " electronics; order of the readings"));
        return basis;
    }

    private List<Caution> cautions(ReadingsSheet sheet) {
        Set<Caution> cautions = EnumSet.copyOf(PlanCautions.of(plan));
        cautions.add(Caution.DISCONNECT_BATTERY);
        if (sheet.readings().stream().anyMatch(r -> r.taken().condition().engineTurns())) {
            cautions.add(Caution.MOVING_PARTS);
        }
        return List.copyOf(cautions);
    }
}
