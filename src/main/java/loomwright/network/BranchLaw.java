package loomwright.network;

/**
 * The law of one element as the solver sees it. All but the constant-power load are monotone, so that the network's
 * co-content, the sum of the integrals of their currents over voltage, is convex and least at the solution.
 */
abstract sealed class BranchLaw {
    final int from;
    final int to;
    /** Voltage within the branch, added to that over it before the law is applied: kept apart for its digits' sake. */
    final double biasV;

    private BranchLaw(int from, int to, double biasV) {
        this.from = from;
        this.to = to;
        this.biasV = biasV;
    }

    /** The current at a drive, which is the voltage over the branch plus its {@link #biasV}. */
    abstract double currentA(double driveV);

    /**
     * Derivative of the current; 0 where the branch does not tie its ends together.
     *
     * @param currentA the current at this drive
     */
    abstract double slopeS(double driveV, double currentA);

    /** Where the slope is 0: by how much the voltage must rise for the current to rise. */
    double riseToKinkV(double driveV) {
        return Double.POSITIVE_INFINITY;
    }

    /** Where the slope is 0: by how much the voltage must fall for the current to fall. */
    double fallToKinkV(double driveV) {
        return Double.POSITIVE_INFINITY;
    }

    static BranchLaw of(Element element) {
        int from = element.from();
        int to = element.to();
        if (element instanceof Resistor r) {
            return r.resistanceOhm() == 0 ? new Ideal(from, to, 0) : new Linear(from, to, 0, 1 / r.resistanceOhm(), 0);
        }
        if (element instanceof VoltageSource s) {
            return s.resistanceOhm() == 0
                    ? new Ideal(from, to, -s.voltageV())
                    : new Linear(from, to, s.voltageV(), 1 / s.resistanceOhm(), 0);
        }
        if (element instanceof TwoSlopeSource s) {
            return s.givingOhm() == s.takingOhm()
                    ? new Linear(from, to, s.voltageV(), 1 / s.givingOhm(), 0)
                    : new TwoSlopes(s);
        }
        if (element instanceof CurrentSource s) {
            return new Linear(from, to, 0, 0, s.currentA());
        }
        if (element instanceof PowerLoad load) {
            return load.powerW() == 0 ? new Linear(from, to, 0, 0, 0) : new ConstantPower(load);
        }
        if (element instanceof UnidirectionalElement oneWay) {
            return new OneWayBranch(oneWay, oneWay.slopeOhm());
        }
        if (element instanceof SensedSource source) {
            return of(source.raised(0));
        }
        if (element instanceof Lamp lamp) {
            return new Filament(lamp);
        }
        throw new IllegalArgumentException("no law for " + element.getClass());
    }

    /** v = E whatever the current. */
    static final class Ideal extends BranchLaw {
        final double voltageV;

        Ideal(int from, int to, double voltageV) {
            super(from, to, 0);
            this.voltageV = voltageV;
        }

        @Override
        double currentA(double driveV) {
            throw new IllegalStateException("the current of an ideal branch is not a function of its voltage");
        }

        @Override
        double slopeS(double driveV, double currentA) {
            throw new IllegalStateException("the current of an ideal branch is not a function of its voltage");
        }
    }

    /** i = G·(v + E) + J. */
    static final class Linear extends BranchLaw {
        final double conductanceS;
        final double sourceA;

        Linear(int from, int to, double biasV, double conductanceS, double sourceA) {
            super(from, to, biasV);
            this.conductanceS = conductanceS;
            this.sourceA = sourceA;
        }

        @Override
        double currentA(double driveV) {
            return conductanceS * driveV + sourceA;
        }

        @Override
        double slopeS(double driveV, double currentA) {
            return conductanceS;
        }
    }

    /** See {@link TwoSlopeSource}. */
    static final class TwoSlopes extends BranchLaw {
        private final double givingS;
        private final double takingS;

        TwoSlopes(TwoSlopeSource source) {
            super(source.from(), source.to(), source.voltageV());
            givingS = 1 / source.givingOhm();
            takingS = 1 / source.takingOhm();
        }

        @Override
        double currentA(double driveV) {
            return driveV * slopeS(driveV, 0);
        }

        @Override
        double slopeS(double driveV, double currentA) {
            return driveV >= 0 ? givingS : takingS;
        }
    }

    /** See {@link PowerLoad}. */
    static final class ConstantPower extends BranchLaw {
        private final double powerW;
        final double minimumV;

        ConstantPower(PowerLoad load) {
            super(load.from(), load.to(), 0);
            this.powerW = load.powerW();
            this.minimumV = load.minimumV();
        }

        /** A resistor that takes next to nothing: the load before it is switched on. */
        Linear idle() {
            return new Linear(from, to, 0, 1e-6 * powerW / (minimumV * minimumV), 0);
        }

        /** The resistor that it is below its minimum. */
        Linear belowMinimum() {
            return new Linear(from, to, 0, powerW / (minimumV * minimumV), 0);
        }

        @Override
        double currentA(double driveV) {
            return Math.abs(driveV) < minimumV ? driveV * powerW / (minimumV * minimumV) : powerW / driveV;
        }

        @Override
        double slopeS(double driveV, double currentA) {
            return Math.abs(driveV) < minimumV ? powerW / (minimumV * minimumV) : -currentA / driveV;
        }
    }

    /** See {@link UnidirectionalElement}; its slope may be taken larger than it is while the states are looked for. */
    static final class OneWayBranch extends BranchLaw {
        private static final double BORDER_OHM = 1e-11;

        final double slopeOhm;
        final double limitA;

        OneWayBranch(UnidirectionalElement oneWay, double slopeOhm) {
            super(oneWay.from(), oneWay.to(), -oneWay.thresholdV());
            this.slopeOhm = slopeOhm;
            this.limitA = oneWay.limitA();
        }

        /** The border of an island, see {@link FloatingNodePlacement}: nearly ideal against its leaks. */
        OneWayBranch(int from, int to, double biasV) {
            super(from, to, biasV);
            this.slopeOhm = BORDER_OHM;
            this.limitA = Double.POSITIVE_INFINITY;
        }

        private double limitV() {
            return slopeOhm * limitA;
        }

        @Override
        double currentA(double driveV) {
            return driveV <= 0 ? 0 : Math.min(limitA, driveV / slopeOhm);
        }

        @Override
        double slopeS(double driveV, double currentA) {
            return conducts(driveV) ? 1 / slopeOhm : 0;
        }

        /** Whether it neither blocks nor is at its limit. */
        boolean conducts(double driveV) {
            return driveV > 0 && !(driveV >= limitV());
        }

        @Override
        double riseToKinkV(double driveV) {
            return driveV <= 0 ? -driveV : Double.POSITIVE_INFINITY;
        }

        @Override
        double fallToKinkV(double driveV) {
            return driveV >= limitV() ? driveV - limitV() : Double.POSITIVE_INFINITY;
        }
    }

    /** See {@link Lamp}. */
    static final class Filament extends BranchLaw {
        private final double ratedV;
        private final double ratedA;
        private final double coldS;
        private final double kneeV;

        Filament(Lamp lamp) {
            super(lamp.from(), lamp.to(), 0);
            ratedV = lamp.ratedV();
            ratedA = lamp.ratedW() / lamp.ratedV();
            coldS = ratedA / (ratedV * lamp.coldFraction());
            kneeV = ratedV * Math.pow(lamp.coldFraction(), 1 / (1 - Lamp.EXPONENT));
        }

        /** Whether it is so cold that it is a plain resistance. */
        boolean isCold(double driveV) {
            return Math.abs(driveV) <= kneeV;
        }

        @Override
        double currentA(double driveV) {
            double v = Math.abs(driveV);
            return isCold(driveV)
                    ? coldS * driveV
                    : Math.copySign(ratedA * Math.pow(v / ratedV, Lamp.EXPONENT), driveV);
        }

        @Override
        double slopeS(double driveV, double currentA) {
            return isCold(driveV) ? coldS : Lamp.EXPONENT * currentA / driveV;
        }
    }
}
