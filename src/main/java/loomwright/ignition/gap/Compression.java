package loomwright.ignition.gap;

import static loomwright.message.Arg.arg;

import loomwright.answer.InputErrors;
import loomwright.message.Argument.Quantity;
import loomwright.message.Message;

/**
 * The charge in a cylinder at the moment of the spark, from its compression.
 *
 * <p>p = p1 r^n and T = T1 r^(n-1), where r is the ratio of the volume at bottom dead centre to that at the spark. By
 * crank and rod (length 3.5 crank radii) r falls from the compression ratio as the spark is advanced. The exponent of
 * about 1.3, the rod and the start from bottom dead centre are common practice, no source.
 *
 * @param compressionRatio 4 to 25
 * @param manifoldPressurePa absolute, 25 000 to 400 000
 * @param intakeTemperatureC of the charge when compression begins, -40 to 150
 * @param polytropicExponent 1.1 to 1.4
 * @param advanceDegrees crank angle of the spark before top dead centre, 0 to 60
 */
public record Compression(
        double compressionRatio,
        double manifoldPressurePa,
        double intakeTemperatureC,
        double polytropicExponent,
        double advanceDegrees) {

    private static final double ROD_IN_CRANK_RADII = 3.5;

    public Compression {
        new InputErrors()
                .range("/compressionRatio", compressionRatio, 4, 25)
                .range("/manifoldPressurePa", manifoldPressurePa, 25_000, 400_000)
                .range("/intakeTemperatureC", intakeTemperatureC, -40, 150)
                .range("/polytropicExponent", polytropicExponent, 1.1, 1.4)
                .range("/advanceDegrees", advanceDegrees, 0, 60)
                .reject();
    }

    /** Volume at bottom dead centre over volume at the spark. */
    public double ratioAtSpark() {
        double angle = Math.toRadians(advanceDegrees);
        double sine = Math.sin(angle);
        double pistonFallRadii = 1
                - Math.cos(angle)
                + ROD_IN_CRANK_RADII
                - Math.sqrt(ROD_IN_CRANK_RADII * ROD_IN_CRANK_RADII - sine * sine);
        return compressionRatio / (1 + (compressionRatio - 1) / 2 * pistonFallRadii);
    }

    /** Pressure at the spark, in Pa. */
    public double pressurePa() {
        return manifoldPressurePa * Math.pow(ratioAtSpark(), polytropicExponent);
    }

    /** Temperature at the spark, in degrees Celsius. */
    public double temperatureC() {
        double startK = intakeTemperatureC + GapConditions.ZERO_C_IN_K;
        return startK * Math.pow(ratioAtSpark(), polytropicExponent - 1) - GapConditions.ZERO_C_IN_K;
    }

    /** The step with its numbers in it. */
    public Message working() {
        return GapText.CHARGE.with(
                arg("advance", new Quantity(advanceDegrees, "°")),
                arg("compressionRatio", ratioAtSpark()),
                arg("manifold", bar(manifoldPressurePa)),
                arg("exponentFactor", polytropicExponent),
                arg("pressure", bar(pressurePa())),
                arg("intakeK", intakeTemperatureC + GapConditions.ZERO_C_IN_K),
                arg("lessOneFactor", polytropicExponent - 1),
                arg("temperatureK", temperatureC() + GapConditions.ZERO_C_IN_K));
    }

    private static Quantity bar(double pressurePa) {
        return new Quantity(pressurePa / GapConditions.PA_PER_BAR, "bar");
    }
}
