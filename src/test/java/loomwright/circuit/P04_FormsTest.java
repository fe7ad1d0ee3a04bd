package loomwright.circuit;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;

/** Ids and names of terminals are those that the forms stated in the contract allow. */
class P04_FormsTest {
    private static final String CHARACTERS = "aZ09_-+. éAz19\n";

    @Property(seed = "41", tries = 3000)
    void areReadAsTheFormsSay(@ForAll @IntRange(max = 1_000_000) int seed) {
        Random random = new Random(seed);
        int known = random.nextBoolean() ? 6 : CHARACTERS.length();
        StringBuilder text = new StringBuilder();
        int length = random.nextInt(random.nextBoolean() ? 15 : 45);
        for (int i = 0; i < length; i++) {
            text.append(CHARACTERS.charAt(random.nextInt(known)));
        }
        String word = text.toString();
        assertThat(Bounds.isId(word)).as(word).isEqualTo(word.matches(Bounds.ID_FORM));
        assertThat(Bounds.isTerminal(word)).as(word).isEqualTo(word.matches(Bounds.TERMINAL_FORM));
    }
}
