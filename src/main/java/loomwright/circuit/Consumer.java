package loomwright.circuit;

import static loomwright.message.Arg.arg;
import static loomwright.message.Arg.plain;

import java.util.List;
import loomwright.answer.Accepted;
import loomwright.answer.InputError;
import loomwright.answer.InputErrors;
import org.jspecify.annotations.Nullable;

/** A part that does something when it is fed, and so should be live at some times and dead at others. */
public sealed interface Consumer extends Part permits TwoEndedConsumer, Motor, Coil, Electromagnet {
    int MAX_ALTERNATIVES = 20;

    /** The conditions in which it should be live; empty for never, absent where the plan leaves them unsaid. */
    @Nullable
    List<Condition> meantLive();

    /** Restricts {@link #meantLive()}: any one of these ways will do. Empty for no restriction. */
    List<LiveAlternative> meantLiveWhen();

    /** The same consumer, live at other times. */
    Consumer withMeantLive(List<Condition> conditions, List<LiveAlternative> when);

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
            @Nullable List<LiveAlternative> meantLiveWhen,
            @Nullable Double operateV,
            @Nullable Double releaseV,
            String operateName,
            String releaseName) {
        if (meantLive != null) {
            Bounds.size(faults, "/meantLive", meantLive, 0, Condition.values().length);
            Bounds.distinct(faults, "/meantLive", meantLive);
        }
        if (meantLiveWhen != null) {
            Bounds.size(faults, "/meantLiveWhen", meantLiveWhen, 0, MAX_ALTERNATIVES);
            if (meantLive != null) {
                checkConditions(faults, meantLive, meantLiveWhen);
            }
        }
        Bounds.voltage(faults, "/" + operateName, operateV);
        Bounds.voltage(faults, "/" + releaseName, releaseV);
        return faults.check(
                operateV == null || releaseV == null || releaseV <= operateV,
                InputError.Code.CONTRADICTION,
                "/" + releaseName,
                releaseV,
                Accepted.AT_MOST_THAT,
                arg("name", operateName),
                plain("max", Bounds.orElse(operateV, 0)));
    }

    private static void checkConditions(
            InputErrors faults, List<Condition> meantLive, List<LiveAlternative> meantLiveWhen) {
        for (int i = 0; i < meantLiveWhen.size(); i++) {
            LiveAlternative one = meantLiveWhen.get(i);
            List<Condition> own = one == null ? null : one.conditions();
            for (int k = 0; own != null && k < own.size(); k++) {
                faults.check(
                        meantLive.contains(own.get(k)),
                        InputError.Code.CONTRADICTION,
                        "/meantLiveWhen/" + i + "/conditions/" + k,
                        own.get(k),
                        AcceptedPlan.CONDITION_OF,
                        arg("name", "meantLive"));
            }
        }
    }

    /** A list of the document as an unchangeable one; null where it is left out. */
    static @Nullable List<Condition> conditions(@Nullable List<Condition> meantLive) {
        return meantLive == null ? null : List.copyOf(meantLive);
    }

    /** The restriction as an unchangeable list, empty if left out. */
    static List<LiveAlternative> alternatives(@Nullable List<LiveAlternative> meantLiveWhen) {
        return meantLiveWhen == null ? List.of() : List.copyOf(meantLiveWhen);
    }
}
