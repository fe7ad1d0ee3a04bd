package loomwright.circuit;

import static loomwright.message.Arg.arg;
import static loomwright.message.Arg.texts;

import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.util.List;
import java.util.regex.Pattern;
import loomwright.answer.Accepted;
import loomwright.answer.InputError;
import loomwright.answer.InputErrors;
import loomwright.message.Argument.Thing;
import org.jspecify.annotations.Nullable;

/**
 * One wire between two terminals. Its resistance follows from {@code size} and length, or is given.
 *
 * @param id unique among the wires
 * @param from one end; the feed if {@code directed}
 * @param to the other end
 * @param colour IEC 60757 letters, body first, then tracer: "RDBK"
 * @param directed whether it is meant to feed from {@code from} to {@code to} only; {@code from} is the end nearer the live
 *     pole, whichever pole that is
 */
public record Wire(
        String id,
        TerminalRef from,
        TerminalRef to,
        @JsonUnwrapped Conductor conductor,
        @Nullable String colour,
        @JsonUnwrapped LaidWhere laid,
        @JsonUnwrapped EndJoints joints,
        Boolean directed) {
    private static final double METRES_PER_FOOT = 0.3048;
    static final double MAX_JOINT_OHM = 1000;
    static final int MAX_BUNDLE = 500;
    static final int MAX_SIZE_TEXT = 32;
    private static final int MAX_LOOM = 40;
    private static final String LETTERS = "(BK|BN|RD|OG|YE|GN|BU|VT|GY|WH|PK|GD|TQ|SR|GNYE)";
    /** One to three IEC 60757 letter pairs. */
    public static final String COLOUR_FORM = LETTERS + "{1,3}";

    private static final Pattern COLOUR = Pattern.compile(COLOUR_FORM);

    public Wire {
        InputErrors faults =
                Bounds.id(new InputErrors(), "/id", id).required("/from", from).required("/to", to);
        conductor.check(faults);
        faults.check(
                colour == null || COLOUR.matcher(colour).matches(),
                InputError.Code.MALFORMED,
                "/colour",
                colour,
                AcceptedPlan.COLOUR);
        faults.range("/insulationTemperatureC", laid.insulationTemperatureC(), 40, Bounds.MAX_TEMPERATURE_C);
        faults.range(
                "/bundleCount",
                laid.bundleCount() == null ? null : (Double) laid.bundleCount().doubleValue(),
                1,
                MAX_BUNDLE);
        Bounds.text(faults, "/loom", laid.loom(), 1, MAX_LOOM);
        faults.range("/fromJointResistanceOhm", joints.fromJointResistanceOhm(), 0, MAX_JOINT_OHM);
        faults.range("/toJointResistanceOhm", joints.toJointResistanceOhm(), 0, MAX_JOINT_OHM);
        faults.reject();
        directed = Bounds.orFalse(directed);
    }

    private static Place orCabin(@Nullable Place place) {
        return place == null ? Place.CABIN : place;
    }

    /** A wire of which nothing is known but its ends and its resistance. */
    public static Wire ofResistance(String id, TerminalRef from, TerminalRef to, double resistanceOhm) {
        return new Wire(
                id,
                from,
                to,
                new Conductor(null, null, null, resistanceOhm),
                null,
                new LaidWhere(null, null, Place.CABIN, null),
                new EndJoints(0.0, 0.0),
                false);
    }

    /** The length in metres however it was given; absent for a wire given by its resistance. */
    public @Nullable Double metres() {
        if (conductor.lengthM() != null) {
            return conductor.lengthM();
        }
        return conductor.lengthFt() == null ? null : (Double) (conductor.lengthFt() * METRES_PER_FOOT);
    }

    /** The same wire between other terminals. */
    public Wire withEnds(TerminalRef newFrom, TerminalRef newTo) {
        return new Wire(id, newFrom, newTo, conductor, colour, laid, joints, directed);
    }

    /** The same wire with other resistances of the joints at its ends. */
    public Wire withJoints(double fromOhm, double toOhm) {
        return new Wire(id, from, to, conductor, colour, laid, new EndJoints(fromOhm, toOhm), directed);
    }

    /** What a message names. */
    public Thing thing() {
        return Thing.wire(id);
    }

    /**
     * Its conductor: a size and a length, or the ohms of both.
     *
     * @param size conductor size as the trade writes it, such as "14 AWG" or "2.5 mm2"
     * @param lengthM length, 0.001 to 1000 m; or {@code lengthFt}
     * @param lengthFt length in feet
     * @param resistanceOhm instead of size and length: a bolted joint, a strap, a measured wire
     */
    public record Conductor(
            @Nullable String size,
            @Nullable Double lengthM,
            @Nullable Double lengthFt,
            @Nullable Double resistanceOhm) {
        void check(InputErrors faults) {
            faults.check(
                    lengthM == null || lengthFt == null,
                    InputError.Code.CONTRADICTION,
                    "/lengthFt",
                    lengthFt,
                    Accepted.NOT_BOTH,
                    arg("first", "lengthM"),
                    arg("second", "lengthFt"));
            boolean hasLength = lengthM != null || lengthFt != null;
            boolean bySize = size != null && hasLength && resistanceOhm == null;
            boolean byResistance = size == null && lengthM == null && lengthFt == null && resistanceOhm != null;
            faults.check(
                    bySize || byResistance,
                    InputError.Code.CONTRADICTION,
                    "",
                    null,
                    Accepted.PAIR_OR_ALONE,
                    arg("name", "size"),
                    texts("with", List.of("lengthM", "lengthFt")),
                    arg("alone", "resistanceOhm"));
            Bounds.text(faults, "/size", size, 1, MAX_SIZE_TEXT);
            faults.range("/lengthM", lengthM, Bounds.MIN_LENGTH_M, Bounds.MAX_LENGTH_M);
            faults.range("/lengthFt", lengthFt, Bounds.MIN_LENGTH_M, Bounds.MAX_LENGTH_M);
            Bounds.resistance(faults, "/resistanceOhm", resistanceOhm);
        }
    }

    /**
     * Where it lies, and what its insulation stands.
     *
     * @param insulationTemperatureC what its insulation stands
     * @param bundleCount how many wires lie together, itself included
     * @param place where it lies; cabin unless said
     * @param loom the loom or tube it runs in: wires of one may chafe against each other; absent if that is not known
     */
    public record LaidWhere(
            @Nullable Double insulationTemperatureC,
            @Nullable Integer bundleCount,
            Place place,
            @Nullable String loom) {
        public LaidWhere {
            place = orCabin(place);
        }
    }

    /**
     * The joints at its ends.
     *
     * @param fromJointResistanceOhm resistance of the joint at {@code from}
     * @param toJointResistanceOhm resistance of the joint at {@code to}
     */
    public record EndJoints(Double fromJointResistanceOhm, Double toJointResistanceOhm) {
        public EndJoints {
            fromJointResistanceOhm = Bounds.orElse(fromJointResistanceOhm, 0);
            toJointResistanceOhm = Bounds.orElse(toJointResistanceOhm, 0);
        }
    }
}
