package loomwright.circuit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.groups.Tuple.tuple;

import java.util.List;
import java.util.Map;
import loomwright.answer.InputError;
import loomwright.answer.InputError.Code;
import loomwright.answer.RejectedInput;
import org.assertj.core.api.Assertions;
import org.junit.jupiter.api.Test;

/** What a plan says about when something is meant to be live, and by which switches. */
class P07_MeantLiveTest {
    private static final String FAN = "{'kind':'switch','id':'fan','terminals':['a','b'],'positions':["
            + "{'name':'off','joins':[]},{'name':'on','joins':[['a','b']]}]%s}";

    private static String lamp(String meant) {
        return "{'kind':'lamp','id':'L','ratedV':12,'ratedW':5" + meant + "}," + FAN.formatted("");
    }

    private static List<InputError> errors(String parts) {
        Throwable thrown = Assertions.catchThrowable(() -> Plans.of(parts, ""));
        assertThat(thrown).hasRootCauseInstanceOf(RejectedInput.class);
        return ((RejectedInput) rootCause(thrown)).faults();
    }

    private static Throwable rootCause(Throwable thrown) {
        Throwable cause = thrown;
        for (Throwable next = cause.getCause(); next != null; next = cause.getCause()) {
            cause = next;
        }
        return cause;
    }

    @Test
    void itMayBeLeftUnsaid() {
        Consumer lamp = Plans.of(lamp(""), "").listParts(Consumer.class).get(0);
        assertThat(lamp.meantLive()).isNull();
        assertThat(lamp.meantLiveWhen()).isEmpty();
    }

    @Test
    void anyOfSeveralAlternativesIsKeptInItsOrder() {
        Consumer lamp = Plans.of(
                        lamp(",'meantLive':['off','run'],'meantLiveWhen':[{'switches':{'fan':['on']}},"
                                + "{'conditions':['run'],'switches':{}}]"),
                        "")
                .listParts(Consumer.class)
                .get(0);
        assertThat(lamp.meantLiveWhen())
                .containsExactly(
                        LiveAlternative.of(Map.of("fan", List.of("on"))),
                        new LiveAlternative(List.of(Condition.RUN), Map.of()));
    }

    @Test
    void anAlternativeCountsInNoConditionThatTheLoadIsNotMeantFor() {
        assertThat(errors(lamp(",'meantLive':['run'],'meantLiveWhen':[{'switches':{}},{'conditions':['run','off'],"
                        + "'switches':{}}]")))
                .extracting(InputError::code, InputError::pointer)
                .containsExactly(tuple(Code.CONTRADICTION, "/meantLiveWhen/1/conditions/1"));
    }

    @Test
    void aMomentarySwitchRestsWhereItIsDrawn() {
        Switch push = Plans.of(FAN.formatted(",'momentary':true,'position':'off'"), "")
                .listParts(Switch.class)
                .get(0);
        assertThat(push.momentary()).isTrue();
        assertThat(push.in(Condition.RUN).name()).isEqualTo("off");
        assertThat(push.withPosition("on").momentary()).isTrue();
        assertThat(Plans.of(FAN.formatted(""), "")
                        .listParts(Switch.class)
                        .get(0)
                        .momentary())
                .isFalse();
    }

    @Test
    void oneThatFollowsTheKeyHasNoRestPosition() {
        String key = ",'momentary':true,'positionByCondition':{'off':'off','accessory':'off','run':'on','crank':'on',"
                + "'running':'on'}";
        assertThat(errors(FAN.formatted(key)))
                .extracting(InputError::code, InputError::pointer)
                .containsExactly(tuple(Code.CONTRADICTION, "/momentary"));
    }
}
