package loomwright.readings;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import loomwright.operation.MeterRange;
import loomwright.operation.Quantity;
import org.junit.jupiter.api.Test;

/** Ranges of a plain meter and its error. */
class R04_MeterTest {
    @Test
    void theLowestRangeThatDoesNotOverflow() {
        assertThat(MeterRange.of(Quantity.VOLTS, 1.9).full()).isEqualTo(2);
        assertThat(MeterRange.of(Quantity.VOLTS, -2).full()).isEqualTo(20);
        assertThat(MeterRange.of(Quantity.OHMS, 1.5).full()).isEqualTo(200);
        assertThat(MeterRange.of(Quantity.OHMS, 1e9).full()).isEqualTo(2e6);
    }

    @Test
    void theErrorIsAShareOfTheReadingAndTwoStepsOfTheLastDigit() {
        // 12.6 V on 20 V and 2000 counts: 1 per cent is 0.126 V, two steps of 0.01 V.
        assertThat(MeterRange.of(Quantity.VOLTS, 12.6).error(12.6, 0.01)).isCloseTo(0.146, within(1e-12));
    }
}
