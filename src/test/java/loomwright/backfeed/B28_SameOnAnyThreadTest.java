package loomwright.backfeed;

import static org.assertj.core.api.Assertions.assertThat;

import loomwright.circuit.Plan;
import loomwright.circuit.RandomVehicle;
import loomwright.circuit.WholeCar;
import loomwright.network.NetworkLimits;
import loomwright.operation.Step;
import loomwright.operation.SwitchSettings;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Which thread looks at which settings depends on how busy the machine is; no digit of what is found may. */
class B28_SameOnAnyThreadTest {
    private static final int STRETCH = 32;

    @Test
    void aWholeCar() {
        assertSameAfterOtherStretches(WholeCar.of(60, 10, 3));
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
    void randomVehicles(long seed) {
        assertSameAfterOtherStretches(RandomVehicle.of(seed, 40));
    }

    private static void assertSameAfterOtherStretches(Plan plan) {
        SettingCodes codes = new SettingCodes(SwitchSettings.of(plan));
        int settings = (int) Math.min(4 * STRETCH, codes.settings().count().longValueExact());
        ScanTask used = task(codes);
        for (int from = settings / STRETCH * STRETCH - STRETCH; from >= 0; from -= STRETCH) {
            ScanResult after = used.run(from, from + STRETCH, () -> false);
            ScanResult fresh = task(codes).run(from, from + STRETCH, () -> false);
            for (int load = 0; load < fresh.fedIn.length; load++) {
                for (Step step : Step.values()) {
                    assertThat(after.at(step, load).strongest())
                            .isEqualTo(fresh.at(step, load).strongest());
                    assertThat(after.at(step, load).list())
                            .isEqualTo(fresh.at(step, load).list());
                }
            }
            assertThat(after.peaks.list()).containsExactlyElementsOf(fresh.peaks.list());
        }
    }

    private static ScanTask task(SettingCodes codes) {
        return new ScanTask(codes, null, null, NetworkLimits.defaults());
    }
}
