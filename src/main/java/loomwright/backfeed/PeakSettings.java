package loomwright.backfeed;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import loomwright.operation.SettingScan;
import loomwright.operation.Step;

/**
 * In which settings each wire carries most, in steps that last and while cranking, as far as can be told to six digits: of
 * settings in which it carries the same, the one with the fewest changes. Steps that pass are left out.
 */
final class PeakSettings {
    /** Currents that differ by less are the same: the scan starts from the last solution, and its last digits hang on that. */
    private static final double SAME = 1e-6;

    private static final int LASTING = 0;
    private static final int CRANKING = 1;

    private final SettingCodes codes;
    private final double[][] mostA;
    private final long[][] code;

    PeakSettings(SettingCodes codes, int wires) {
        this.codes = codes;
        this.mostA = new double[2][wires];
        this.code = new long[2][wires];
    }

    /** Takes note of the step that a scan settled last. */
    void look(SettingScan scan, Step step, long setting) {
        if (!scan.solved() || step == Step.OFF_ENGINE_TURNING) {
            return;
        }
        int which = step == Step.CRANK ? CRANKING : LASTING;
        for (int wire = 0; wire < mostA[which].length; wire++) {
            add(which, wire, setting, Math.abs(scan.currentA(wire)));
        }
    }

    void addAll(PeakSettings other) {
        for (int which = 0; which < mostA.length; which++) {
            for (int wire = 0; wire < mostA[which].length; wire++) {
                add(which, wire, other.code[which][wire], other.mostA[which][wire]);
            }
        }
    }

    private void add(int which, int wire, long setting, double currentA) {
        double mostSoFarA = mostA[which][wire];
        boolean more = currentA > mostSoFarA * (1 + SAME);
        boolean same = !more && currentA >= mostSoFarA * (1 - SAME);
        if (more || (same && isSimpler(setting, code[which][wire]))) {
            mostA[which][wire] = currentA;
            code[which][wire] = setting;
        }
    }

    private boolean isSimpler(long setting, long other) {
        int changes = Integer.compare(codes.changes(setting), codes.changes(other));
        return changes < 0 || (changes == 0 && setting < other);
    }

    /** The settings, those first in which most wires carry their most. */
    List<int[]> list() {
        Map<Long, Integer> wires = new LinkedHashMap<>();
        Arrays.stream(code).flatMapToLong(Arrays::stream).forEach(c -> wires.merge(c, 1, Integer::sum));
        Stream<Map.Entry<Long, Integer>> most = wires.entrySet().stream()
                .sorted(Map.Entry.<Long, Integer>comparingByValue()
                        .reversed()
                        .thenComparing(entry -> codes.changes(entry.getKey()))
                        .thenComparing(Map.Entry.comparingByKey()));
        return most.map(entry -> codes.setting(entry.getKey())).toList();
    }
}
