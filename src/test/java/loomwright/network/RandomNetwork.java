package loomwright.network;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;

/** Elements between any nodes at random: loops, islands and dead ends abound. */
public final class RandomNetwork {
    /** Makes one element. */
    interface Maker {
        Element make(Random random, String id, int from, int to);
    }

    private RandomNetwork() {}

    /** 3 to 10 nodes, the first the reference, and up to twice as many elements as nodes. */
    static Network of(int seed, Maker maker) {
        Random random = new Random(seed);
        int nodes = 3 + random.nextInt(8);
        int count = nodes + random.nextInt(nodes);
        List<Element> elements = new ArrayList<>();
        for (int k = 0; k < count; k++) {
            int from = random.nextInt(nodes);
            int to = (from + 1 + random.nextInt(nodes - 1)) % nodes;
            elements.add(maker.make(random, "e" + k, from, to));
        }
        return new Network(names(nodes), elements, 0);
    }

    public static List<String> names(int nodes) {
        return IntStream.range(0, nodes).mapToObj(i -> "n" + i).toList();
    }
}
