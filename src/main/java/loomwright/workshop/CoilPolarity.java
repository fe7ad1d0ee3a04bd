package loomwright.workshop;

import static loomwright.message.Arg.arg;

import java.util.List;
import java.util.Locale;
import loomwright.answer.Answer;
import loomwright.answer.Basis;
import loomwright.answer.Caution;
import loomwright.answer.Finding;
import loomwright.answer.InputError;
import loomwright.answer.InputErrors;
import loomwright.circuit.EarthPolarity;
import org.jspecify.annotations.Nullable;

/** Whether the centre electrode of the plug is negative, as it should be, with the coil's leads as they are. */
public final class CoilPolarity {
    public static final Basis BASIS = new Basis(
            "a spark needs 15 to 40 per cent less volts from the hot centre electrode, so it is to be the negative one; a"
                    + " marked coil makes it so if its primary current flows as its marks say",
            "electrons leave a hot electrode more easily (thermionic emission); the figures are from memory",
            Basis.Status.FROM_MEMORY);

    /** By how much more volts are needed the wrong way round. */
    private static final double MORE_LEAST_PERCENT = 15;

    private static final double MORE_MOST_PERCENT = 40;

    private CoilPolarity() {}

    /** The primary terminal that the ignition switch or ballast feeds, by its mark; the other goes to points or module. */
    public enum FedTerminal {
        PLUS,
        MINUS,
        /** Marked SW: for the switch. */
        SW,
        /** Marked CB: for the contact breaker. */
        CB
    }

    /** Polarity of the centre electrode. */
    public enum PlugPolarity {
        NEGATIVE,
        POSITIVE
    }

    /**
     * What is asked.
     *
     * @param fedTerminal required
     * @param earthPolarity of the vehicle as it is now; negative unless said
     * @param coilMadeFor earth polarity for which a coil marked SW and CB was made; needed for such a coil alone
     */
    public record Input(
            @Nullable FedTerminal fedTerminal,
            @Nullable EarthPolarity earthPolarity,
            @Nullable EarthPolarity coilMadeFor) {
        public Input {
            InputErrors faults = new InputErrors().required("/fedTerminal", fedTerminal);
            boolean marked = fedTerminal == FedTerminal.SW || fedTerminal == FedTerminal.CB;
            faults.check(
                            !marked || coilMadeFor != null,
                            InputError.Code.MISSING,
                            "/coilMadeFor",
                            null,
                            AcceptedBench.MADE_FOR)
                    .check(
                            marked || fedTerminal == null || coilMadeFor == null,
                            InputError.Code.CONTRADICTION,
                            "/coilMadeFor",
                            coilMadeFor == null ? null : coilMadeFor.name().toLowerCase(Locale.ROOT),
                            AcceptedBench.MARKED)
                    .reject();
        }
    }

    /**
     * The answer.
     *
     * @param plugPolarity of the centre electrode
     * @param right whether that is as it should be
     * @param moreLeastPercent by how much more volts the spark needs, at least; 0 if it is right
     * @param moreMostPercent at most
     */
    public record Result(
            PlugPolarity plugPolarity,
            boolean right,
            double moreLeastPercent,
            double moreMostPercent,
            List<Finding> findings) {}

    /** Answers. */
    public static Answer<Result> calculate(Input input) {
        EarthPolarity earth = input.earthPolarity() == null ? EarthPolarity.NEGATIVE : input.earthPolarity();
        FedTerminal fed = input.fedTerminal();
        boolean plusFed = fed == FedTerminal.PLUS;
        boolean markedByPole = plusFed || fed == FedTerminal.MINUS;
        boolean right = markedByPole
                ? plusFed == (earth == EarthPolarity.NEGATIVE)
                : (fed == FedTerminal.SW) == (earth == input.coilMadeFor());
        List<Finding> findings = right
                ? List.of()
                : List.of(Finding.warning(
                                WorkshopMessage.POLARITY_REVERSED.with(
                                        arg("moreLeastPercent", MORE_LEAST_PERCENT),
                                        arg("moreMostPercent", MORE_MOST_PERCENT)),
                                BASIS)
                        .remedy(WorkshopMessage.SWAP_COIL_LEADS.with()));
        return new Answer<>(
                new Result(
                        right ? PlugPolarity.NEGATIVE : PlugPolarity.POSITIVE,
                        right,
                        right ? 0 : MORE_LEAST_PERCENT,
                        right ? 0 : MORE_MOST_PERCENT,
                        findings),
                List.of(WorkshopMessage.POLARITY_LAW.with()),
                List.of(BASIS),
                List.of(Caution.HIGH_TENSION, Caution.DISCONNECT_BATTERY, Caution.LOCAL_CODES));
    }
}
