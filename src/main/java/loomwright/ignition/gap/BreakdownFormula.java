package loomwright.ignition.gap;

import static loomwright.message.Arg.arg;

import loomwright.answer.Basis;
import loomwright.message.Arg;
import loomwright.message.Argument.Quantity;
import loomwright.message.Message;

/** The published formulas for the voltage at which a spark crosses a gap. */
public enum BreakdownFormula {
    /** V = B p d / (C + ln(p d)), C = ln(A / ln(1 + 1/gamma)), p in Torr and d in cm, p reduced to 293 K. */
    PASCHEN(
            "V = 365 pd / (1.18 + ln pd), p in Torr at 293 K density, d in cm",
            "field over density 100 to 800 V per cm Torr, for which its constants were fitted (range from memory)",
            "breakdown voltage by Paschen's law, air A 15, B 365, gamma 0.01",
            "Paschen's law with constants for air; read on a reference page",
            Basis.Status.VERIFIED) {
        @Override
        public double voltageV(GapConditions gap) {
            double torrCm = gap.densityTorr() * gap.gapCm();
            return PASCHEN_B * torrCm / (PASCHEN_C + Math.log(torrCm));
        }

        @Override
        public Message working(GapConditions gap) {
            return GapText.PASCHEN_NUMBERS.with(
                    arg("bFactor", PASCHEN_B),
                    arg("cFactor", PASCHEN_C),
                    arg("density", new Quantity(gap.densityTorr(), "Torr")),
                    arg("gap", new Quantity(gap.gapCm(), "cm")));
        }

        @Override
        public boolean covers(GapConditions gap) {
            double fieldVPerCmTorr = voltageV(gap) / (gap.densityTorr() * gap.gapCm());
            return fieldVPerCmTorr >= 100 && fieldVPerCmTorr <= 800;
        }
    },

    /** V in kV = 30 p d + 1.35, p in atm reduced to 293 K, d in cm. */
    LINEAR(
            "V = 30 pd + 1.35 kV, p in atm at 293 K density, d in cm",
            "gaps of about a millimetre (taken here as 0.3 to 3 mm), density up to 3 times that of free air",
            "breakdown voltage by the linear formula for gaps of about a millimetre",
            "published formula for the breakdown of air in gaps of about a millimetre; read on a reference page",
            Basis.Status.VERIFIED) {
        @Override
        public double voltageV(GapConditions gap) {
            return 1000 * (30 * gap.densityAtm() * gap.gapCm() + 1.35);
        }

        @Override
        public Message working(GapConditions gap) {
            return GapText.LINEAR_NUMBERS.with(density(gap), gap(gap));
        }

        @Override
        public boolean covers(GapConditions gap) {
            return gap.gapMm() >= 0.3 && gap.gapMm() <= 3 && gap.densityAtm() <= 3;
        }
    },

    /** V in kV = 24.22 x + 6.08 sqrt(x), x = relative air density times gap in cm. */
    UNIFORM_FIELD(
            "V = 24.22 x + 6.08 sqrt(x) kV, x = relative air density times gap in cm",
            "x from 0.02 to 10 cm and up to 10 times the density of free air (range from memory)",
            "breakdown voltage in a uniform field",
            "high-voltage textbooks",
            Basis.Status.FROM_MEMORY) {
        @Override
        public double voltageV(GapConditions gap) {
            double x = gap.densityAtm() * gap.gapCm();
            return 1000 * (24.22 * x + 6.08 * Math.sqrt(x));
        }

        @Override
        public Message working(GapConditions gap) {
            return GapText.UNIFORM_FIELD_NUMBERS.with(density(gap), gap(gap));
        }

        @Override
        public boolean covers(GapConditions gap) {
            double x = gap.densityAtm() * gap.gapCm();
            return x >= 0.02 && x <= 10 && gap.densityAtm() <= 10;
        }
    },

    /** V in kV = 4.3 + 136 p/T + 324 p d/T, p in bar, T in K, d in mm. */
    ENGINE_CORRELATION(
            "V = 4.3 + 136 p/T + 324 pd/T kV, p in bar, T in K, d in mm",
            "compression pressures only (taken here as 4 to 40 bar, 350 to 1000 K, 0.3 to 1.6 mm)",
            "breakdown voltage at the plug of an engine",
            "SAE 2000-01-0245",
            Basis.Status.FROM_MEMORY) {
        @Override
        public double voltageV(GapConditions gap) {
            double barPerK = gap.pressureBar() / gap.temperatureK();
            return 1000 * (4.3 + 136 * barPerK + 324 * barPerK * gap.gapMm());
        }

        @Override
        public Message working(GapConditions gap) {
            return GapText.ENGINE_CORRELATION_NUMBERS.with(
                    arg("pressureRatio", gap.pressureBar()),
                    arg("temperatureRatio", gap.temperatureK()),
                    arg("gapRatio", gap.gapMm()));
        }

        @Override
        public boolean covers(GapConditions gap) {
            return gap.pressureBar() >= 4
                    && gap.pressureBar() <= 40
                    && gap.temperatureK() >= 350
                    && gap.temperatureK() <= 1000
                    && gap.gapMm() >= 0.3
                    && gap.gapMm() <= 1.6;
        }
    };

    /** V per cm Torr, air. */
    private static final double PASCHEN_B = 365;

    /** ln(A / ln(1 + 1/gamma)) for air: A = 15 per cm Torr, gamma = 0.01. */
    private static final double PASCHEN_C = Math.log(15 / Math.log(1 + 1 / 0.01));

    private final String formula;
    private final String range;
    private final String rule;
    private final String source;
    private final Basis.Status status;

    BreakdownFormula(String formula, String range, String rule, String source, Basis.Status status) {
        this.formula = formula;
        this.range = range;
        this.rule = rule;
        this.source = source;
        this.status = status;
    }

    /**
     * Breakdown voltage of a gap in air, or in a mixture that is mostly air.
     *
     * @param gap any; outside {@link #covers} the figure is an extrapolation
     * @return volts, above 0
     */
    public abstract double voltageV(GapConditions gap);

    /** The formula with the numbers of a gap in it, without its result. */
    public abstract Message working(GapConditions gap);

    private static Arg density(GapConditions gap) {
        return arg("densityRatio", gap.densityAtm());
    }

    private static Arg gap(GapConditions gap) {
        return arg("gap", new Quantity(gap.gapCm(), "cm"));
    }

    /** Whether the formula is meant for these conditions. */
    public abstract boolean covers(GapConditions gap);

    /** The formula as a person writes it. */
    public String formula() {
        return formula;
    }

    /** What it is meant for, in words. */
    public String range() {
        return range;
    }

    /** Where it comes from, and how far it was compared. */
    public Basis basis() {
        return new Basis(rule, source, status);
    }
}
