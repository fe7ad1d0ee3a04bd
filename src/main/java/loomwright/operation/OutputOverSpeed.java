package loomwright.operation;

import loomwright.circuit.Alternator;
import loomwright.circuit.Dynamo;
import loomwright.circuit.Generator;
import loomwright.judgement.ChargingRule;

/** What a machine can give at the speed at which the plan has it turn while the engine runs. */
public final class OutputOverSpeed {
    private OutputOverSpeed() {}

    /** The most it gives at its speed, A; its rating if the plan states no speed, 0 if it turns too slowly to charge. */
    public static double limitA(Generator generator) {
        return generator instanceof Alternator alternator
                ? alternator.outputLimitA() * fraction(alternator)
                : generator.limitA() * fraction(generator);
    }

    /** Whether it turns fast enough to charge. */
    public static boolean charges(Generator generator) {
        return fraction(generator) > 0;
    }

    /** The speed above which it charges, rev/min. */
    public static double cutInRpm(Generator generator) {
        return generator instanceof Dynamo dynamo ? dynamo.speed().cutInRpm() : ChargingRule.ALTERNATOR_CUT_IN_RPM;
    }

    /** The share of its rating that its speed allows, 0 to 1. */
    public static double fraction(Generator generator) {
        Double speedRpm = generator.speedRpm();
        if (speedRpm == null) {
            return 1;
        }
        if (generator instanceof Dynamo dynamo) {
            return dynamo.regulation() == Dynamo.Regulation.THIRD_BRUSH
                    ? ChargingRule.thirdBrushFraction(speedRpm, dynamo.speed().cutInRpm(), dynamo.fullRpm())
                    : ChargingRule.dynamoFraction(speedRpm, dynamo.speed().cutInRpm(), dynamo.fullRpm());
        }
        return ChargingRule.outputFraction(speedRpm);
    }
}
