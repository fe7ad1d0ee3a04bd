package loomwright.circuit;

import com.fasterxml.jackson.annotation.JsonProperty;
import com.fasterxml.jackson.annotation.JsonTypeName;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A fuse or self-resetting breaker from a to b.
 *
 * @param ratingA the figure that it is marked with
 * @param ratedBy what that figure means; the current that it carries unless said
 * @param construction a blade fuse unless said
 * @param resistanceOhm cold resistance with its holder; 0.005 unless said (an assumption of this service)
 */
@JsonTypeName("fuse")
public record Fuse(
        String id,
        @Nullable String label,
        Double ratingA,
        RatedBy ratedBy,
        Construction construction,
        Double resistanceOhm)
        implements Part {
    /**
     * Share of the current that blows a fuse which it carries continuously: 35 A against 17.5 A (British trade tables, from memory; an
     * owners' page with a supplier's explanation has about 2 to 1, read).
     */
    private static final double CARRIED_SHARE = 0.5;

    /** What the figure on a fuse means. */
    public enum RatedBy {
        /** The current that it carries for ever, as on American and international fuses. */
        @JsonProperty("carry")
        CARRY,
        /** The current that blows it, as on old British glass fuses. */
        @JsonProperty("blow")
        BLOW
    }

    /** How a fuse is made. */
    public enum Construction {
        @JsonProperty("blade")
        BLADE,
        @JsonProperty("glass")
        GLASS,
        @JsonProperty("ceramic")
        CERAMIC,
        @JsonProperty("bolt-down")
        BOLT_DOWN,
        /** A strip of two metals that opens when it is hot and closes again when it has cooled. */
        @JsonProperty("self-resetting")
        SELF_RESETTING
    }

    public Fuse {
        var faults = Bounds.part(id, label).required("/ratingA", ratingA).range("/ratingA", ratingA, 0.1, 500);
        Bounds.resistance(faults, "/resistanceOhm", resistanceOhm).reject();
        ratedBy = orCarry(ratedBy);
        construction = orBlade(construction);
        resistanceOhm = Bounds.orElse(resistanceOhm, 0.005);
    }

    private static RatedBy orCarry(@Nullable RatedBy stated) {
        return stated == null ? RatedBy.CARRY : stated;
    }

    private static Construction orBlade(@Nullable Construction stated) {
        return stated == null ? Construction.BLADE : stated;
    }

    /** The current that it carries continuously, A; by this it is judged. */
    public double continuousA() {
        return ratedBy == RatedBy.BLOW ? CARRIED_SHARE * ratingA : ratingA;
    }

    /** The same with another resistance. */
    public Fuse withResistanceOhm(double ohm) {
        return new Fuse(id, label, ratingA, ratedBy, construction, ohm);
    }

    @Override
    public List<String> terminals() {
        return TwoEnds.TERMINALS;
    }
}
