package loomwright.catalogue;

import java.util.List;

/**
 * A terminal of a usual switch.
 *
 * @param terminal its name in the plan document
 * @param words what an owner calls it
 * @param meaning what it feeds or is fed by
 * @param positions the positions in which it is joined to the others that are named there
 * @param source where the mark is from
 * @param status how far it was compared with the source
 */
public record SwitchTerminal(
        String terminal, List<String> words, String meaning, List<String> positions, String source, String status) {
    public SwitchTerminal {
        words = List.copyOf(words);
        positions = List.copyOf(positions);
    }
}
