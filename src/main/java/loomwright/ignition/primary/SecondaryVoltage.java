package loomwright.ignition.primary;

/**
 * The highest voltage a coil can raise at its secondary: the lower of two bounds.
 *
 * @param byEnergyV what the stored energy charges the secondary capacitance to: sqrt(2 eta E / C)
 * @param byClampV what the clamp of module or condenser allows: turns ratio x primary clamp
 */
public record SecondaryVoltage(double byEnergyV, double byClampV) {

    /**
     * Both bounds for a coil broken with some energy in it.
     *
     * @param coil the coil
     * @param energyJ stored at the break, 0 or above
     * @return the bounds. Follows from E = C V^2 / 2 and the turns ratio; the efficiency is the coil's own figure
     */
    public static SecondaryVoltage of(CoilData coil, double energyJ) {
        double byEnergyV = Math.sqrt(2 * coil.efficiencyFraction() * energyJ / coil.secondaryCapacitanceF());
        return new SecondaryVoltage(byEnergyV, coil.turnsRatio() * coil.primaryClampV());
    }

    /** The voltage available to the plug. */
    public double availableV() {
        return Math.min(byEnergyV, byClampV);
    }
}
