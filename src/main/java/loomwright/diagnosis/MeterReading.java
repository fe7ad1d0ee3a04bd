package loomwright.diagnosis;

import static loomwright.message.Arg.arg;
import static loomwright.message.Arg.texts;

import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import loomwright.answer.Accepted;
import loomwright.answer.InputError;
import loomwright.answer.InputErrors;
import loomwright.answer.RejectedInput;
import loomwright.circuit.Condition;
import loomwright.circuit.Consumer;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.circuit.Switch;
import loomwright.operation.Contacts;
import loomwright.operation.Point;
import loomwright.operation.Probe;
import loomwright.operation.Quantity;
import loomwright.operation.Step;
import org.jspecify.annotations.Nullable;

/**
 * What a meter showed, or what was seen of a part: one of {@code voltageV}, {@code resistanceOhm}, {@code open} and
 * {@code sign}. A row of the sheet of readings or a reading that a diagnosis advised is one as soon as it has its figure.
 *
 * @param red where the red lead was: {@code part.terminal} or {@code earth}; absent for a sign
 * @param black where the black lead was; earth unless said
 * @param part id of the part that shows the sign; absent for a figure
 * @param condition the key, and whether the engine runs; off unless said for ohms, to be said for the others
 * @param switches free switches that were not as the plan draws them, id to position
 * @param contacts how the contact points stood; either unless said: both are tried, or the meter averages as the engine turns
 * @param keyOffAgain whether the key had been on before, and was turned off again; for the condition off
 * @param voltageV what it showed, -100 to 100 V
 * @param resistanceOhm what it showed with the battery disconnected, 0 to 1e9 ohm
 * @param open true if it showed an open circuit on ohms
 * @param sign what was seen
 */
public record MeterReading(
        @Nullable String red,
        String black,
        @Nullable String part,
        Condition condition,
        Map<String, String> switches,
        Contacts contacts,
        Boolean keyOffAgain,
        @Nullable Double voltageV,
        @Nullable Double resistanceOhm,
        @Nullable Boolean open,
        @Nullable Sign sign) {
    /** 100 V in millivolts: whoever types these for volts is asked about it. */
    private static final double MAX_V = 100_000;

    private static final double MAX_OHM = 1e9;
    private static final int MAX_SWITCHES = 100;

    public MeterReading {
        InputErrors faults = new InputErrors();
        faults.required(sign == null ? "/red" : "/part", sign == null ? red : part);
        black = orEarth(black);
        switches = orNone(switches);
        contacts = orEither(contacts);
        keyOffAgain = orFalse(keyOffAgain);
        boolean ohmmeter = resistanceOhm != null || open != null;
        long shown = Stream.of(voltageV != null, resistanceOhm != null, open != null, sign != null)
                .filter(given -> given)
                .count();
        faults.check(
                        shown == 1,
                        InputError.Code.CONTRADICTION,
                        "",
                        null,
                        Accepted.EXACTLY_ONE,
                        texts("names", List.of("voltageV", "resistanceOhm", "open", "sign")))
                .check(
                        !(sign != null && red != null),
                        InputError.Code.CONTRADICTION,
                        "/red",
                        red,
                        AcceptedReading.NO_LEAD)
                .check(open == null || open, InputError.Code.NOT_ONE_OF, "/open", open, AcceptedReading.TRUE_OR_NOTHING)
                .range("/voltageV", voltageV, -MAX_V, MAX_V)
                .range("/resistanceOhm", resistanceOhm, 0, MAX_OHM)
                .check(
                        switches.size() <= MAX_SWITCHES,
                        InputError.Code.OUT_OF_RANGE,
                        "/switches",
                        switches.size(),
                        Accepted.ENTRIES_AT_MOST,
                        arg("max", MAX_SWITCHES));
        if (!ohmmeter) {
            faults.required("/condition", condition);
        }
        point(red, "/red", faults);
        point(black, "/black", faults);
        faults.check(
                !keyOffAgain || condition == null || condition == Condition.OFF,
                InputError.Code.CONTRADICTION,
                "/keyOffAgain",
                keyOffAgain,
                AcceptedReading.ONLY_KEY_OFF);
        faults.reject();
        condition = orOff(condition);
    }

    private static String orEarth(@Nullable String black) {
        return black == null ? Point.EARTH_WORD : black;
    }

    private static Map<String, String> orNone(@Nullable Map<String, String> switches) {
        return switches == null ? Map.of() : Map.copyOf(switches);
    }

    private static Condition orOff(@Nullable Condition condition) {
        return condition == null ? Condition.OFF : condition;
    }

    private static Contacts orEither(@Nullable Contacts contacts) {
        return contacts == null ? Contacts.EITHER : contacts;
    }

    private static Boolean orFalse(@Nullable Boolean given) {
        return given == null ? Boolean.FALSE : given;
    }

    private static void point(@Nullable String text, String pointer, InputErrors faults) {
        try {
            if (text != null) {
                Point.parse(text);
            }
        } catch (RejectedInput rejected) {
            rejected.faults().forEach(f -> faults.add(f.under(pointer)));
        }
    }

    private Step step() {
        return keyOffAgain ? Step.OFF_AGAIN : Measurement.stepOf(condition);
    }

    /** What was measured or looked at, once it is checked. */
    Measurement measurement(Plan plan) {
        String seen = part;
        String lead = red;
        if (seen != null && lead == null) {
            Part looked = plan.findPart(seen).orElseThrow();
            boolean consumer = looked instanceof Consumer;
            String from = consumer
                    ? ((Consumer) looked).feedTerminal()
                    : looked.terminals().get(0);
            String to = consumer
                    ? ((Consumer) looked).returnTerminal()
                    : looked.terminals().get(looked.terminals().size() - 1);
            Probe across = new Probe(new Point(looked.terminal(from)), new Point(looked.terminal(to)));
            return new Measurement(across, Quantity.VOLTS, step(), switches, contacts, seen);
        }
        return new Measurement(
                Probe.of(String.valueOf(lead), black),
                voltageV == null ? Quantity.OHMS : Quantity.VOLTS,
                step(),
                switches,
                contacts,
                null);
    }

    /** The figure, V or ohm; for an open circuit {@link Bench#OPEN_OHM}; for a sign its {@link Seen} class. */
    double figure() {
        if (voltageV != null) {
            return voltageV;
        } else if (sign != null) {
            return sign.figure();
        }
        return resistanceOhm == null ? Bench.OPEN_OHM : Math.min(resistanceOhm, Bench.OPEN_OHM);
    }

    /** Notes what does not go with a plan. */
    void check(Plan plan, String pointer, InputErrors faults) {
        if (red != null) {
            Probe probe = Probe.of(red, black);
            probe.from().check(plan, pointer + "/red", faults);
            probe.to().check(plan, pointer + "/black", faults);
        }
        if (sign != null) {
            faults.check(
                    plan.findPart(String.valueOf(part))
                            .map(Consumer.class::isInstance)
                            .orElse(false),
                    InputError.Code.UNKNOWN_REFERENCE,
                    pointer + "/part",
                    part,
                    AcceptedReading.CONSUMER);
        }
        switches.forEach((id, position) -> {
            Switch found = plan.listParts(Switch.class).stream()
                    .filter(s -> s.id().equals(id) && s.free())
                    .findFirst()
                    .orElse(null);
            String at = pointer + "/switches/" + id;
            faults.check(found != null, InputError.Code.UNKNOWN_REFERENCE, at, id, AcceptedReading.FREE_SWITCH);
            if (found != null) {
                faults.check(
                        found.positions().stream().anyMatch(p -> p.name().equals(position)),
                        InputError.Code.UNKNOWN_REFERENCE,
                        at,
                        position,
                        AcceptedReading.POSITION);
            }
        });
    }
}
