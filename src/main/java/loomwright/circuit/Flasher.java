package loomwright.circuit;

import com.fasterxml.jackson.annotation.JsonProperty;
import com.fasterxml.jackson.annotation.JsonTypeName;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A flasher unit: {@code 49} (feed), {@code 49a} (to the indicator switch), {@code C} (tell-tale), {@code 31} (earth of an electronic
 * one). A plan is solved with its contact closed; the instant in which it is open is solved beside that, see {@link #dark()}.
 *
 * @param construction thermal unless said
 * @param ratedW what its lamps take together, as they are marked; absent: 47 W of a thermal one, two lamps of 21 W and one of 5 W
 *     (supplier's list), and no matter for an electronic one
 * @param minimumW below this it does not flash; absent: 0.7 of {@code ratedW} for a thermal one (common practice: 30 to 36 W of 42 to
 *     47 W), 1 W for an electronic one (common practice)
 * @param ratePerMinute how often it flashes; 90 unless said (Swiss ordinance on vehicle construction, article 79: 60 to 120)
 * @param onShare share of the time for which its contact is closed; 0.5 unless said (SAE J590, from memory: 0.30 to 0.75)
 * @param contactResistanceOhm from 49 to 49a; absent: 0.1 ohm of a thermal one at 12 V, in proportion otherwise (common practice: it
 *     loses 0.2 to 0.5 V), 0.01 ohm of an electronic one
 * @param stuck how its contact stands if it is faulty; absent for a sound one
 */
@JsonTypeName("flasher")
public record Flasher(
        String id,
        @Nullable String label,
        Construction construction,
        @Nullable Double ratedW,
        @Nullable Double minimumW,
        Double ratePerMinute,
        Double onShare,
        @Nullable Double contactResistanceOhm,
        @Nullable Stuck stuck)
        implements Part {
    public static final String FEED = "49";
    public static final String OUTPUT = "49a";
    public static final String TELL_TALE = "C";
    public static final String EARTH = "31";
    private static final List<String> TERMINALS = List.of(FEED, OUTPUT, TELL_TALE, EARTH);
    private static final double THERMAL_W = 47;
    private static final double MINIMUM_SHARE = 0.7;
    private static final double ELECTRONIC_MINIMUM_W = 1;
    private static final double THERMAL_12V_OHM = 0.1;
    private static final double ELECTRONIC_OHM = 0.01;
    /** What an electronic one takes for itself (common practice, no source). */
    private static final double SUPPLY_A = 0.01;
    /** Between 49 and 49a of an electronic one that waits: by it, it senses that lamps are connected (common practice, no source). */
    private static final double SENSING_12V_OHM = 1000;
    /** It begins when they leave this share of the nominal voltage across that. */
    private static final double SENSED_SHARE = 0.1;
    /** Below this current it waits again. */
    private static final double LEAST_LOAD_A = 1e-3;
    /** Share of the nominal voltage from which an electronic one works (common practice, no source). */
    private static final double LEAST_SUPPLY_SHARE = 0.5;

    /** How it works. */
    public enum Construction {
        /** A strip or wire heated by the current of the lamps; the contact for the tell-tale closes only with enough of it. */
        @JsonProperty("thermal")
        THERMAL,
        /** It needs its earth; the tell-tale follows the lamps, and with none it waits. */
        @JsonProperty("electronic")
        ELECTRONIC
    }

    /** A contact that no longer moves. */
    public enum Stuck {
        @JsonProperty("open")
        OPEN,
        @JsonProperty("closed")
        CLOSED
    }

    public Flasher {
        var faults = Bounds.part(id, label);
        Bounds.power(faults, "/ratedW", ratedW);
        Bounds.power(faults, "/minimumW", minimumW);
        faults.range("/ratePerMinute", ratePerMinute, 10, 300).range("/onShare", onShare, 0.05, 0.95);
        Bounds.resistance(faults, "/contactResistanceOhm", contactResistanceOhm).reject();
        construction = orThermal(construction);
        ratePerMinute = Bounds.orElse(ratePerMinute, 90);
        onShare = Bounds.orElse(onShare, 0.5);
    }

    private static Construction orThermal(@Nullable Construction stated) {
        return stated == null ? Construction.THERMAL : stated;
    }

    @Override
    public List<String> terminals() {
        return TERMINALS;
    }

    public boolean electronic() {
        return construction == Construction.ELECTRONIC;
    }

    /** The watts of lamps it is made for; absent if it flashes alike with any. */
    public @Nullable Double madeForW() {
        return ratedW == null && !electronic() ? (Double) THERMAL_W : ratedW;
    }

    /** Below this current it does not flash, A. */
    public double minimumA(VehicleSystem system) {
        Double made = madeForW();
        double usualW = electronic() || made == null ? ELECTRONIC_MINIMUM_W : MINIMUM_SHARE * made;
        return Bounds.orElse(minimumW, usualW) / system.nominalVoltageV();
    }

    public double contactOhm(VehicleSystem system) {
        return Bounds.orElse(
                contactResistanceOhm, electronic() ? ELECTRONIC_OHM : system.scaledFrom12V(THERMAL_12V_OHM));
    }

    /** From 49 to 31 of an electronic one. */
    public double supplyOhm(VehicleSystem system) {
        return system.nominalVoltageV() / SUPPLY_A;
    }

    /** From these volts between 49 and 31 an electronic one works. */
    public double leastSupplyV(VehicleSystem system) {
        return LEAST_SUPPLY_SHARE * system.nominalVoltageV();
    }

    /** From 49 to 49a of an electronic one that waits. */
    public double sensingOhm(VehicleSystem system) {
        return system.scaledFrom12V(SENSING_12V_OHM);
    }

    /**
     * Whether something is connected to 49a of an electronic one.
     *
     * @param contactV between 49 and 49a
     * @param closed whether its contact is closed
     */
    public boolean senses(double contactV, boolean closed, VehicleSystem system) {
        return contactV >= (closed ? LEAST_LOAD_A * contactOhm(system) : SENSED_SHARE * system.nominalVoltageV());
    }

    /** The same in the instant in which its contact is open. */
    public Flasher dark() {
        return new Flasher(
                id, label, construction, ratedW, minimumW, ratePerMinute, onShare, contactResistanceOhm, Stuck.OPEN);
    }
}
