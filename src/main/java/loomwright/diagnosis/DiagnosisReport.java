package loomwright.diagnosis;

import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.util.List;
import java.util.Map;
import loomwright.circuit.Condition;
import loomwright.circuit.fault.SingleFault;
import loomwright.message.Message;
import loomwright.operation.Contacts;
import loomwright.operation.Quantity;
import org.jspecify.annotations.Nullable;

/**
 * The faults that explain what was measured.
 *
 * @param plan its name
 * @param doubts readings to be looked at again before anything else
 * @param readings each reading beside what the plan as drawn would show
 * @param explanations likeliest first; if none of them explains all readings, those that come nearest
 * @param unexplained probability that it is something that was not tried
 * @param nextReadings what to measure next: the first is the one to take, each next one adds most to those before it
 * @param procedure the readings planned in advance, the first first; empty unless asked for
 * @param tried how much was tried
 */
public record DiagnosisReport(
        String plan,
        @JsonUnwrapped Conclusion conclusion,
        List<Doubt> doubts,
        List<ReadingCheck> readings,
        List<Explanation> explanations,
        double unexplained,
        List<NextReading> nextReadings,
        List<ProcedureStep> procedure,
        Tried tried) {
    public DiagnosisReport {
        doubts = List.copyOf(doubts);
        readings = List.copyOf(readings);
        explanations = List.copyOf(explanations);
        nextReadings = List.copyOf(nextReadings);
        procedure = List.copyOf(procedure);
    }

    /** The summary as one text. */
    public String outcome() {
        return text(conclusion.summary());
    }

    static String text(List<Message> messages) {
        return messages.stream()
                .map(Message::text)
                .reduce((one, other) -> one + " " + other)
                .orElse("");
    }

    /** The outcome. */
    public enum Verdict {
        /** The plan as drawn explains the readings, and nothing does so better. */
        PLAN_CONSISTENT,
        SINGLE_FAULT,
        FAULT_PAIR,
        /** A reading is more likely wrong than any fault; see the doubts. */
        CHECK_READINGS,
        /** Neither the plan as drawn nor a fault that was tried explains all readings. */
        UNEXPLAINED
    }

    /** How sure a verdict is. */
    public enum Certainty {
        /** One explanation, measured where it is, at 90 per cent or more. */
        CONFIRMED,
        /** One explanation leads; take the first of the next readings before anything is replaced. */
        TO_CONFIRM,
        /** One explanation leads, and where it is nobody can measure. */
        NOT_CONFIRMABLE,
        /** Several explanations are left; the next readings part them. */
        UNDECIDED
    }

    /** What a meter shows, or what is seen, in one of four ways. */
    public record Shown(
            @Nullable Double voltageV,
            @Nullable Double resistanceOhm,
            @Nullable Boolean open,
            @Nullable Sign sign) {
        static Shown of(Quantity quantity, double figure) {
            if (quantity == Quantity.VOLTS) {
                return new Shown(figure, null, null, null);
            }
            return figure >= Bench.OPEN_OHM ? new Shown(null, null, true, null) : new Shown(null, figure, null, null);
        }

        static Shown of(Sign sign) {
            return new Shown(null, null, null, sign);
        }
    }

    /** Why a reading is doubted. */
    public enum DoubtKind {
        LEADS_REVERSED,
        FACTOR_THOUSAND,
        SWITCH_ELSEWHERE,
        TAKE_AGAIN
    }

    /**
     * A question to whoever took a reading.
     *
     * @param readings indices of those in doubt
     * @param corrected what the first of them would then have shown; absent if that is not known
     * @param switches where switches would then have stood
     */
    public record Doubt(
            DoubtKind kind,
            List<Integer> readings,
            Message question,
            @Nullable Shown corrected,
            Map<String, String> switches) {}

    /**
     * One reading.
     *
     * @param reading its index
     * @param red where the leads were; of a sign, the ends of the part
     */
    public record ReadingCheck(
            int reading,
            String red,
            String black,
            @Nullable String part,
            Condition condition,
            Map<String, String> switches,
            Contacts contacts,
            @JsonUnwrapped ComparedFigures compared) {}

    /**
     * What was measured against what the plan says.
     *
     * @param planned what the plan as drawn would show; absent if it has no solution, or for a sign
     * @param deviation measured less planned in standard deviations; absent if the plan has no solution
     * @param deviates whether that is more than meter and tolerances account for
     */
    public record ComparedFigures(
            Shown measured,
            @Nullable Shown planned,
            @Nullable Double deviation,
            boolean deviates) {}

    /**
     * Faults that the readings cannot tell apart.
     *
     * @param rank 1 for the likeliest
     * @param faultCount 0 for the plan as drawn, 1 or 2
     * @param explains whether it goes with every reading
     * @param confirmed whether something was measured across the part that the first candidate accuses
     * @param probability of one of these being it
     * @param worstDeviation largest deviation of a reading, standard deviations
     * @param notExplained indices of the readings that do not go with it
     * @param candidates likeliest first; more than one is a tie
     * @param predicted what the first of them would show, for each reading
     */
    public record Explanation(
            int rank,
            int faultCount,
            boolean explains,
            boolean confirmed,
            double probability,
            double worstDeviation,
            List<Integer> notExplained,
            List<Suspect> candidates,
            List<Shown> predicted) {}

    /** One way to explain. */
    public record Suspect(
            Message description, List<SuspectFault> faults, List<String> fusesBlown, double probability) {}

    /**
     * One fault.
     *
     * @param resistanceOhm what a bad joint adds, a worn battery has more inside, or a short has, as fits best; absent for
     *     other faults
     * @param restV EMF of a discharged battery at rest, as fits best; absent for other faults
     * @param factor by how many times a figure is what it should be, as fits best; absent for other faults
     */
    public record SuspectFault(
            SingleFault.Kind kind,
            List<String> ids,
            Message description,
            @Nullable Double resistanceOhm,
            @Nullable Double restV,
            @Nullable Double factor) {}

    /** Why a reading is advised. */
    public enum NextPurpose {
        /** It tells the leading explanations apart. */
        SEPARATE,
        /** It is taken across the part that is accused. */
        CONFIRM
    }

    /** A wire by which a place is found. */
    public record LeadWire(String id, @Nullable String colour) {}

    /**
     * Where a lead goes.
     *
     * @param label of the part
     * @param terminal absent for the chassis
     * @param wires on the terminal
     */
    public record LeadPlace(String label, @Nullable String terminal, List<LeadWire> wires) {}

    /**
     * Something to measure. With its figure it is a reading of the next question.
     *
     * @param meter function and range
     * @param instruction all that as a text
     * @param outcomes what it may show, lowest first, and what that means
     */
    public record NextReading(
            NextPurpose purpose,
            String red,
            String black,
            @JsonUnwrapped MeterSetting setting,
            Quantity quantity,
            @JsonUnwrapped LeadPlaces places,
            String meter,
            List<Message> instruction,
            @JsonUnwrapped Worth worth,
            List<Outcome> outcomes) {
        /** The instruction as one text. */
        public String text() {
            return DiagnosisReport.text(instruction);
        }
    }

    /**
     * How key, switches and contacts are set for it.
     */
    public record MeterSetting(
            Condition condition, Map<String, String> switches, Contacts contacts, boolean keyOffAgain) {}

    /**
     * Where the leads go.
     *
     * @param redPlace where the red lead goes, for a person; so for the black one
     */
    public record LeadPlaces(LeadPlace redPlace, LeadPlace blackPlace) {}

    /**
     * What it tells, and what it takes.
     *
     * @param gainBits by how much it narrows down what it is, together with those before it
     * @param cost what it takes: 1 for a voltage at a place at hand
     */
    public record Worth(double gainBits, double cost) {}

    /**
     * What a reading may show.
     *
     * @param lowest V or ohm; absent for an open circuit; so for the highest
     * @param ranks of the explanations that would show it
     * @param meaning as a text
     * @param next number of the step of the procedure that follows; absent at its end, and outside of a procedure
     */
    public record Outcome(
            @Nullable Double lowest,
            @Nullable Double highest,
            boolean open,
            List<Integer> ranks,
            Message meaning,
            @Nullable Integer next) {}

    /** A step of the procedure. */
    public record ProcedureStep(int number, NextReading reading) {}

    /**
     * What the answer rests on.
     *
     * @param singleFaults how many were tried
     * @param pairs how many were tried; 0 where a single fault explains the readings
     * @param notShown single faults that would change none of the readings, so that nothing is known of them
     * @param withoutSolution trials that could not be solved
     */
    public record Tried(int singleFaults, int pairs, int notShown, int withoutSolution) {}

    /**
     * What the readings say.
     *
     * @param certainty how sure the verdict is
     * @param summary the outcome in a few sentences
     */
    public record Conclusion(Verdict verdict, Certainty certainty, List<Message> summary) {
        public Conclusion {
            summary = List.copyOf(summary);
        }
    }
}
