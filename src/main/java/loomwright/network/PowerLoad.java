package loomwright.network;

import loomwright.answer.InputErrors;

/**
 * A load that takes the same power at any voltage from a minimum up: i = P/v while |v| ≥ V0, and below that the
 * resistor that takes P at V0: i = v·P/V0². Of several solutions the one of higher voltage is wanted, the one that is
 * reached when the load is switched on at full voltage.
 *
 * @param powerW P, 0 to 1e9 W
 * @param minimumV V0, 1e-6 to 1e6 V; what happens below it is an assumption, so a finding says when it was used
 */
public record PowerLoad(String id, int from, int to, double powerW, double minimumV) implements Element {
    public PowerLoad {
        new InputErrors()
                .range("/powerW", powerW, 0, MAXIMUM_W)
                .range("/minimumV", minimumV, 1e-6, MAXIMUM_V)
                .reject();
    }
}
