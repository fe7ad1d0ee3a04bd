package loomwright.service.entrance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import loomwright.answer.InputError;
import loomwright.answer.RejectedInput;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The file of keys: a name and a key on each line. */
class ApiKeysTest {
    private static final String KEY = "heron-on-a-grey-post-7";

    @Test
    void aKeyHasAHolder() {
        ApiKeys keys = ApiKeys.of(List.of("# workshop", "", "till  " + KEY, "bench\tanother-key-of-16-chars "));
        assertThat(keys.areAskedFor()).isTrue();
        assertThat(keys.findHolder(KEY)).contains("till");
        assertThat(keys.findHolder("another-key-of-16-chars")).contains("bench");
    }

    @Test
    void neitherPartNorMoreOfAKeyIsAKey() {
        ApiKeys keys = ApiKeys.of(List.of("till " + KEY));
        assertThat(keys.findHolder("")).isEmpty();
        assertThat(keys.findHolder(KEY.substring(1))).isEmpty();
        assertThat(keys.findHolder(KEY + "7")).isEmpty();
        assertThat(keys.findHolder("till")).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "till",
                "till short",
                "till two words-and-a-blank",
                "a/b heron-on-a-grey-post-7",
                "till heron-on-a-gr\u00e9y-post-7"
            })
    void aLineThatIsNoneIsToldByItsNumberAndNotRepeated(String line) {
        assertThatThrownBy(() -> ApiKeys.of(List.of("# keys", line)))
                .isInstanceOfSatisfying(RejectedInput.class, rejected -> {
                    InputError fault = rejected.faults().get(0);
                    assertThat(fault.code()).isEqualTo(InputError.Code.MALFORMED);
                    assertThat(fault.pointer()).isEqualTo("/2");
                    assertThat(fault.value()).isNull();
                });
    }

    @Test
    void aNameOrAKeyTwiceIsAFault() {
        assertThatThrownBy(() -> ApiKeys.of(List.of("a " + KEY, "a " + KEY + "x", "b " + KEY)))
                .isInstanceOfSatisfying(
                        RejectedInput.class,
                        rejected -> assertThat(rejected.faults())
                                .extracting(InputError::pointer)
                                .containsExactly("/2", "/3"));
    }

    @Test
    void aFileWithoutKeysIsAFaultAndNotAnOpenDoor() {
        assertThatThrownBy(() -> ApiKeys.of(List.of("# none yet"))).isInstanceOf(RejectedInput.class);
    }
}
