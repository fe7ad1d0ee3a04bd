package loomwright.ignition.primary;

import static loomwright.message.Arg.texts;

import java.util.List;
import loomwright.answer.Accepted;
import loomwright.answer.InputError;
import loomwright.answer.InputErrors;
import loomwright.message.MessageCode;

/**
 * How often one coil has to give a spark.
 *
 * @param cylinders 1 to 16
 * @param strokes 2 or 4
 * @param arrangement which plugs a coil serves
 */
public record Firing(int cylinders, int strokes, Arrangement arrangement) {

    /** Which plugs a coil serves, and which shaft its trigger sits on. */
    public enum Arrangement implements MessageCode {
        /** One coil serves all cylinders; the breaker turns with the distributor. */
        DISTRIBUTOR,
        /** One coil serves two plugs in series, every turn of the crankshaft; the breaker is on the crankshaft. */
        WASTED_SPARK,
        /** Each cylinder has its own coil; the breaker turns once per working cycle. */
        COIL_PER_CYLINDER
    }

    public Firing {
        new InputErrors()
                .range("/cylinders", cylinders, 1, 16)
                .check(
                        strokes == 2 || strokes == 4,
                        InputError.Code.NOT_ONE_OF,
                        "/strokes",
                        strokes,
                        Accepted.ONE_OF,
                        texts("names", List.of("2", "4")))
                .check(
                        arrangement != Arrangement.WASTED_SPARK || strokes == 4,
                        InputError.Code.CONTRADICTION,
                        "/arrangement",
                        arrangement,
                        AcceptedIgnition.NO_WASTED_SPARK)
                .check(
                        arrangement != Arrangement.WASTED_SPARK || cylinders == 1 || cylinders % 2 == 0,
                        InputError.Code.CONTRADICTION,
                        "/cylinders",
                        cylinders,
                        AcceptedIgnition.EVEN_CYLINDERS)
                .reject();
    }

    /** Turns of the crankshaft from one spark of a coil to its next. */
    public double turnsPerSpark() {
        return switch (arrangement) {
            case DISTRIBUTOR -> strokes / 2.0 / cylinders;
            case WASTED_SPARK -> 1;
            case COIL_PER_CYLINDER -> strokes / 2.0;
        };
    }

    /**
     * Time from one spark of a coil to its next: T = 60 turns / n.
     *
     * @param speedRpm speed of the crankshaft, above 0
     * @return seconds; for a four-stroke engine with distributor 120 / (cylinders n)
     */
    public double cycleS(double speedRpm) {
        return 60 * turnsPerSpark() / speedRpm;
    }

    /** Angle of the breaker shaft from one spark of a coil to its next, in degrees: the bound of every dwell angle. */
    public double cycleDegrees() {
        return 360 * turnsPerSpark() * breakerTurnsPerCrankTurn();
    }

    /** Half for a distributor of a four-stroke engine, which turns with the camshaft; else one. */
    public double breakerTurnsPerCrankTurn() {
        return strokes == 4 && arrangement != Arrangement.WASTED_SPARK ? 0.5 : 1;
    }

    /** How many coils the engine has. */
    public int coils() {
        return switch (arrangement) {
            case DISTRIBUTOR -> 1;
            case WASTED_SPARK -> (cylinders + 1) / 2;
            case COIL_PER_CYLINDER -> cylinders;
        };
    }

    /** Whether a second plug, in a cylinder on its exhaust stroke, is in series with the one that ignites. */
    public boolean hasSecondGap() {
        return arrangement == Arrangement.WASTED_SPARK && cylinders > 1;
    }
}
