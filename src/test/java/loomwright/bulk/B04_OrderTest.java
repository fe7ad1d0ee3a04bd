package loomwright.bulk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Random;
import java.util.concurrent.atomic.AtomicInteger;
import loomwright.answer.Severity;
import loomwright.bulk.LineAnswer.Found;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;

/** Each line is answered once, in order, whichever is worked out first; and all are counted. */
class B04_OrderTest {
    private final ByteArrayOutputStream out = new ByteArrayOutputStream();

    private List<String> answers() {
        return out.toString(StandardCharsets.UTF_8).lines().toList();
    }

    /** Takes a random while, so that later lines are done first. */
    private static LineAnswer dawdling(Line line) {
        long spins = new Random(line.number()).nextInt(20_000);
        for (long i = 0; i < spins; i++) {
            Thread.onSpinWait();
        }
        return Runs.echo(line);
    }

    @Property(seed = "20261125", tries = 60)
    void answersComeInTheOrderOfTheLines(@ForAll @IntRange(max = 200) int lines) throws IOException {
        ByteArrayOutputStream written = new ByteArrayOutputStream();
        Summary summary = Runs.run(Runs.stream(Runs.numbers(lines)), B04_OrderTest::dawdling, written);
        List<String> answers = written.toString(StandardCharsets.UTF_8).lines().toList();
        assertThat(answers).hasSize(lines);
        for (int i = 1; i <= lines; i++) {
            assertThat(answers.get(i - 1)).isEqualTo(i + ":" + i);
        }
        assertThat(summary.complete()).isTrue();
        assertThat(summary.answers()).isEqualTo(lines);
        assertThat(summary.nextLine()).isEqualTo(lines + 1);
    }

    @Property(seed = "20261125", tries = 60)
    void aRunThatIsTakenUpAgainLosesAndDoublesNothing(
            @ForAll @IntRange(max = 40) int answered, @ForAll @IntRange(min = 1, max = 40) int more)
            throws IOException {
        String all = Runs.numbers(answered + more);
        ByteArrayOutputStream whole = new ByteArrayOutputStream();
        Runs.run(Runs.stream(all), Runs::echo, whole);
        ByteArrayOutputStream twice = new ByteArrayOutputStream();
        AtomicInteger asked = new AtomicInteger();
        Summary first = Runs.of(Runs.stream(all), 1, Runs::echo, twice).run(() -> asked.getAndIncrement() == answered);
        assertThat(first.complete()).isFalse();
        assertThat(first.nextLine()).isEqualTo(answered + 1);
        Summary second =
                Runs.of(Runs.stream(all), first.nextLine(), Runs::echo, twice).run(() -> false);
        assertThat(second.passedOver()).isEqualTo(answered);
        assertThat(second.answers()).isEqualTo(more);
        assertThat(twice.toString(StandardCharsets.UTF_8)).isEqualTo(whole.toString(StandardCharsets.UTF_8));
    }

    @Test
    void blankLinesAreCountedAndGetNoAnswer() throws IOException {
        Summary summary = Runs.run(Runs.stream("\na\n  \r\nb\n\n"), Runs::echo, out);
        assertThat(answers()).containsExactly("2:a", "4:b");
        assertThat(summary.blank()).isEqualTo(3);
        assertThat(summary.answers()).isEqualTo(2);
        assertThat(summary.nextLine()).isEqualTo(6);
    }

    @Test
    void aBadLineIsAnsweredWithItsProblemAndTheRestGoesOn() throws IOException {
        Summary summary = Runs.run(
                Runs.stream("a\nbad\n" + "x".repeat(1_001) + "\nb\n"),
                line -> line.isTooLong() || Runs.text(line).equals("bad")
                        ? LineAnswer.problem(("problem at " + line.number() + "\n").getBytes(StandardCharsets.UTF_8))
                        : Runs.echo(line),
                out);
        assertThat(answers()).containsExactly("1:a", "problem at 2", "problem at 3", "4:b");
        assertThat(summary.answers()).isEqualTo(2);
        assertThat(summary.problems()).isEqualTo(2);
    }

    @Test
    void findingsAreCountedBySeverityAndCode() throws IOException {
        Found drop = new Found(Severity.WARNING, "voltage-drop");
        Found feed = new Found(Severity.DANGER, "backfeed");
        Found weak = new Found(Severity.WARNING, "backfeed");
        Summary summary = Runs.run(
                Runs.stream("d\nff\nfdwd\nproblem\n\n-\n"),
                line -> Runs.text(line).equals("problem")
                        ? LineAnswer.problem(new byte[0])
                        : LineAnswer.answer(
                                new byte[0],
                                Runs.text(line)
                                        .chars()
                                        .filter(c -> c != '-')
                                        .mapToObj(c -> c == 'd' ? drop : c == 'f' ? feed : weak)
                                        .toList()),
                out);
        assertThat(summary.findings())
                .containsExactly(
                        new Summary.Count(Severity.DANGER, "backfeed", 3, 2),
                        new Summary.Count(Severity.WARNING, "backfeed", 1, 1),
                        new Summary.Count(Severity.WARNING, "voltage-drop", 3, 2));
    }

    @Test
    void aFaultOfOursIsNotTakenForAnAnswer() {
        assertThatThrownBy(() -> Runs.run(
                        Runs.stream("a\n"),
                        line -> {
                            throw new IllegalArgumentException("ours");
                        },
                        out))
                .isInstanceOf(IllegalStateException.class)
                .hasRootCauseMessage("ours");
    }
}
