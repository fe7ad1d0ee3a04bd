package loomwright.circuit;

import java.util.List;
import java.util.Map;
import loomwright.answer.InputError;
import loomwright.answer.InputErrors;
import org.jspecify.annotations.Nullable;

/** A part that does something when it is fed, and so is meant to be live at some times and dead at others. */
public sealed interface Consumer extends Part permits FilamentLamp, Load, Motor, Coil, Relay, Solenoid {

    /** The conditions in which it is meant to be live; empty for never. */
    List<Condition> meantLive();

    /**
     * Restricts {@link #meantLive()}: switch id to the positions of which one must be chosen; all switches named must
     * agree. Empty for no restriction.
     */
    Map<String, List<String>> meantLiveWhen();

    /** Volts from which it operates; absent for the usual figure of its kind. */
    @Nullable
    Double operateV();

    /** Volts below which it surely lets go, once operated; absent for the usual figure of its kind. */
    @Nullable
    Double releaseV();

    /** The terminal that is fed. */
    String feedTerminal();

    /** The terminal by which the current leaves again. */
    String returnTerminal();

    /** Checks what all consumers share. */
    static InputErrors check(
            InputErrors faults,
            @Nullable List<Condition> meantLive,
            @Nullable Map<String, List<String>> meantLiveWhen,
            @Nullable Double operateV,
            @Nullable Double releaseV,
            String operateName,
            String releaseName) {
        Bounds.size(faults, "/meantLive", meantLive, 0, Condition.values().length);
        if (meantLive != null) {
            Bounds.distinct(faults, "/meantLive", meantLive);
        }
        if (meantLiveWhen != null) {
            faults.check(
                    meantLiveWhen.size() <= 20,
                    InputError.Code.OUT_OF_RANGE,
                    "/meantLiveWhen",
                    meantLiveWhen.size(),
                    "at most 20 switches");
            meantLiveWhen.forEach(
                    (id, positions) -> Bounds.size(faults, "/meantLiveWhen/" + id, positions, 1, Switch.MAX_POSITIONS));
        }
        Bounds.voltage(faults, "/" + operateName, operateV);
        Bounds.voltage(faults, "/" + releaseName, releaseV);
        return faults.check(
                operateV == null || releaseV == null || releaseV <= operateV,
                InputError.Code.CONTRADICTION,
                "/" + releaseName,
                releaseV,
                "at most " + operateName + " (" + operateV + ")");
    }

    /** The restriction as an unchangeable map, empty if left out. */
    static Map<String, List<String>> copy(@Nullable Map<String, List<String>> meantLiveWhen) {
        return meantLiveWhen == null ? Map.of() : Map.copyOf(meantLiveWhen);
    }
}
