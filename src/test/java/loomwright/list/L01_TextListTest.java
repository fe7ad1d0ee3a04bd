package loomwright.list;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import loomwright.answer.RejectedInput;
import loomwright.circuit.Plan;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The same table, however it is written. */
class L01_TextListTest {
    private static final String[] ROWS = {
        "no;from;to;size;length", "1;battery +;fuse in;2.5 mm2;0.5 m", "2;fuse out;horn;1.5 mm2;2 m"
    };

    @ParameterizedTest
    @ValueSource(strings = {",", ";", "\t", "|"})
    void theHeadingsTellTheSeparator(String separator) {
        StringBuilder text = new StringBuilder();
        for (int i = 0; i < ROWS.length; i++) {
            text.append(ROWS[i].replace(";", separator)).append('\n');
            if (i == 0 && separator.equals("|")) {
                text.append("--|--|--|--|--\n");
            }
        }
        Plan plan = Lists.plan(Lists.of(text.toString()));
        assertThat(Lists.ends(plan, "1")).isEqualTo("battery.plus fuse.a");
        assertThat(Lists.ends(plan, "2")).isEqualTo("fuse.b horn.a");
        assertThat(plan.findWire("2").orElseThrow().conductor().lengthM()).isEqualTo(2);
    }

    @ParameterizedTest
    @ValueSource(strings = {"UTF-8", "windows-1252", "UTF-16LE"})
    void aSuperscriptIsReadInAnyUsualEncoding(String charset) {
        String text = "from;to;cross-section mm²;length cm\nbattery +;horn;2,5;120\n";
        byte[] bytes = (charset.startsWith("UTF-16") ? "\uFEFF" + text : text).getBytes(Charset.forName(charset));
        Plan plan = Lists.plan(Lists.of(TextList.decode(bytes)));
        assertThat(plan.wires().get(0).conductor().size()).isEqualTo("2.5 mm2");
        assertThat(plan.wires().get(0).conductor().lengthM()).isEqualTo(1.2);
    }

    @Test
    void aByteOrderMarkIsNoPartOfTheFirstHeading() {
        byte[] bytes = "\uFEFFfrom,to\nbattery +,horn\n".getBytes(StandardCharsets.UTF_8);
        assertThat(Lists.plan(Lists.of(TextList.decode(bytes))).wires()).isNotEmpty();
    }

    @Test
    void quotedCellsHoldSeparatorsAndQuotes() {
        ListReading reading = Lists.of("from,to,length", "\"battery, +\",horn,\"4' 6\"\"\"");
        assertThat(Lists.plan(reading).wires().get(0).conductor().lengthM()).isEqualTo(1.3716);
    }

    @Test
    void aQuoteThatIsNeverClosedIsRefusedInWords() {
        assertThatThrownBy(() -> Lists.of("from,to", "\"battery +,horn")).isInstanceOf(RejectedInput.class);
    }

    @Test
    void aTextWithoutATableIsRefusedInWords() {
        assertThatThrownBy(() -> Lists.of("Dear all,", "my horn does not work."))
                .isInstanceOf(RejectedInput.class);
    }

    @Test
    void headingsInAnyOrderSpelledSlightlyWrongAreUnderstood() {
        Plan plan = Lists.plan(Lists.of("Lenght m,Color,To,From,Guage", "1.5,red,horn,battery +,14 AWG"));
        assertThat(plan.wires().get(0).conductor().lengthM()).isEqualTo(1.5);
        assertThat(plan.wires().get(0).colour()).isEqualTo("RD");
        assertThat(plan.wires().get(0).conductor().size()).isEqualTo("14 AWG");
    }

    @Test
    void anApostropheBeforeAFormulaIsNoPartOfTheText() {
        ListSource source = TextList.read("from,to\n'=1+1,'plain\n", ListLimits.defaults());
        assertThat(source.sheets().get(0).rows().get(1).cells()).containsExactly("=1+1", "'plain");
    }
}
