package loomwright.backfeed;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import loomwright.operation.SettingScan;
import loomwright.operation.Step;

/**
 * In which settings each wire carries most, and each load that should be live has the fewest volts or the most, in steps that
 * last and while cranking, as far as can be told to six digits: of settings in which it is the same, the one with the fewest
 * changes. Steps that pass are left out.
 */
final class PeakSettings {
    /** Figures that differ by less are the same: the scan starts from the last solution, and its last digits depend on that. */
    private static final double SAME = 1e-6;

    /** A load with less than this share of the nominal voltage is not fed at all: what lacks is reported by itself. */
    private static final double FED_SHARE = 0.1;

    /** More than any load has, in nominal voltages: what a load lacks of that is largest where it has the fewest volts. */
    private static final double MOST_SHARE = 10;

    /** What peaks: the first row of each is for steps that last, the second for cranking. */
    private static final int CURRENT = 0;

    private static final int FEWEST_VOLTS = 2;
    private static final int MOST_VOLTS = 4;
    private static final int ROWS = 6;

    private final SettingCodes codes;
    private final double nominalV;
    private final double[][] most;
    private final long[][] code;

    PeakSettings(SettingCodes codes, int wires, int loads) {
        this.codes = codes;
        this.nominalV = codes.settings().plan().system().nominalVoltageV();
        this.most = new double[ROWS][];
        this.code = new long[ROWS][];
        for (int row = 0; row < ROWS; row++) {
            int count = row < FEWEST_VOLTS ? wires : loads;
            most[row] = new double[count];
            code[row] = new long[count];
        }
    }

    /** Takes note of the step that a scan settled last. */
    void look(UnintendedFeedScan feeds, Step step, int[] setting, long settingCode) {
        SettingScan scan = feeds.scan();
        if (!scan.solved() || step == Step.OFF_ENGINE_TURNING) {
            return;
        }
        int cranking = step == Step.CRANK ? 1 : 0;
        for (int wire = 0; wire < most[CURRENT].length; wire++) {
            add(CURRENT + cranking, wire, settingCode, Math.abs(scan.currentA(wire)));
        }
        for (int load = 0; load < most[MOST_VOLTS].length; load++) {
            if (feeds.isMeant(load, step, setting)) {
                double volts = scan.effectiveV(load);
                if (volts > FED_SHARE * nominalV) {
                    add(MOST_VOLTS + cranking, load, settingCode, volts);
                    add(FEWEST_VOLTS + cranking, load, settingCode, MOST_SHARE * nominalV - volts);
                }
            }
        }
    }

    void addAll(PeakSettings other) {
        for (int row = 0; row < most.length; row++) {
            for (int i = 0; i < most[row].length; i++) {
                add(row, i, other.code[row][i], other.most[row][i]);
            }
        }
    }

    private void add(int row, int i, long setting, double figure) {
        double mostSoFar = most[row][i];
        boolean more = figure > mostSoFar * (1 + SAME);
        boolean same = !more && figure >= mostSoFar * (1 - SAME);
        if (more || (same && isSimpler(setting, code[row][i]))) {
            most[row][i] = figure;
            code[row][i] = setting;
        }
    }

    private boolean isSimpler(long setting, long other) {
        int changes = Integer.compare(codes.changes(setting), codes.changes(other));
        return changes < 0 || (changes == 0 && setting < other);
    }

    /** The settings, those first in which most wires and loads have a peak. */
    List<int[]> list() {
        Map<Long, Integer> peaks = new LinkedHashMap<>();
        Arrays.stream(code).flatMapToLong(Arrays::stream).forEach(c -> peaks.merge(c, 1, Integer::sum));
        Stream<Map.Entry<Long, Integer>> mostFirst = peaks.entrySet().stream()
                .sorted(Map.Entry.<Long, Integer>comparingByValue()
                        .reversed()
                        .thenComparing(entry -> codes.changes(entry.getKey()))
                        .thenComparing(Map.Entry.comparingByKey()));
        return mostFirst.map(entry -> codes.setting(entry.getKey())).toList();
    }
}
