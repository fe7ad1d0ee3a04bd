package loomwright.answer;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * One result of a check: what was found, by what numbers, and what to do about it.
 *
 * @param severity how serious it is
 * @param code stable name of what was found, such as {@code wire-overloaded}; tests and callers may rely on it
 * @param ids the parts and wires concerned; empty where the question names none
 * @param text the finding as a sentence, with its numbers in it
 * @param figures the numbers it rests on, in reading order
 * @param basis where its limit comes from
 * @param remedy what to do; absent where there is nothing to be done
 */
public record Finding(
        Severity severity,
        String code,
        List<String> ids,
        String text,
        List<Figure> figures,
        Basis basis,
        @Nullable String remedy) {
    public Finding {
        ids = List.copyOf(ids);
        figures = List.copyOf(figures);
    }

    /**
     * One number of a finding.
     *
     * @param name its name with the unit in it, as in the contract
     */
    public record Figure(String name, double value) {}
}
