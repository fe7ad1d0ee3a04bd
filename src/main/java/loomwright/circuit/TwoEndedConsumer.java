package loomwright.circuit;

import static loomwright.message.Arg.texts;

import java.util.List;
import loomwright.answer.Accepted;
import loomwright.answer.InputError;
import loomwright.answer.InputErrors;
import org.jspecify.annotations.Nullable;

/** A consumer between a and b, fed at a. */
public sealed interface TwoEndedConsumer extends Consumer permits LightingConsumer, Load {
    @Override
    default List<String> terminals() {
        return TwoEnds.TERMINALS;
    }

    @Override
    default String feedTerminal() {
        return TwoEnds.A;
    }

    @Override
    default String returnTerminal() {
        return TwoEnds.B;
    }

    /** The terminal that must be positive for it to work; absent if it works either way round. */
    default @Nullable String plus() {
        return null;
    }

    /** The terminal that must be negative; absent if it works either way round. */
    default @Nullable String minus() {
        String positive = plus();
        if (positive == null) {
            return null;
        }
        return positive.equals(TwoEnds.A) ? TwoEnds.B : TwoEnds.A;
    }

    /** Notes a fault unless {@code plus} is one of its terminals, and checks what all consumers share. */
    static InputErrors check(
            InputErrors faults,
            @Nullable String plus,
            @Nullable List<Condition> meantLive,
            @Nullable List<LiveAlternative> meantLiveWhen,
            @Nullable Double operateV,
            @Nullable Double releaseV) {
        faults.check(
                plus == null || TwoEnds.TERMINALS.contains(plus),
                InputError.Code.MALFORMED,
                "/plus",
                plus,
                Accepted.ONE_OF,
                texts("names", TwoEnds.TERMINALS));
        return Consumer.check(faults, meantLive, meantLiveWhen, operateV, releaseV, "operateV", "releaseV");
    }
}
