package loomwright.operation;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import loomwright.operation.OracleElement.Filament;
import loomwright.operation.OracleElement.Law;
import loomwright.operation.OracleElement.Ohmic;
import loomwright.operation.OracleElement.Power;
import loomwright.operation.OracleElement.Sensed;
import loomwright.operation.OracleElement.Store;
import loomwright.operation.OracleElement.Valve;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.RealVector;

/** One solution: chords of the nonlinear laws and states of the valves, tried until both hold. */
final class OracleEquations {
    private enum Mode {
        OFF,
        ON,
        LIMITED,
        /** A source that would need more than its highest volts to hold what it senses. */
        HIGHEST
    }

    private static final int MOST_ROUNDS = 2000;
    private static final int ALL_AT_ONCE = 12;
    private static final int MOST_TANGENTS = 40;
    private static final double SETTLED = 1e-10;
    private static final double LITTLE_A = 1e-3;
    private static final double SMALL_V = 1e-9;
    private static final double SMALL_A = 1e-11;
    private static final double IN_EARNEST_A = 1e-9;
    private static final double ISLAND_OHM = 1e9;

    private final List<OracleElement> elements;
    private final Map<String, Integer> nodes;
    private final int count;
    private final Mode[] modes;
    private final double[] chordS;
    private final double[] tangentS;
    private final double[] tangentA;
    private double[] x = new double[0];

    OracleEquations(List<OracleElement> elements, Map<String, Integer> nodes, int count) {
        this.nodes = nodes;
        this.count = count;
        this.elements = elements;
        this.modes = new Mode[elements.size()];
        this.chordS = new double[elements.size()];
        this.tangentS = new double[elements.size()];
        this.tangentA = new double[elements.size()];
        for (int i = 0; i < modes.length; i++) {
            Law law = elements.get(i).law();
            // A source starts as one that gives, a diode as one that blocks.
            modes[i] = law instanceof Store || law instanceof Sensed || (law instanceof Valve v && v.thresholdV() < 0)
                    ? Mode.ON
                    : Mode.OFF;
            if (law instanceof Filament lamp) {
                setChord(i, lamp.conductanceS(lamp.ratedV()));
            } else if (law instanceof Power power) {
                // From above: of two solutions that of the higher voltage is wanted.
                setChord(i, OracleElement.IDLE_SHARE * power.conductanceS(0));
            }
        }
    }

    private void setChord(int i, double siemens) {
        chordS[i] = siemens;
        tangentS[i] = siemens;
        tangentA[i] = 0;
    }

    OracleFigures solve() {
        double change = Double.POSITIVE_INFINITY;
        for (int round = 0; round < MOST_ROUNDS; round++) {
            settleValves();
            double before = change;
            change = 0;
            // At the bend where a lamp is cold tangents may go to and fro; chords do not.
            boolean near = before < 1e-3 && round < MOST_TANGENTS;
            for (int i = 0; i < elements.size(); i++) {
                change = Math.max(change, relinearise(i, near));
            }
            if (change < SETTLED) {
                settleValves();
                return figures();
            }
        }
        throw new AssertionError("the oracle finds no solution");
    }

    /** Takes the law at the voltage found; returns by how much the current differs, as a share. */
    private double relinearise(int i, boolean near) {
        OracleElement e = elements.get(i);
        double v = x[e.a()] - x[e.b()];
        double siemens;
        double slope;
        if (e.law() instanceof Filament lamp) {
            siemens = lamp.conductanceS(v);
            boolean cold = siemens >= lamp.conductanceS(0);
            slope = cold ? siemens : OracleElement.LAMP_EXPONENT * siemens;
        } else if (e.law() instanceof Power power) {
            siemens = power.conductanceS(v);
            slope = Math.abs(v) < power.leastV() ? siemens : -siemens;
        } else {
            return 0;
        }
        double scaleA = Math.max(Math.abs(siemens * v), LITTLE_A);
        double differs = Math.abs(siemens * v - x[count + i]) / scaleA;
        chordS[i] = siemens;
        tangentS[i] = near ? slope : siemens;
        tangentA[i] = (siemens - tangentS[i]) * v;
        return differs;
    }

    /** Tries states of the valves until none contradicts its own. */
    private void settleValves() {
        for (int round = 0; round < MOST_ROUNDS; round++) {
            x = solveLinear();
            boolean one = round > ALL_AT_ONCE;
            boolean changed = false;
            for (int i = 0; i < modes.length && !(one && changed); i++) {
                Mode next = wanted(i);
                changed |= next != modes[i];
                modes[i] = next;
            }
            if (!changed) {
                return;
            }
        }
        throw new AssertionError("the oracle finds no states of the diodes");
    }

    private Mode wanted(int i) {
        Law law = elements.get(i).law();
        if (law instanceof Store) {
            boolean giving = modes[i] == Mode.ON ? x[count + i] >= -SMALL_A : x[count + i] > SMALL_A;
            return giving ? Mode.ON : Mode.OFF;
        } else if (law instanceof Sensed sensed) {
            return wanted(i, sensed);
        } else if (!(law instanceof Valve valve)) {
            return modes[i];
        } else {
            return wanted(i, valve);
        }
    }

    private Mode wanted(int i, Valve valve) {
        double v = x[elements.get(i).a()] - x[elements.get(i).b()];
        double a = x[count + i];
        double fullV = valve.thresholdV() + valve.slopeOhm() * valve.limitA();
        return switch (modes[i]) {
            case OFF -> v > valve.thresholdV() + SMALL_V ? Mode.ON : Mode.OFF;
            case ON -> a < -SMALL_A ? Mode.OFF : a > valve.limitA() + SMALL_A ? Mode.LIMITED : Mode.ON;
            case LIMITED, HIGHEST -> v < fullV - SMALL_V ? Mode.ON : Mode.LIMITED;
        };
    }

    private Mode wanted(int i, Sensed sensed) {
        Valve own = sensed.own();
        double a = x[count + i];
        double raiseV = x[sensed.above()] - x[sensed.below()];
        boolean highest = raiseV > sensed.highestV() + (modes[i] == Mode.HIGHEST ? -SMALL_V : SMALL_V);
        double ownV = x[elements.get(i).a()]
                - x[elements.get(i).b()]
                - own.thresholdV()
                + Math.min(raiseV, sensed.highestV());
        Mode on = highest ? Mode.HIGHEST : Mode.ON;
        return switch (modes[i]) {
            case OFF -> ownV > SMALL_V ? on : Mode.OFF;
            case ON, HIGHEST -> a < -SMALL_A ? Mode.OFF : a > own.limitA() + SMALL_A ? Mode.LIMITED : on;
            case LIMITED -> ownV < own.slopeOhm() * own.limitA() - SMALL_V ? on : Mode.LIMITED;
        };
    }

    private double[] solveLinear() {
        int[] island = islands(false);
        int size = count + elements.size();
        Array2DRowRealMatrix matrix = new Array2DRowRealMatrix(size, size);
        double[] right = new double[size];
        matrix.setEntry(0, 0, 1);
        for (int n = 1; n < count; n++) {
            if (island[n] == n) {
                matrix.addToEntry(n, n, 1 / ISLAND_OHM);
            }
        }
        for (int i = 0; i < elements.size(); i++) {
            OracleElement e = elements.get(i);
            int row = count + i;
            if (e.a() != 0) {
                matrix.addToEntry(e.a(), row, 1);
            }
            if (e.b() != 0) {
                matrix.addToEntry(e.b(), row, -1);
            }
            double[] pqc = relation(i);
            // Of the size of the others, for the sake of the pivots.
            double scale = 1 / Math.max(Math.abs(pqc[0]), Math.abs(pqc[1]));
            matrix.addToEntry(row, e.a(), scale * pqc[0]);
            matrix.addToEntry(row, e.b(), -scale * pqc[0]);
            matrix.addToEntry(row, row, scale * pqc[1]);
            right[row] = scale * pqc[2];
            if (e.law() instanceof Sensed sensed && modes[i] == Mode.ON) {
                matrix.addToEntry(row, sensed.above(), scale);
                matrix.addToEntry(row, sensed.below(), -scale);
            }
        }
        var solver = new LUDecomposition(matrix, 1e-250).getSolver();
        RealVector b = new ArrayRealVector(right);
        RealVector found = solver.solve(b);
        // Once more for what the factors lost.
        return found.add(solver.solve(b.subtract(matrix.operate(found)))).toArray();
    }

    /** p v + q i = c. */
    private double[] relation(int i) {
        Law law = elements.get(i).law();
        if (law instanceof Ohmic ohmic) {
            return new double[] {1, -ohmic.ohm(), 0};
        } else if (law instanceof Store store) {
            double ohm = modes[i] == Mode.ON ? store.givingOhm() : store.takingOhm();
            return new double[] {1, -ohm, -store.emfV()};
        } else if (law instanceof Valve valve) {
            return relation(i, valve, valve.thresholdV());
        } else if (law instanceof Sensed sensed) {
            return relation(i, sensed.own(), sensed.own().thresholdV() - sensed.highestV());
        }
        return new double[] {tangentS[i], -1, -tangentA[i]};
    }

    private double[] relation(int i, Valve valve, double highestV) {
        return switch (modes[i]) {
            case OFF -> new double[] {0, 1, 0};
            case ON -> new double[] {1, -valve.slopeOhm(), valve.thresholdV()};
            case HIGHEST -> new double[] {1, -valve.slopeOhm(), highestV};
            case LIMITED -> new double[] {0, 1, valve.limitA()};
        };
    }

    /**
     * The first node of the island of each: what hangs together by anything but blocking or limiting valves.
     *
     * @param inEarnest whether a valve counts only if it carries something
     */
    private int[] islands(boolean inEarnest) {
        int[] first = new int[count];
        for (int n = 0; n < count; n++) {
            first[n] = n;
        }
        boolean changed = true;
        while (changed) {
            changed = false;
            for (int i = 0; i < elements.size(); i++) {
                OracleElement e = elements.get(i);
                boolean valve = e.law() instanceof Valve || e.law() instanceof Sensed;
                boolean joins = !valve
                        || ((modes[i] == Mode.ON || modes[i] == Mode.HIGHEST)
                                && (!inEarnest || Math.abs(x[count + i]) > IN_EARNEST_A));
                if (joins && first[e.a()] != first[e.b()]) {
                    int least = Math.min(first[e.a()], first[e.b()]);
                    int most = Math.max(first[e.a()], first[e.b()]);
                    for (int n = 0; n < count; n++) {
                        first[n] = first[n] == most ? least : first[n];
                    }
                    changed = true;
                }
            }
        }
        return first;
    }

    private OracleFigures figures() {
        return new OracleFigures(
                elements,
                Arrays.copyOf(x, count),
                Arrays.copyOfRange(x, count, count + elements.size()),
                islands(true),
                nodes);
    }
}
