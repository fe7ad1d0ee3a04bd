package loomwright.circuit;

import com.fasterxml.jackson.annotation.JsonTypeName;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A voltage stabiliser of gauges: {@code B} (feed), {@code I} (output), {@code E} (earth). Its mean output is taken: a bimetal one
 * switches on and off once a second or so, an electronic one holds the same mean. In the mean it takes from its feed what its gauges
 * take, and what its winding takes. Without its earth it does not regulate, and the gauges have full volts. No current goes back
 * from the output to the feed.
 *
 * @param outputV mean volts from I to E; absent: 10 V at 12 V, in proportion otherwise (workshop page of a club: on 77 % of the time
 *     at 13.0 V, 87 % at 11.5 V)
 * @param windingOhm its own load from B to E; absent: 65 ohm at 12 V, in proportion otherwise (common practice, no source)
 */
@JsonTypeName("stabiliser")
public record Stabiliser(
        String id,
        @Nullable String label,
        @Nullable Double outputV,
        @Nullable Double windingOhm) implements Part {
    public static final String FEED = "B";
    public static final String OUTPUT = "I";
    public static final String EARTH = "E";
    private static final List<String> TERMINALS = List.of(FEED, OUTPUT, EARTH);
    /** Its closed contact (common practice, no source). */
    public static final double CONTACT_OHM = 0.02;
    /** Beyond what its gauges take it lets this much through, so that the output stays at its volts: as a share, and in A. */
    public static final double SPARE_SHARE = 0.02;

    public static final double SPARE_A = 1e-3;

    public Stabiliser {
        var faults = Bounds.part(id, label);
        Bounds.voltage(faults, "/outputV", outputV);
        Bounds.resistance(faults, "/windingOhm", windingOhm).reject();
    }

    @Override
    public List<String> terminals() {
        return TERMINALS;
    }

    public double outputV(VehicleSystem system) {
        return Bounds.orElse(outputV, system.scaledFrom12V(10));
    }

    public double windingOhm(VehicleSystem system) {
        return Bounds.orElse(windingOhm, system.scaledFrom12V(65));
    }
}
