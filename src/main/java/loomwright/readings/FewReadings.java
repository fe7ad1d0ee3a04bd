package loomwright.readings;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import loomwright.readings.ReadingsSheet.Purpose;

/**
 * The few readings that tell most about a job, out of all: whether anything bridges the supply, the battery, what each
 * load of interest gets, then the points that halve the path to it. They stay in the order of the sheet, in which the
 * point that halves a path comes first.
 */
final class FewReadings {
    /** What fits on half a page. */
    static final int MOST = 10;

    /** Few circuits looked at well rather than many at one point. */
    private static final int MOST_CIRCUITS = 4;

    /** What is asked of a circuit, most telling first. */
    private static final List<Purpose> OF_A_CIRCUIT =
            List.of(Purpose.LOAD, Purpose.HALF_SPLIT, Purpose.DEAD, Purpose.RETURN_DROP, Purpose.FEED_DROP);

    private FewReadings() {}

    /**
     * Chooses.
     *
     * @param loads whose circuits are of interest, most first; where there are none, all are
     */
    static List<ReadingCandidate> of(List<ReadingCandidate> all, List<String> loads) {
        Set<ReadingCandidate> chosen = new HashSet<>();
        first(all, reading -> reading.purpose() == Purpose.SUPPLY_BRIDGED, chosen);
        first(all, reading -> reading.purpose() == Purpose.SUPPLY, chosen);
        Map<String, List<ReadingCandidate>> circuits = all.stream()
                .filter(reading -> reading.circuit() != null && OF_A_CIRCUIT.contains(reading.purpose()))
                .collect(Collectors.groupingBy(reading -> String.valueOf(reading.circuit())));
        List<String> order = new ArrayList<>(loads);
        order.retainAll(circuits.keySet());
        if (order.isEmpty()) {
            all.stream()
                    .map(reading -> String.valueOf(reading.circuit()))
                    .filter(circuits::containsKey)
                    .distinct()
                    .forEach(order::add);
        }
        List<List<ReadingCandidate>> queues = order.stream()
                .limit(MOST_CIRCUITS)
                .map(load -> circuits.getOrDefault(load, List.of()).stream()
                        .sorted(Comparator.comparingInt(reading -> OF_A_CIRCUIT.indexOf(reading.purpose())))
                        .toList())
                .toList();
        for (int turn = 0; chosen.size() < MOST && turn < longest(queues); turn++) {
            for (List<ReadingCandidate> queue : queues) {
                if (turn < queue.size() && chosen.size() < MOST) {
                    chosen.add(queue.get(turn));
                }
            }
        }
        return all.stream().filter(chosen::contains).toList();
    }

    private static int longest(List<List<ReadingCandidate>> queues) {
        return queues.stream().mapToInt(List::size).max().orElse(0);
    }

    private static void first(
            List<ReadingCandidate> all, Predicate<ReadingCandidate> wanted, Set<ReadingCandidate> chosen) {
        all.stream().filter(wanted).findFirst().ifPresent(chosen::add);
    }
}
