package loomwright.network;

import java.util.Arrays;
import java.util.List;

/**
 * The laws of the elements of a {@link NetworkScan}, each as the straight line {@code source + slope·v} that Newton's
 * method has it stand for at present. Where a line touches its law, its drive, is kept from one solution to the next.
 *
 * <p>A resistance below 1e-6 ohm counts as 1e-6 ohm.
 */
final class LinearisedBranches {
    /** The law holds if the line is off by no more than this share of the current. */
    private static final double SETTLED = 1e-10;
    /**
     * A tangent to a filament's law i ~ v^0.55 is off by 0.12 d² as a share, where d is how far the voltage has moved as a share of
     * where the two touch; with the slope of a voltage that is a share s away, by 0.12 d (d + 2 s). Where that product is below the
     * square of this the line holds ten times better than {@link #SETTLED} asks, and the law need not be worked out again.
     */
    private static final double NEAR = 1e-5;
    /**
     * A line keeps its slope while its voltage is so near, as a share, to where the slope was taken: each step then still gains two
     * digits or more, and the network need not be eliminated anew.
     */
    private static final double SLOPE_KEPT = 0.02;

    private final BranchLaw[] branches;
    private final boolean[] linear;
    /** Whether the line of a filament touches its law at the drive, with a slope from nearby. */
    private final boolean[] tangent;
    /** Where that slope was taken. */
    private final double[] slopeAt;

    /** By how much the regulator of a branch raises it. */
    private final double[] raise;

    private final double[] drive;
    private final double[] slope;
    private final double[] source;

    LinearisedBranches(List<Element> elements) {
        int count = elements.size();
        branches = elements.stream().map(LinearisedBranches::law).toArray(BranchLaw[]::new);
        linear = new boolean[count];
        tangent = new boolean[count];
        slopeAt = new double[count];
        Arrays.fill(slopeAt, Double.NaN);
        raise = new double[count];
        drive = new double[count];
        slope = new double[count];
        source = new double[count];
        for (int b = 0; b < count; b++) {
            linear[b] = branches[b] instanceof BranchLaw.Linear;
            if (linear[b]) {
                source[b] = branches[b].currentA(branches[b].biasV);
                slope[b] = branches[b].slopeS(branches[b].biasV, source[b]);
            }
        }
    }

    private static BranchLaw law(Element element) {
        if (element instanceof Resistor r && r.resistanceOhm() < NetworkScan.LEAST_OHM) {
            return BranchLaw.of(new Resistor(r.id(), r.from(), r.to(), NetworkScan.LEAST_OHM));
        } else if (element instanceof VoltageSource s && s.resistanceOhm() < NetworkScan.LEAST_OHM) {
            return BranchLaw.of(new VoltageSource(s.id(), s.from(), s.to(), s.voltageV(), NetworkScan.LEAST_OHM));
        } else if (element instanceof TwoSlopeSource s) {
            return BranchLaw.of(new TwoSlopeSource(
                    s.id(),
                    s.from(),
                    s.to(),
                    s.voltageV(),
                    Math.max(NetworkScan.LEAST_OHM, s.givingOhm()),
                    Math.max(NetworkScan.LEAST_OHM, s.takingOhm())));
        } else if (element instanceof UnidirectionalElement o && o.slopeOhm() < NetworkScan.LEAST_OHM) {
            return BranchLaw.of(new UnidirectionalElement(
                    o.id(), o.from(), o.to(), o.thresholdV(), NetworkScan.LEAST_OHM, o.limitA()));
        }
        return BranchLaw.of(element);
    }

    int count() {
        return branches.length;
    }

    BranchLaw branch(int b) {
        return branches[b];
    }

    private double biasV(int b) {
        return branches[b].biasV + raise[b];
    }

    /** By how much a branch is raised, V. */
    double raiseV(int b) {
        return raise[b];
    }

    /** Raises a branch by the voltage that its regulator wants. */
    void raise(int b, double raiseV) {
        raise[b] = raiseV;
    }

    boolean isLinear(int b) {
        return linear[b];
    }

    double slopeS(int b) {
        return slope[b];
    }

    double sourceA(int b) {
        return source[b];
    }

    /** Current by the line, A. */
    double currentA(int b, double acrossV) {
        return source[b] + slope[b] * acrossV;
    }

    /** Forgets where the lines touched their laws, and what regulators raised: the next solution begins as the first. */
    void forget() {
        Arrays.fill(tangent, false);
        Arrays.fill(slopeAt, Double.NaN);
        Arrays.fill(raise, 0);
        Arrays.fill(drive, 0);
    }

    /** Of two solutions of a constant-power load the one of higher voltage is meant: begin with next to no load. */
    void begin(int b) {
        if (branches[b] instanceof BranchLaw.ConstantPower) {
            drive[b] = Double.NaN;
        }
    }

    /**
     * Puts the line against the law at the drive; as a chord through 0 where a tangent might not converge.
     *
     * @param keepSlope whether a slope from nearby will do
     */
    void linearise(int b, boolean chord, boolean keepSlope) {
        BranchLaw branch = branches[b];
        double at = drive[b];
        if (tangent[b] && !chord && (keepSlope || slopeAt[b] == at)) {
            return;
        }
        if (Double.isNaN(at) && branch instanceof BranchLaw.ConstantPower load) {
            slope[b] = load.idle().conductanceS;
            source[b] = 0;
            return;
        }
        boolean nonlinear = branch instanceof BranchLaw.Filament || branch instanceof BranchLaw.ConstantPower;
        double currentA = branch.currentA(at);
        if (branch instanceof BranchLaw.Filament lamp && !chord) {
            if (!keepSlope || !isSlopeNear(lamp, b, at)) {
                slope[b] = branch.slopeS(at, currentA);
                slopeAt[b] = at;
            }
            tangent[b] = true;
        } else {
            slope[b] = chord && nonlinear && at != 0 ? currentA / at : branch.slopeS(at, currentA);
            slopeAt[b] = Double.NaN;
            tangent[b] = false;
        }
        source[b] = currentA - slope[b] * (at - biasV(b));
    }

    private boolean isSlopeNear(BranchLaw.Filament lamp, int b, double at) {
        return Math.abs(at - slopeAt[b]) <= SLOPE_KEPT * Math.abs(slopeAt[b])
                && lamp.isCold(at) == lamp.isCold(slopeAt[b]);
    }

    /** Whether a voltage is so near to where a filament's line touches its law that the line is as good as the law. */
    private boolean isNear(int b, double at) {
        if (!tangent[b] || !(branches[b] instanceof BranchLaw.Filament lamp)) {
            return false;
        }
        boolean cold = lamp.isCold(drive[b]);
        if (cold || lamp.isCold(at)) {
            // A cold one is a resistance: then the line is the law.
            return cold && lamp.isCold(at);
        }
        double movedV = Math.abs(at - drive[b]);
        return movedV * (movedV + 2 * Math.abs(slopeAt[b] - drive[b])) <= NEAR * NEAR * drive[b] * drive[b];
    }

    /** Whether the line says at a voltage what the law says. */
    boolean isSettled(int b, double acrossV) {
        double at = acrossV + biasV(b);
        if (isNear(b, at)) {
            return true;
        }
        double wantedA = branches[b].currentA(at);
        // The rounding of the two large terms of a steep branch is no error of its own.
        double scale = Math.abs(wantedA) + 1e-5 * Math.abs(source[b]) + 1e-3;
        return Math.abs(wantedA - currentA(b, acrossV)) <= SETTLED * scale && !Double.isNaN(drive[b]);
    }

    /**
     * Moves the drive to a voltage.
     *
     * @param hold whether a one-way element is to stay as it is
     * @return whether a one-way element has changed its state
     */
    boolean move(int b, double acrossV, boolean hold) {
        double before = drive[b];
        double at = acrossV + biasV(b);
        if (branches[b] instanceof BranchLaw.OneWayBranch oneWay) {
            drive[b] = hold ? before : neighbouring(oneWay, before, at);
            return oneWay.conducts(before) != oneWay.conducts(drive[b]);
        }
        if (isNear(b, at)) {
            return false;
        }
        tangent[b] = false;
        // The steep foot of a lamp's law throws Newton's method to and fro about 0.
        drive[b] = branches[b] instanceof BranchLaw.Filament && before * at < 0 ? 0 : at;
        return false;
    }

    /** A one-way element goes from blocking to its limit, and back, by way of conducting only. */
    private static double neighbouring(BranchLaw.OneWayBranch oneWay, double before, double at) {
        double limitV = oneWay.slopeOhm * oneWay.limitA;
        boolean leap = (before <= 0 && at >= limitV) || (before >= limitV && at <= 0);
        return leap ? 0.5 * limitV : at;
    }
}
