package loomwright.circuit;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;

/** The same vehicle, its parts and wires written down in another order. */
public final class Shuffled {
    private Shuffled() {}

    public static Plan of(Plan plan, Random random) {
        List<Part> parts = new ArrayList<>(plan.parts());
        List<Wire> wires = new ArrayList<>(plan.wires());
        Collections.shuffle(parts, random);
        Collections.shuffle(wires, random);
        return plan.with(parts, wires);
    }
}
