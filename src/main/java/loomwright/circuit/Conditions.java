package loomwright.circuit;

import org.jspecify.annotations.Nullable;

/** The supply in each condition; what is left out has the usual value, see {@link UsualSupply}. */
public record Conditions(
        @Nullable Supply off,
        @Nullable Supply accessory,
        @Nullable Supply run,
        @Nullable Supply crank,
        @Nullable Supply running) {

    public static final Conditions USUAL = new Conditions(null, null, null, null, null);

    /** What is stated of a condition. */
    public @Nullable Supply stated(Condition condition) {
        return switch (condition) {
            case OFF -> off;
            case ACCESSORY -> accessory;
            case RUN -> run;
            case CRANK -> crank;
            case RUNNING -> running;
        };
    }
}
