package loomwright.message;

import static loomwright.message.Arg.arg;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.ibm.icu.text.MessageFormat;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import loomwright.message.Argument.Count;
import loomwright.message.Argument.Verbatim;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The message format, compared with ICU4J 78.1. */
class MessagePatternTest {
    private static Catalogue with(String pattern) {
        Map<String, String> texts = new HashMap<>(Catalogue.read("en"));
        texts.put("test.it", pattern);
        return new Catalogue(texts);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "plain words",
                "{who} loses it",
                "it's {who}'s, isn''t it",
                "in braces: '{who}' and '{' and '}'",
                "{n, plural, one {# fuse} other {# fuses}} of {who}",
                "{n, plural, =0 {no fuse} one {a fuse} other {'#' # fuses}}",
                "{who, select, horn {it} lamp {she} other {they}} at #",
                "{who, select, horn {{n, plural, one {one} other {#}}} other {none}}",
                "{n, plural, one {# of {who}} other {{who, select, horn {# horns} other {# others}}}}",
            })
    void aTextReadsAsIcuWritesIt(String pattern) {
        MessageFormat icu = new MessageFormat(pattern, Locale.ENGLISH);
        for (String who : List.of("horn", "lamp", "mirror")) {
            for (int n : new int[] {0, 1, 2, 12_345}) {
                String ours = with(pattern).text("test.it", Map.of("who", new Verbatim(who), "n", new Count(n)));
                assertThat(ours).isEqualTo(icu.format(Map.of("who", who, "n", n)));
            }
        }
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "{",
                "}",
                "{}",
                "{a",
                "{a,}",
                "{a, number}",
                "{a, plural, one {x}}",
                "{a, plural, other x}",
                "'{x"
            })
    void whatDoesNotFollowTheFormatIsRefusedWithItsText(String pattern) {
        assertThatThrownBy(() -> MessagePattern.parse(pattern))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining(pattern);
    }

    @Test
    void aPluralCountsTheThingsOfAList() {
        Catalogue it = with("{all, plural, =0 {nothing} one {only {all}} other {{all}}}");
        assertThat(it.text("test.it", of(Arg.texts("all", List.of())))).isEqualTo("nothing");
        assertThat(it.text("test.it", of(Arg.texts("all", List.of("F1"))))).isEqualTo("only F1");
        assertThat(it.text("test.it", of(Arg.texts("all", List.of("F1", "F2", "F3")))))
                .isEqualTo("F1, F2 and F3");
    }

    @Test
    void aTextNamesTheArgumentsItNeeds() {
        assertThat(MessagePattern.parse("{a} {b, plural, one {{c}} other {#}} {d, short}")
                        .required())
                .containsExactly("a", "b", "c", "d");
    }

    @Test
    void aSentenceMayBeginWithAThing() {
        Catalogue it = with("{wire, start} ends at {wire}, {wire, short}");
        assertThat(it.text("test.it", of(arg("wire", Argument.Thing.wire("w7")))))
                .isEqualTo("Wire w7 ends at wire w7, w7");
    }

    private static Map<String, Argument> of(Arg arg) {
        return Map.of(arg.name(), arg.value());
    }
}
