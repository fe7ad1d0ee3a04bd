package loomwright.circuit;

import com.fasterxml.jackson.annotation.JsonProperty;
import com.fasterxml.jackson.annotation.JsonTypeName;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A direct-current motor: 33 (main connection) to 32 (return).
 *
 * @param resistanceOhm what it looks like to the supply while it works: volts over amps, not the winding's ohms. Of a series-wound one
 *     at ten twelfths of the nominal volts, which is what a battery has left while it cranks
 * @param excitation what makes its field; shunt unless said
 * @param windingOhm what it is with its armature held fast: the ohms of its windings and brushes; absent: a quarter of
 *     {@code resistanceOhm} (common practice, no source)
 * @param stalled whether it is held fast, as a seized wiper or a starter that is jammed; false unless said
 * @param operateV volts from which it turns; absent: the usual figure
 * @param releaseV volts below which it stops; absent: the usual figure
 * @param meantLive conditions in which it is meant to turn; absent where it is left unsaid
 * @param meantLiveWhen see {@link Consumer#meantLiveWhen()}
 */
@JsonTypeName("motor")
public record Motor(
        String id,
        @Nullable String label,
        Double resistanceOhm,
        Excitation excitation,
        @Nullable Double windingOhm,
        Boolean stalled,
        @Nullable Double operateV,
        @Nullable Double releaseV,
        @Nullable List<Condition> meantLive,
        List<LiveAlternative> meantLiveWhen)
        implements Consumer {
    public static final String FEED = "33";
    public static final String RETURN = "32";
    private static final List<String> TERMINALS = List.of(FEED, RETURN);

    private static final double STANDING_SHARE = 0.25;
    /** Share of the nominal volts that a starter works at: 10 of 12 V (common practice, no source). */
    private static final double CRANKING_SHARE = 10.0 / 12;

    /** What makes the field of a motor. */
    public enum Excitation {
        /** A winding across the supply. */
        @JsonProperty("shunt")
        SHUNT,
        /**
         * A winding in series with the armature, as in a starter: its torque follows its current alone, so that a given load takes the
         * same current at any volts, and the speed follows the volts.
         */
        @JsonProperty("series")
        SERIES,
        /** Magnets: it generates while it runs down. */
        @JsonProperty("permanent-magnet")
        PERMANENT_MAGNET
    }

    public Motor {
        var faults = Bounds.part(id, label).required("/resistanceOhm", resistanceOhm);
        Bounds.resistance(faults, "/resistanceOhm", resistanceOhm);
        Bounds.resistance(faults, "/windingOhm", windingOhm);
        Consumer.check(faults, meantLive, meantLiveWhen, operateV, releaseV, "operateV", "releaseV")
                .reject();
        excitation = orShunt(excitation);
        stalled = Bounds.orFalse(stalled);
        meantLive = Consumer.conditions(meantLive);
        meantLiveWhen = Consumer.alternatives(meantLiveWhen);
    }

    @Override
    public Motor withMeantLive(List<Condition> conditions, List<LiveAlternative> when) {
        return new Motor(
                id, label, resistanceOhm, excitation, windingOhm, stalled, operateV, releaseV, conditions, when);
    }

    /** The same with its figure while it works multiplied, and its winding with it if that is not stated. */
    public Motor withResistanceOhm(double ohm) {
        return new Motor(id, label, ohm, excitation, windingOhm, stalled, operateV, releaseV, meantLive, meantLiveWhen);
    }

    /** The same held fast, which is what it is in the instant in which it is switched on. */
    public Motor standing() {
        return new Motor(
                id, label, resistanceOhm, excitation, windingOhm, true, operateV, releaseV, meantLive, meantLiveWhen);
    }

    private static Excitation orShunt(@Nullable Excitation stated) {
        return stated == null ? Excitation.SHUNT : stated;
    }

    /** What the supply sees: its windings alone while it is held fast. */
    public double loadOhm() {
        return stalled ? standingOhm() : resistanceOhm;
    }

    /** The ohms of its windings and brushes. */
    public double standingOhm() {
        return Bounds.orElse(windingOhm, STANDING_SHARE * resistanceOhm);
    }

    /** Whether it is a series-wound motor that turns. */
    public boolean seriesWound() {
        return excitation == Excitation.SERIES && !stalled;
    }

    /** What its load makes a series-wound motor take, as long as it has the volts to turn at all, A. */
    public double seriesA(VehicleSystem system) {
        return CRANKING_SHARE * system.nominalVoltageV() / resistanceOhm;
    }

    /** Whether it generates while it runs down. */
    public boolean generatesRunningDown() {
        return excitation == Excitation.PERMANENT_MAGNET && !stalled && standingOhm() < resistanceOhm;
    }

    /** What it generates as it begins to run down from its speed at the nominal volts, V: what its winding did not take of these. */
    public double generatedV(VehicleSystem system) {
        return system.nominalVoltageV() * (1 - standingOhm() / resistanceOhm);
    }

    /**
     * How fast it turns, as a share of its speed at the nominal volts; of a series-wound one, at ten twelfths of them. Speed follows
     * the volts less the drop in the winding.
     */
    public double speedShare(double acrossV, VehicleSystem system) {
        if (stalled) {
            return 0;
        }
        if (!seriesWound()) {
            return acrossV / system.nominalVoltageV();
        }
        double dropV = seriesA(system) * standingOhm();
        double ratedV = CRANKING_SHARE * system.nominalVoltageV();
        return dropV < ratedV ? Math.max(0, (acrossV - dropV) / (ratedV - dropV)) : 0;
    }

    @Override
    public List<String> terminals() {
        return TERMINALS;
    }

    @Override
    public String feedTerminal() {
        return FEED;
    }

    @Override
    public String returnTerminal() {
        return RETURN;
    }
}
