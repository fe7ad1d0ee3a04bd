package loomwright.backfeed.sneak;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What was solved is not solved again, but no more than so much of it is kept. */
class K07_RememberedTest {
    private final List<Long> solved = new ArrayList<>();
    private final Remembered two = new Remembered(2, code -> {
        solved.add(code);
        return List.of();
    });

    @Test
    void theSameSettingIsSolvedOnce() {
        two.at(1);
        two.at(2);
        two.at(1);
        assertThat(solved).containsExactly(1L, 2L);
    }

    @Test
    void whatWasAskedForLongestAgoIsForgotten() {
        two.at(1);
        two.at(2);
        two.at(1);
        two.at(3);
        two.at(1);
        two.at(2);
        assertThat(solved).containsExactly(1L, 2L, 3L, 2L);
        assertThat(two.all()).hasSize(2);
    }
}
