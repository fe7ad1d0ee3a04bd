package loomwright.expression;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import loomwright.answer.InputError;
import loomwright.answer.RejectedInput;
import loomwright.message.Argument;
import loomwright.message.Argument.Verbatim;
import loomwright.message.MessageFinder;
import loomwright.network.Circuit;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.CharRange;
import net.jqwik.api.constraints.Chars;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.StringLength;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Feature 11: series/parallel expressions in textbook notation are reduced step by step. */
class ResistanceExpressionTest {
    private static double total(String text) {
        return ResistanceExpression.parse(text).reduce().totalOhm();
    }

    @ParameterizedTest(name = "{0} is {1} ohm")
    @CsvSource({
        "5, 5",
        "20 + 20 + 20 + 20 + 10, 90",
        "1 || 2 || 2, 0.5",
        "1 + 6 || 13, 5.105263157894737",
        "(1 + 6) || 13, 4.55",
        "1   6 || 13, 5.105263157894737",
        "1 (6 ∥ 13), 5.105263157894737",
        "(1) (2), 3",
        "1+(6||13), 5.105263157894737",
        "4.7k, 4700",
        "4.7 kΩ + 300 ohm, 5000",
        "1M + 1K, 1001000",
        "5m, 0.005",
        "5 mohm, 0.005",
        ".5 + 1e-3, 0.501",
        "((((7)))), 7",
        "10 || 10 10 || 10, 10"
    })
    void readsTheNotation(String text, double ohm) {
        assertThat(total(text)).isCloseTo(ohm, within(1e-12 * ohm));
    }

    /** OpenStax University Physics vol. 2 10.2, mixed example: 12.0 V; 1.00 + (6.00 ∥ 13.0) ohm. */
    @Test
    void explainsEachStepAndSharesTheVoltage() {
        Reduction r = ResistanceExpression.parse("1 + (6 || 13)").reduce(12);
        assertThat(r.steps())
                .extracting(Reduction.Step::rule)
                .containsExactly(Reduction.Rule.PARALLEL, Reduction.Rule.SERIES);
        assertThat(r.steps())
                .extracting(step -> step.working().arguments().get("formula"))
                .containsExactly(new Verbatim("1/(1/R2 + 1/R3)"), new Verbatim("R1 + T1"));
        assertThat(r.steps().get(0).resultOhm()).isCloseTo(4.105, within(0.0005));
        assertThat(r.steps().get(1).resultOhm()).isCloseTo(5.105, within(0.0005));
        assertThat(r.shares()).extracting(Reduction.Share::name).containsExactly("R1", "R2", "R3");
        assertThat(r.shares().get(0).voltageV()).isCloseTo(2.35, within(0.005));
        assertThat(r.shares().get(1).currentA()).isCloseTo(1.61, within(0.005));
        assertThat(r.shares().get(1).powerW()).isCloseTo(15.5, within(0.05));
    }

    @ParameterizedTest(name = "\"{0}\" is wrong at character {1}")
    @CsvSource(
            quoteCharacter = '"',
            value = {
                "1 + * 3, 5",
                "1 + , 4",
                "\"\", 1",
                "(1 + 2, 1",
                "1 + 2), 6",
                "(), 2",
                "1 | 2, 3",
                "1 || || 2, 6",
                "2(3), 2",
                "(2)3, 4",
                "\"4,7\", 2",
                "1.2.3, 4",
                ".5 + ., 6",
                "1e, 3",
                "-5, 1",
                "R1 + R2, 1",
                "1e400, 1",
                "1 + NaN, 5"
            })
    void pointsAtTheCharacter(String text, int position) {
        InputError fault = fault(text);
        assertThat(fault.pointer()).isEqualTo("network");
        assertThat(fault.accepted().code()).isEqualTo(AcceptedExpression.AT_CHARACTER);
        assertThat(fault.accepted().arguments()).containsEntry("character", new Argument.Count(position));
        String[] lines = MessageFinder.word(fault.accepted(), "shown").split("\n", -1);
        assertThat(lines[1]).isEqualTo(text);
        assertThat(lines[2]).isEqualTo(" ".repeat(position - 1) + "^");
    }

    private static InputError fault(String text) {
        return catchThrowableOfType(RejectedInput.class, () -> ResistanceExpression.parse(text))
                .faults()
                .get(0);
    }

    @Test
    void lengthAndDepthAreLimited() {
        assertThat(fault("1 ".repeat(2001)).code()).isEqualTo(InputError.Code.OVER_LIMIT);
        assertThat(total("1 ".repeat(2000).strip())).isEqualTo(2000);
        assertThat(fault("(".repeat(101) + "1" + ")".repeat(101)).code()).isEqualTo(InputError.Code.OVER_LIMIT);
        assertThat(total("(".repeat(100) + "1" + ")".repeat(100))).isEqualTo(1);
        assertThat(fault("(".repeat(4000)).code()).isEqualTo(InputError.Code.OVER_LIMIT);
    }

    /** Whatever is sent is read or rejected with a fault of its own. */
    @Property(seed = "111", tries = 2000)
    void anyTextIsReadOrRejected(
            @ForAll
                    @StringLength(max = 40)
                    @Chars({'(', ')', '+', '|', '∥', ' ', '.', 'e', 'k', 'm', '-', '\ud83d'})
                    @CharRange(from = '0', to = '9')
                    String text) {
        try {
            assertThat(total(text)).isNotNegative().isFinite();
        } catch (RejectedInput rejected) {
            assertThat(rejected.faults().get(0).pointer()).isEqualTo("network");
            assertThat(rejected.faults().get(0).accepted().text()).doesNotContain("\ud83d");
        }
    }

    /** A random expression is written down, and the network that it means is set out and solved. */
    @Property(seed = "112", tries = 300)
    void agreesWithTheSolver(@ForAll @IntRange(max = 1_000_000) int seed) {
        RandomExpression random = new RandomExpression(seed);
        Reduction r = ResistanceExpression.parse(random.text()).reduce(12);
        Circuit.Reading reading =
                random.circuit().source("source", "0", "top", 12, 0).solve();
        assertThat(reading.amps("source")).isCloseTo(12 / r.totalOhm(), within(1e-9 * 12 / r.totalOhm()));
        for (Reduction.Share share : r.shares()) {
            assertThat(reading.amps(share.name())).isCloseTo(share.currentA(), within(1e-9 * (1 + share.currentA())));
        }
    }

    /** IEC 60062: the letter stands for the point. */
    @ParameterizedTest
    @CsvSource({"4k7, 4700", "2R2, 2.2", "4k7 + 2R2, 4702.2", "1M5, 1500000", "47R, 47", "4k7 ohm || 4700, 2350"})
    void aLetterMayStandForThePoint(String text, double ohm) {
        assertThat(ResistanceExpression.parse(text).reduce().totalOhm()).isCloseTo(ohm, within(1e-9 * ohm));
    }

    @Test
    void aLinkOfNoOhmShortCircuitsWhatLiesBesideIt() {
        assertThat(ResistanceExpression.parse("0 || 5").reduce().totalOhm()).isZero();
        assertThat(ResistanceExpression.parse("3 + (0 || 5) + 0").reduce().totalOhm())
                .isEqualTo(3);
        ResistanceExpression link = ResistanceExpression.parse("0 || 5");
        assertThatThrownBy(() -> link.reduce(12)).isInstanceOf(RejectedInput.class);
    }
}
