package loomwright.circuit;

import com.fasterxml.jackson.annotation.JsonTypeName;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A diode: conducts from {@code anode} to {@code cathode} only.
 *
 * @param forwardV volts at which it begins to conduct; 0.7 unless said (silicon)
 * @param slopeOhm by how much the drop grows with current; 0.01 unless said
 * @param ratingA what it may carry
 */
@JsonTypeName("diode")
public record Diode(
        String id,
        @Nullable String label,
        Double forwardV,
        Double slopeOhm,
        @Nullable Double ratingA) implements Part {
    public static final String ANODE = "anode";
    public static final String CATHODE = "cathode";
    private static final List<String> TERMINALS = List.of(ANODE, CATHODE);
    private static final double SILICON_V = 0.7;
    private static final double SLOPE_OHM = 0.01;

    public Diode {
        var faults = Bounds.part(id, label).range("/forwardV", forwardV, 0, 5);
        Bounds.resistance(faults, "/slopeOhm", slopeOhm);
        Bounds.current(faults, "/ratingA", ratingA).reject();
        forwardV = Bounds.orElse(forwardV, SILICON_V);
        slopeOhm = Bounds.orElse(slopeOhm, SLOPE_OHM);
    }

    /** An ordinary silicon diode. */
    public static Diode silicon(String id, @Nullable String label) {
        return new Diode(id, label, SILICON_V, SLOPE_OHM, null);
    }

    @Override
    public List<String> terminals() {
        return TERMINALS;
    }
}
