package loomwright.network;

import loomwright.answer.InputErrors;

/**
 * A source of current: i is the same whatever the voltage.
 *
 * @param currentA −1e6 to 1e6 A
 */
public record CurrentSource(String id, int from, int to, double currentA) implements Element {
    public CurrentSource {
        new InputErrors().range("/currentA", currentA, -MAXIMUM_A, MAXIMUM_A).reject();
    }
}
