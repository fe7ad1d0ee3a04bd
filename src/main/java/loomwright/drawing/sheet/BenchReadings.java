package loomwright.drawing.sheet;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import loomwright.readings.ReadingsSheet;
import loomwright.readings.ReadingsSheet.Purpose;
import loomwright.readings.ReadingsSheet.Reading;

/**
 * The few readings that tell most about a job, out of all: whether anything bridges the supply, the battery, what each
 * load of interest gets, then the points that halve the path to it. They stay in the order of the sheet, in which the
 * point that halves a path comes first.
 */
final class BenchReadings {
    /** What fits on half a page. */
    static final int MOST = 10;

    /** Few circuits looked at well rather than many at one point. */
    private static final int MOST_CIRCUITS = 4;

    /** What is asked of a circuit, most telling first. */
    private static final List<Purpose> OF_A_CIRCUIT =
            List.of(Purpose.LOAD, Purpose.HALF_SPLIT, Purpose.DEAD, Purpose.RETURN_DROP, Purpose.FEED_DROP);

    private BenchReadings() {}

    /**
     * Chooses.
     *
     * @param loads whose circuits are of interest, most first; where there are none, all are
     */
    static List<Reading> of(ReadingsSheet sheet, List<String> loads) {
        Set<Reading> chosen = new LinkedHashSet<>();
        first(sheet.readings(), reading -> reading.purpose() == Purpose.SUPPLY_BRIDGED, chosen);
        first(sheet.readings(), reading -> reading.purpose() == Purpose.SUPPLY, chosen);
        Map<String, List<Reading>> circuits = sheet.readings().stream()
                .filter(reading -> reading.circuit() != null && OF_A_CIRCUIT.contains(reading.purpose()))
                .collect(Collectors.groupingBy(reading -> String.valueOf(reading.circuit())));
        List<String> order = new ArrayList<>(loads);
        order.retainAll(circuits.keySet());
        if (order.isEmpty()) {
            sheet.readings().stream()
                    .map(reading -> String.valueOf(reading.circuit()))
                    .filter(circuits::containsKey)
                    .distinct()
                    .forEach(order::add);
        }
        List<List<Reading>> queues = order.stream()
                .limit(MOST_CIRCUITS)
                .map(load -> circuits.getOrDefault(load, List.of()).stream()
                        .sorted(Comparator.comparingInt(reading -> OF_A_CIRCUIT.indexOf(reading.purpose())))
                        .toList())
                .toList();
        for (int turn = 0; chosen.size() < MOST && turn < longest(queues); turn++) {
            for (List<Reading> queue : queues) {
                if (turn < queue.size() && chosen.size() < MOST) {
                    chosen.add(queue.get(turn));
                }
            }
        }
        return chosen.stream().sorted(Comparator.comparingInt(Reading::number)).toList();
    }

    private static int longest(List<List<Reading>> queues) {
        return queues.stream().mapToInt(List::size).max().orElse(0);
    }

    private static void first(List<Reading> readings, Predicate<Reading> wanted, Set<Reading> chosen) {
        readings.stream().filter(wanted).findFirst().ifPresent(chosen::add);
    }
}
