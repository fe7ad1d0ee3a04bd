package loomwright.circuit;

/**
 * The supply where a plan leaves it open. Volts are {@link UsualVoltages} in proportion to the nominal voltage, 3 per cent
 * either way (common practice, no source); ohms are those of {@link BatteryLaw}.
 *
 * <p>While cranking, a plan with a starter has the battery at rest, which the starter loads; without a starter the usual figure
 * of a single battery stands for what it shows while one turns. With the engine running, a plan with an alternator has a battery of
 * {@link BatteryLaw#USUAL_CHARGE}, which the machine charges; without one the usual figure stands for a charging system.
 */
final class UsualSupply {
    private static final double TOLERANCE_PERCENT = 3;
    /** Of a figure that stands for what the terminals show: no load of a plan makes it sag by what a meter tells. */
    private static final double STEADY_OHM = 1e-4;

    private UsualSupply() {}

    /**
     * The supply of a whole system.
     *
     * @param charge state of charge, 0 to 1, where it counts
     * @param capacityAh of the battery
     */
    static ResolvedSupply in(Condition condition, Plan plan, double charge, double capacityAh) {
        VehicleSystem system = plan.system();
        double nominalV = system.nominalVoltageV();
        double givingOhm = BatteryLaw.dischargeOhm(
                BatteryLaw.usualCrankingCurrentA(capacityAh), BatteryLaw.USUAL_DISCHARGE_C, nominalV);
        double takingOhm = BatteryLaw.chargeOhm(capacityAh, charge, nominalV);
        double restV = system.scaledFrom12V(UsualVoltages.AT_REST_V);
        return switch (condition) {
            case OFF, ACCESSORY, RUN -> new ResolvedSupply(restV, givingOhm, takingOhm, TOLERANCE_PERCENT);
            case CRANK ->
                plan.hasStarter() || plan.listParts(Battery.class).size() > 1
                        ? new ResolvedSupply(restV, givingOhm, takingOhm, TOLERANCE_PERCENT)
                        : steady(system.scaledFrom12V(UsualVoltages.CRANKING_V), STEADY_OHM);
            case RUNNING ->
                plan.listParts(Generator.class).isEmpty()
                        ? steady(system.scaledFrom12V(UsualVoltages.CHARGING_V), givingOhm)
                        : new ResolvedSupply(
                                BatteryLaw.emfV(charge, BatteryLaw.USUAL_C, nominalV),
                                givingOhm,
                                takingOhm,
                                TOLERANCE_PERCENT);
        };
    }

    private static ResolvedSupply steady(double emfV, double ohm) {
        return new ResolvedSupply(emfV, ohm, ohm, TOLERANCE_PERCENT);
    }
}
