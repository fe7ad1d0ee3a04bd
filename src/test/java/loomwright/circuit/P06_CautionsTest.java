package loomwright.circuit;

import static org.assertj.core.api.Assertions.assertThat;

import loomwright.answer.Caution;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What somebody who works on the parts of a plan is warned of. */
class P06_CautionsTest {
    @ParameterizedTest
    @ValueSource(
            strings = {
                "{'kind':'alternator','id':'part'}",
                "{'kind':'motor','id':'part','resistanceOhm':1,'meantLive':[]}",
                "{'kind':'coil','id':'part','primaryResistanceOhm':1.5,'meantLive':[]}",
                "{'kind':'solenoid','id':'part','holdInResistanceOhm':6,'meantLive':[]}"
            })
    void whateverTurnsOrMakesTheEngineTurn(String part) {
        assertThat(PlanCautions.of(Plans.of(part, ""))).contains(Caution.MOVING_PARTS);
    }
}
