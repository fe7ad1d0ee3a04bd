package loomwright.answer;

import java.util.function.UnaryOperator;

/**
 * A result that names findings.
 *
 * @param <T> the result itself
 */
@FunctionalInterface
public interface WithFindings<T> {
    /** The same with what each finding rests on. */
    T with(UnaryOperator<Finding> marking);
}
