package loomwright.judgement;

import loomwright.answer.Basis;

/**
 * The volts a circuit may lose, by what it feeds. All figures are for 12 V and are scaled with the nominal voltage; all
 * are from source to load and back unless the name says one side.
 *
 * <p>A drop up to the finding figure fits; between the good and the finding figure it fits but can be better. A new wire
 * is sized by {@link #newWireV}, which never exceeds the finding figure, so that no size chosen by one can fail by the
 * other. Percentages are of the nominal voltage.
 *
 * <p>"Any circuit: 1.0 V" (workshop manual quoting SAE advice: connection 0 to 0.1 V, wire 0.2 V, switch 0.3 V) stands in
 * {@link #HEADLAMP} alone. Held to every circuit it would contradict the 10 % of {@link #GENERAL}, which is 1.2 V.
 */
public enum DropRule {
    /** Headlamps, driving lamps and stop lamps: lamps of more than 15 W. */
    HEADLAMP(
            0.5,
            1.0,
            0.5,
            new Basis(
                    "drop to headlamps, driving and stop lamps: 0.5 V good, above 1.0 V a finding, above 6 V a danger, at"
                            + " 12 V",
                    "common practice (0.5 V: handbook of vehicle electrics, and a lighting workshop page; 1.0 V for any"
                            + " circuit: workshop manual quoting SAE advice)",
                    Basis.Status.COMMON_PRACTICE)),
    /** Side, tail, panel and cabin lamps: lamps up to 15 W. */
    SMALL_LAMP(
            0.6,
            1.2,
            0.6,
            Basis.verified(
                    "drop to small lamps: above 10 % a finding",
                    "ABYC E-11, 11.14.2.6: lighting other than navigation lights (0.6 V good is from memory)")),
    /** Main feeders, panel feeds, electronics, bilge blowers, navigation lights. */
    ELECTRONICS(
            0.36,
            0.6,
            0.36,
            Basis.verified(
                    "drop to feeders and electronics: 3 % good, above 5 % a finding",
                    "ABYC E-11, 11.14.2.6: 3 % for feeders, electronics, bilge blowers, navigation lights (5 % is common"
                            + " practice)")),
    /** Everything else: motors, horns, heaters. */
    GENERAL(
            0.6,
            1.2,
            1.2,
            Basis.verified(
                    "drop in other circuits: 5 % good, above 10 % a finding",
                    "ABYC E-11, 11.14.2.6: other circuits 10 % (5 % is common practice)")),
    /** Battery to coil or ballast. */
    IGNITION_FEED(
            0.3,
            0.5,
            0.5,
            Basis.commonPractice("drop from battery to coil or ballast: 0.3 V good, above 0.5 V a finding, above 6 V a"
                    + " danger, at 12 V")),
    /** Battery to coil through the bypass while cranking. */
    START_BYPASS(
            0.1,
            0.1,
            0.1,
            Basis.verified("drop of the start bypass while cranking: 0.1 V", "NAVEDTRA 14329, ignition circuit tests")),
    /** Closed contact points with their earth. */
    CLOSED_CONTACTS(
            0.1,
            0.1,
            0.1,
            Basis.verified("drop of closed contacts with earth: 0.1 V", "NAVEDTRA 14329, coil-to-ground test")),
    /** The control circuit of the starter solenoid, both windings drawing. */
    STARTER_CONTROL(
            1.0,
            1.0,
            1.0,
            Basis.verified(
                    "drop of the starter solenoid's control circuit: 1.0 V at 12 V, 2.0 V at 24 V",
                    "US Army TM 5-2420-230-24-2")),
    /** Starter and battery cables, both together, while cranking. */
    STARTER(
            0.8,
            0.8,
            0.8,
            Basis.verified(
                    "drop of both starter cables while cranking: 0.8 V at 12 V, of it 0.5 V in the feed and 0.3 V in the"
                            + " earth",
                    "starter tester's handbook; feed 0.5 V and earth 0.2 V: US Army TM 5-3820-256-24-4")),
    /** Generator to battery on the live side, at rated output. */
    CHARGING(
            0.2,
            0.3,
            0.3,
            Basis.verified(
                    "drop from generator to battery, live side: 0.2 V good, above 0.3 V a note, above 0.5 V a warning",
                    "two service manuals (0.2 V); service specification (0.3 V at 30 A); article on the drop test"
                            + " (0.5 V)")),
    /** Generator to battery on the earthed side. */
    CHARGING_EARTH(
            0.2,
            0.2,
            0.2,
            Basis.verified(
                    "drop of the charging circuit's earth side: 0.2 V", "training page and article on the drop test")),
    /** One heavy earth joint. */
    EARTH_JOINT(0.0, 0.1, 0.1, Basis.verified("drop of one heavy earth joint: 0.1 V", "US Army TM 9-2320-211-20"));

    /** Lamps above this are judged as headlamps and stop lamps. */
    public static final double SMALL_LAMP_MOST_W = 15;

    private static final double CHARGING_WARNING_V = 0.5;
    /** Of 12.6 V it leaves 6.6 V, half of the test volts of a headlamp. */
    private static final double DANGER_V = 6;

    private static final double TABLE_NOMINAL_V = 12;

    private final double good12V;
    private final double finding12V;
    private final double newWire12V;
    // A record of texts and a word.
    @SuppressWarnings("ImmutableEnumChecker")
    private final Basis basis;

    DropRule(double good12V, double finding12V, double newWire12V, Basis basis) {
        this.good12V = good12V;
        this.finding12V = finding12V;
        this.newWire12V = newWire12V;
        this.basis = basis;
    }

    /** The rule for a lamp of given rated watts. */
    public static DropRule ofLamp(double ratedW) {
        return ratedW > SMALL_LAMP_MOST_W ? HEADLAMP : SMALL_LAMP;
    }

    /**
     * Up to this nobody need do anything.
     *
     * @param nominalVoltageV 6, 12 or 24
     */
    public double goodV(double nominalVoltageV) {
        return good12V * nominalVoltageV / TABLE_NOMINAL_V;
    }

    /** Above this it is a finding in a vehicle that exists. */
    public double findingV(double nominalVoltageV) {
        return finding12V * nominalVoltageV / TABLE_NOMINAL_V;
    }

    /** What a new wire is sized for. */
    public double newWireV(double nominalVoltageV) {
        return newWire12V * nominalVoltageV / TABLE_NOMINAL_V;
    }

    public Basis basis() {
        return basis;
    }

    /** Whether its figures are for the live side alone, so that the return does not count. */
    public boolean ofLiveSide() {
        return this == IGNITION_FEED || this == START_BYPASS || this == CHARGING;
    }

    /**
     * Judges the drop of an existing circuit. A danger only where it takes head or stop light or the spark: a lamp with less than
     * half of its 13.2 V only glows, and a coil with half of its volts stores a quarter of its energy, which gives half of its
     * kilovolts.
     *
     * @param dropV volts lost, 0 or more
     * @param nominalVoltageV 6, 12 or 24
     */
    public Verdict judge(double dropV, double nominalVoltageV) {
        double limitV = findingV(nominalVoltageV);
        Ratio ratio = Ratio.of(dropV, limitV);
        Level level = ratio.level();
        if (this == CHARGING && level == Level.WARNING) {
            level = dropV > CHARGING_WARNING_V * nominalVoltageV / TABLE_NOMINAL_V ? Level.WARNING : Level.NOTE;
        }
        boolean keepsSafe = this == HEADLAMP || this == IGNITION_FEED;
        if (keepsSafe && dropV > DANGER_V * nominalVoltageV / TABLE_NOMINAL_V) {
            level = Level.DANGER;
        }
        return new Verdict("voltage-drop", level, ratio.borderline(), dropV, limitV, basis);
    }
}
