package loomwright.judgement;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import loomwright.answer.Basis;
import loomwright.judgement.Dependence.Unknown;
import org.junit.jupiter.api.Test;

/** Which unknown turns a verdict: the largest mover first, all together last, and nothing that changes no level. */
class J04_SensitivityTest {
    private static Verdict of(double value) {
        return Verdict.ofMost("test", value, 10, 1.5, Basis.commonPractice("ten"));
    }

    @Test
    void theLargestMoverComesFirstAndAllTogetherLast() {
        List<Dependence> turns = new Sensitivity(of(9))
                .with(Unknown.ALL_TOGETHER, 9, 20, () -> of(20))
                .with(Unknown.LENGTH_M, 1, 1.1, () -> of(9.9))
                .with(Unknown.AMBIENT_C, 30, 50, () -> of(10.5))
                .with(Unknown.BUNDLE_COUNT, 1, 5, () -> of(14))
                .turns();
        assertThat(turns)
                .extracting(Dependence::unknown)
                .containsExactly(Unknown.BUNDLE_COUNT, Unknown.AMBIENT_C, Unknown.ALL_TOGETHER);
        assertThat(turns).extracting(Dependence::level).containsExactly(Level.WARNING, Level.NOTE, Level.DANGER);
        assertThat(turns).extracting(Dependence::verdict).containsOnly("test");
        assertThat(turns.get(0).settledBy().code()).isEqualTo(Unknown.BUNDLE_COUNT);
    }
}
