package loomwright.circuit;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The battery as it is given, with what is left out. */
class P05_SupplyTest {
    private static final Plan PLAN = Plans.of("{'kind':'battery','id':'B'}", "");

    private static double internalOhm(double given) {
        Conditions conditions = new Conditions(new Supply(12.0, given, null, null), null, null, null, null);
        Plan plan = new Plan(
                PLAN.schema(),
                PLAN.name(),
                PLAN.system(),
                conditions,
                PLAN.parts(),
                PLAN.wires(),
                PLAN.connectors(),
                PLAN.notes());
        return plan.supply(Condition.OFF).internalResistanceOhm();
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, Double.MIN_VALUE, 1e-12, 9e-7})
    void anInternalResistanceThatNoMeterTellsIsNone(double ohm) {
        assertThat(internalOhm(ohm)).isZero();
    }

    @Test
    void anyOtherIsTakenAsGiven() {
        assertThat(internalOhm(1e-6)).isEqualTo(1e-6);
    }
}
