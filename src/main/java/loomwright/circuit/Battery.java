package loomwright.circuit;

import static loomwright.message.Arg.plain;

import com.fasterxml.jackson.annotation.JsonTypeName;
import java.util.List;
import loomwright.answer.Accepted;
import loomwright.answer.InputError;
import org.jspecify.annotations.Nullable;

/**
 * A battery with terminals {@code plus} and {@code minus}: a store with an electromotive force and a resistance of its own.
 * What it states wins over what the condition states, and that over the usual.
 *
 * @param nominalVoltageV 2 to 24, for a battery that is only a part of the system's (two of 12 V in series); absent: the
 *     system's
 * @param emfV electromotive force in every condition, 0.1 to 100 V; absent: that of its state of charge, of the condition, or
 *     the usual
 * @param internalResistanceOhm while it gives current, 0 to 10 ohm; absent: that of the condition, or the usual of its capacity
 * @param chargeResistanceOhm while it takes current, 0 to 10 ohm; absent likewise
 * @param stateOfChargePercent 0 to 100; absent: 80 where it counts
 * @param capacityAh 1 to 2000 Ah; absent: 60
 */
@JsonTypeName("battery")
public record Battery(
        String id,
        @Nullable String label,
        @Nullable Double nominalVoltageV,
        @Nullable Double emfV,
        @Nullable Double internalResistanceOhm,
        @Nullable Double chargeResistanceOhm,
        @Nullable Double stateOfChargePercent,
        @Nullable Double capacityAh)
        implements Part {
    public static final String PLUS = "plus";
    public static final String MINUS = "minus";
    private static final List<String> TERMINALS = List.of(PLUS, MINUS);

    public Battery {
        Bounds.part(id, label)
                .check(
                        nominalVoltageV == null || (nominalVoltageV >= 2 && nominalVoltageV <= 24),
                        InputError.Code.OUT_OF_RANGE,
                        "/nominalVoltageV",
                        nominalVoltageV,
                        Accepted.NUMBER,
                        plain("min", 2),
                        plain("max", 24))
                .range("/emfV", emfV, Supply.MIN_EMF_V, Bounds.MAX_VOLTAGE_V)
                .range("/internalResistanceOhm", internalResistanceOhm, 0, Supply.MAX_INTERNAL_OHM)
                .range("/chargeResistanceOhm", chargeResistanceOhm, 0, Supply.MAX_INTERNAL_OHM)
                .range("/stateOfChargePercent", stateOfChargePercent, 0, 100)
                .range("/capacityAh", capacityAh, 1, 2000)
                .reject();
    }

    /** A battery of the system's voltage of which nothing is stated. */
    public static Battery usual(String id) {
        return new Battery(id, null, null, null, null, null, null, null);
    }

    /** Its cold cranking current by its capacity, A. */
    public double usualCrankingCurrentA() {
        return BatteryLaw.usualCrankingCurrentA(Bounds.orElse(capacityAh, BatteryLaw.USUAL_CAPACITY_AH));
    }

    /** What it is in a condition, with nothing left open. */
    public ResolvedSupply in(Condition condition, Plan plan) {
        double charge = Bounds.orElse(stateOfChargePercent, 100 * BatteryLaw.USUAL_CHARGE) / 100;
        double usualAh = Bounds.orElse(capacityAh, BatteryLaw.USUAL_CAPACITY_AH);
        double share = share(plan.system());
        ResolvedSupply supply = UsualSupply.in(condition, plan, charge, usualAh)
                .with(plan.conditions().stated(condition))
                .share(share);
        Double ofCharge = stateOfChargePercent == null
                ? null
                : (Double) BatteryLaw.emfV(
                        charge, BatteryLaw.USUAL_C, plan.system().nominalVoltageV() * share);
        return supply.with(new Supply(
                emfV == null ? ofCharge : emfV,
                internalResistanceOhm,
                internalResistanceOhm != null && chargeResistanceOhm == null
                        ? (Double) supply.chargeResistanceOhm()
                        : chargeResistanceOhm,
                null));
    }

    /** The same with other figures in the place of those that it states itself. */
    public Battery withOwn(Supply figures) {
        boolean statesEmf = emfV != null || stateOfChargePercent != null;
        return new Battery(
                id,
                label,
                nominalVoltageV,
                statesEmf ? figures.emfV() : null,
                internalResistanceOhm == null ? null : figures.internalResistanceOhm(),
                chargeResistanceOhm == null ? null : figures.chargeResistanceOhm(),
                null,
                capacityAh);
    }

    /** The same that states all of its figures itself. */
    public Battery withAll(Supply figures) {
        return new Battery(
                id,
                label,
                nominalVoltageV,
                figures.emfV(),
                figures.internalResistanceOhm(),
                figures.chargeResistanceOhm(),
                null,
                capacityAh);
    }

    /** What of the system's supply it is: a half for one of two 6 V batteries of a 12 V system. */
    public double share(VehicleSystem system) {
        return nominalVoltageV == null ? 1 : nominalVoltageV / system.nominalVoltageV();
    }

    @Override
    public List<String> terminals() {
        return TERMINALS;
    }
}
