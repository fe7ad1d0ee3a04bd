package loomwright.service.network;

import java.util.List;
import loomwright.answer.Answer;
import loomwright.answer.Basis;
import loomwright.answer.Caution;
import loomwright.answer.InputErrors;
import loomwright.expression.Reduction;
import loomwright.expression.ResistanceExpression;
import loomwright.network.Element;
import loomwright.service.form.Table;
import org.jspecify.annotations.Nullable;

/**
 * A series/parallel network in textbook notation.
 *
 * @param network such as {@code 4 + (6 || 3)}
 * @param acrossV voltage across the whole, −1e6 to 1e6 V; absent if only the resistance is wanted
 */
public record ResistanceQuestion(String network, @Nullable Double acrossV) {
    public ResistanceQuestion {
        new InputErrors()
                .required("/network", network)
                .range("/acrossV", acrossV, -Element.MAXIMUM_V, Element.MAXIMUM_V)
                .reject();
    }

    /**
     * Reduces the network to one resistance.
     *
     * @throws loomwright.answer.RejectedInput that points at the character which cannot be read
     */
    public Answer<Reduction> answer() {
        ResistanceExpression expression = ResistanceExpression.parse(network);
        Reduction reduction = acrossV == null ? expression.reduce() : expression.reduce(acrossV);
        return new Answer<>(
                reduction,
                reduction.steps().stream().map(Reduction.Step::working).toList(),
                List.of(Basis.computed("series and parallel resistances", "Kirchhoff's laws and Ohm's law")),
                List.of(Caution.LOCAL_CODES));
    }

    /** The steps of a reduction in one table. */
    public static Table table(Reduction reduction) {
        return new Table(
                List.of("rule", "resultOhm", "text"),
                reduction.steps().stream()
                        .map(step -> List.<@Nullable Object>of(
                                step.rule(), step.resultOhm(), step.working().text()))
                        .toList());
    }
}
