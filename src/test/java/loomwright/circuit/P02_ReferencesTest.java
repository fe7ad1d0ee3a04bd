package loomwright.circuit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.groups.Tuple.tuple;

import java.util.List;
import loomwright.answer.InputError;
import loomwright.answer.InputError.Code;
import loomwright.answer.RejectedInput;
import loomwright.message.MessageFinder;
import org.assertj.core.api.Assertions;
import org.junit.jupiter.api.Test;

/** Everything a plan names must exist, ids are used once, and all faults are told together with their places. */
class P02_ReferencesTest {
    private static final String BATTERY = "{'kind':'battery','id':'B'}";

    @Test
    void allFaultsAreToldNotOnlyTheFirst() {
        assertThat(faults(
                        BATTERY + "," + BATTERY,
                        "{'id':'W1','from':'B.plus','to':'B.plus','resistanceOhm':1},"
                                + "{'id':'W1','from':'B.left','to':'C.a','resistanceOhm':1}"))
                .extracting(InputError::code, InputError::pointer)
                .containsExactly(
                        tuple(Code.DUPLICATE, "/parts/1/id"),
                        tuple(Code.CONTRADICTION, "/wires/0/to"),
                        tuple(Code.DUPLICATE, "/wires/1/id"),
                        tuple(Code.UNKNOWN_REFERENCE, "/wires/1/from"),
                        tuple(Code.UNKNOWN_REFERENCE, "/wires/1/to"));
    }

    @Test
    void anUnknownTerminalIsAnsweredWithThoseThereAre() {
        assertThat(faults(BATTERY, "{'id':'W1','from':'B.left','to':'B.minus','resistanceOhm':1}"))
                .singleElement()
                .satisfies(f -> assertThat(MessageFinder.words(f.accepted(), "terminals"))
                        .containsExactly("plus", "minus"));
    }

    @Test
    void aWireMayNotBearTheIdOfAPart() {
        assertThat(faults(BATTERY, "{'id':'B','from':'B.plus','to':'B.minus','resistanceOhm':1}"))
                .extracting(InputError::code, InputError::pointer)
                .containsExactly(tuple(Code.DUPLICATE, "/wires/0/id"));
    }

    @Test
    void aLampMayBeMeantLiveOnlyInPositionsThatItsSwitchHas() {
        String lamp = "{'kind':'lamp','id':'L','ratedV':12,'ratedW':5,'meantLive':['run'],'meantLiveWhen':"
                + "[{'switches':{'S':['up'],'B':['up']}}]}";
        String chosen = "{'kind':'switch','id':'S','terminals':['a','b'],'positions':[{'name':'down','joins':[]}]}";
        assertThat(faults(BATTERY + "," + lamp + "," + chosen, ""))
                .extracting(InputError::code, InputError::pointer)
                .containsExactlyInAnyOrder(
                        tuple(Code.UNKNOWN_REFERENCE, "/parts/1/meantLiveWhen/0/switches/S/0"),
                        tuple(Code.UNKNOWN_REFERENCE, "/parts/1/meantLiveWhen/0/switches/B"));
    }

    @Test
    void aPartThatIsNotThereIsOneFaultHoweverManyWiresLeadToIt() {
        assertThat(faults(
                        BATTERY,
                        "{'id':'W1','from':'B.plus','to':'fuse.a','resistanceOhm':1},"
                                + "{'id':'W2','from':'fuse.b','to':'B.minus','resistanceOhm':1}"))
                .singleElement()
                .satisfies(fault -> {
                    assertThat(fault.pointer()).isEqualTo("/wires/0/to");
                    assertThat(MessageFinder.word(fault.accepted(), "part")).isEqualTo("fuse");
                    assertThat(MessageFinder.words(fault.accepted(), "wires")).containsExactly("W1", "W2");
                });
    }

    @Test
    void allEarthsMissingIsOneFault() {
        String wires = "{'id':'W1','from':'B.minus','to':'body.31','resistanceOhm':1},"
                + "{'id':'W2','from':'B.minus','to':'engine.31','resistanceOhm':1},"
                + "{'id':'W3','from':'B.minus','to':'body.31','resistanceOhm':1}";
        assertThat(faults(BATTERY, wires)).singleElement().satisfies(fault -> {
            assertThat(fault.code()).isEqualTo(Code.MISSING);
            assertThat(fault.pointer()).isEqualTo("/parts");
            assertThat(MessageFinder.words(fault.accepted(), "ids")).containsExactly("body", "engine");
            assertThat(MessageFinder.words(fault.accepted(), "wires")).containsExactly("W1", "W2", "W3");
        });
        // With one earth there, the other is a part that is not there like any.
        assertThat(faults(BATTERY + ",{'kind':'earth','id':'body'}", wires))
                .singleElement()
                .satisfies(fault -> assertThat(fault.pointer()).isEqualTo("/wires/1/to"));
    }

    private static List<InputError> faults(String parts, String wires) {
        Throwable thrown = Assertions.catchThrowable(() -> Plans.of(parts, wires));
        assertThat(thrown).hasRootCauseInstanceOf(RejectedInput.class);
        return ((RejectedInput) rootCause(thrown)).faults();
    }

    private static Throwable rootCause(Throwable thrown) {
        Throwable cause = thrown.getCause();
        return cause == null ? thrown : rootCause(cause);
    }
}
