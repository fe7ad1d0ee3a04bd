package loomwright.expression;

import java.util.Random;
import loomwright.network.Circuit;

/** A random series/parallel expression, and the same as a network between "top" and the reference. */
final class RandomExpression {
    private final Random random;
    private final StringBuilder text = new StringBuilder();
    private final Circuit circuit = new Circuit();
    private int resistors;
    private int nodes;

    RandomExpression(int seed) {
        random = new Random(seed);
        group("top", "0", 4);
    }

    String text() {
        return text.toString();
    }

    Circuit circuit() {
        return circuit;
    }

    private void group(String from, String to, int depth) {
        if (depth == 0 || random.nextInt(4) == 0) {
            int ohm = 1 + random.nextInt(1000);
            text.append(ohm);
            circuit.resistor("R" + ++resistors, from, to, ohm);
            return;
        }
        boolean series = random.nextBoolean();
        String join = series ? new String[] {" + ", " ", "+"}[random.nextInt(3)] : random.nextBoolean() ? "||" : " ∥ ";
        int members = 2 + random.nextInt(3);
        String at = from;
        text.append('(');
        for (int k = 0; k < members; k++) {
            String next = series && k < members - 1 ? "m" + ++nodes : to;
            text.append(k == 0 ? "" : join);
            group(at, next, depth - 1);
            at = series ? next : from;
        }
        text.append(')');
    }
}
