package loomwright.ignition.spark;

import static loomwright.message.Arg.arg;

import loomwright.answer.InputError;
import loomwright.answer.RejectedInput;
import loomwright.ignition.AssumedValue;
import loomwright.ignition.Assumptions;
import loomwright.ignition.primary.DwellLaw;
import loomwright.ignition.primary.Firing;
import loomwright.ignition.primary.PrimarySwitch;
import loomwright.judgement.ignition.ModuleSupplyRule;
import loomwright.message.Message;
import loomwright.message.MessageCode;
import org.jspecify.annotations.Nullable;

/**
 * Breaker or module as asked about.
 *
 * @param kind contact breaker if left out
 * @param dropV while closed; common: 0.15 V at contacts, 1 V at a module
 * @param currentLimitA of a module; none if left out. Contacts have none
 * @param dwellRule of a module; if left out, charged up to the limit where there is one, else a fixed angle
 * @param dwellDegrees for a fixed angle, of the breaker shaft; common: 55 for 4 cylinders, 38 for 6, 29 for 8, else 60 %
 * @param dwellS for a constant time; common: 0.0035 s
 * @param maxDutyFraction for the other two rules; common: 0.8
 * @param ratingA what contacts or module may carry, 0.5 to 60; absent if unknown
 * @param moduleLeastV supply below which a module does not work, 0 to 60; 6 at 12 V if left out
 */
public record SwitchInput(
        @Nullable Kind kind,
        @Nullable Double dropV,
        @Nullable Double currentLimitA,
        @Nullable DwellRule dwellRule,
        @Nullable Double dwellDegrees,
        @Nullable Double dwellS,
        @Nullable Double maxDutyFraction,
        @Nullable Double ratingA,
        @Nullable Double moduleLeastV) {

    /** What breaks the primary. */
    public enum Kind implements MessageCode {
        CONTACT_BREAKER,
        MODULE
    }

    /** The names of the dwell laws. */
    public enum DwellRule implements MessageCode {
        FIXED_ANGLE,
        CONSTANT_TIME,
        CURRENT_CONTROLLED
    }

    /** The same with what it may carry, if that is given. */
    public SwitchInput withRatingA(@Nullable Double amperes) {
        return amperes == null
                ? this
                : new SwitchInput(
                        kind,
                        dropV,
                        currentLimitA,
                        dwellRule,
                        dwellDegrees,
                        dwellS,
                        maxDutyFraction,
                        amperes,
                        moduleLeastV);
    }

    /** Contacts, with a dwell angle or the common one. */
    public static SwitchInput breaker(@Nullable Double dwellDegrees) {
        return new SwitchInput(Kind.CONTACT_BREAKER, null, null, null, dwellDegrees, null, null, null, null);
    }

    /** A module that charges up to its limit. */
    public static SwitchInput limitingModule(double currentLimitA) {
        return new SwitchInput(
                Kind.MODULE, null, currentLimitA, DwellRule.CURRENT_CONTROLLED, null, null, null, null, null);
    }

    PrimarySwitch resolve(Assumptions assumptions, Firing firing, double nominalV) {
        assumptions.faults().range("/ratingA", ratingA, 0.5, 60).range("/moduleLeastV", moduleLeastV, 0, 60);
        Kind taken = assumptions.or(kind, AssumedValue.PRIMARY_SWITCH, Kind.CONTACT_BREAKER);
        if (taken == Kind.CONTACT_BREAKER) {
            if (currentLimitA != null) {
                throw contradiction("/currentLimitA", currentLimitA, AcceptedSpark.NO_LIMIT.with());
            }
            if (dwellRule != null && dwellRule != DwellRule.FIXED_ANGLE) {
                throw contradiction(
                        "/dwellRule", dwellRule, AcceptedSpark.FIXED_ANGLE.with(arg("rule", "fixed-angle")));
            }
            return new PrimarySwitch.ContactBreaker(
                    assumptions.or(dropV, AssumedValue.DROP_OF_SWITCH, 0.15, "V"), fixedAngle(assumptions, firing));
        }
        return new PrimarySwitch.Module(
                assumptions.or(dropV, AssumedValue.DROP_OF_SWITCH, 1.0, "V"),
                currentLimitA,
                dwellLaw(assumptions, firing),
                assumptions.or(moduleLeastV, AssumedValue.MODULE_LEAST, ModuleSupplyRule.deadV(nominalV), "V"));
    }

    private DwellLaw dwellLaw(Assumptions assumptions, Firing firing) {
        DwellRule common = currentLimitA == null ? DwellRule.FIXED_ANGLE : DwellRule.CURRENT_CONTROLLED;
        return switch (assumptions.or(dwellRule, AssumedValue.DWELL_RULE, common)) {
            case FIXED_ANGLE -> fixedAngle(assumptions, firing);
            case CONSTANT_TIME ->
                new DwellLaw.ConstantTime(
                        assumptions.or(dwellS, AssumedValue.DWELL_TIME, 0.0035, 1e3, "ms"),
                        assumptions.or(maxDutyFraction, AssumedValue.LARGEST_DUTY, 0.8, ""));
            case CURRENT_CONTROLLED ->
                new DwellLaw.CurrentControlled(assumptions.or(maxDutyFraction, AssumedValue.LARGEST_DUTY, 0.8, ""));
        };
    }

    private DwellLaw.FixedAngle fixedAngle(Assumptions assumptions, Firing firing) {
        return new DwellLaw.FixedAngle(
                assumptions.or(dwellDegrees, AssumedValue.DWELL_ANGLE, commonDegrees(firing), "°"));
    }

    private static double commonDegrees(Firing firing) {
        boolean fourStrokeDistributor = firing.strokes() == 4 && firing.arrangement() == Firing.Arrangement.DISTRIBUTOR;
        if (fourStrokeDistributor && firing.cylinders() == 4) {
            return 55;
        }
        if (fourStrokeDistributor && firing.cylinders() == 6) {
            return 38;
        }
        if (fourStrokeDistributor && firing.cylinders() == 8) {
            return 29;
        }
        return 0.6 * firing.cycleDegrees();
    }

    private static RejectedInput contradiction(String pointer, Object value, Message accepted) {
        return new RejectedInput(new InputError(InputError.Code.CONTRADICTION, pointer, value.toString(), accepted));
    }
}
