package loomwright.ignition.change;

import java.util.ArrayList;
import java.util.List;
import loomwright.circuit.Ballast;
import loomwright.circuit.Battery;
import loomwright.circuit.Coil;
import loomwright.circuit.Condition;
import loomwright.circuit.Conditions;
import loomwright.circuit.ContactBreaker;
import loomwright.circuit.EarthPoint;
import loomwright.circuit.EarthPolarity;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.circuit.Solenoid;
import loomwright.circuit.Supply;
import loomwright.circuit.Switch;
import loomwright.circuit.TerminalRef;
import loomwright.circuit.VehicleSystem;
import loomwright.circuit.Wire;
import loomwright.network.NetworkLimits;
import loomwright.operation.PlanSolver;
import loomwright.operation.SolvedStep;
import loomwright.operation.Step;

/**
 * A bypass that joins the coil's feed to the start wire: what the solenoid at terminal 50 gets through it with the key
 * on.
 *
 * @param solenoidV at the solenoid with the key on and not at start
 * @param wireA through the bypass, towards the solenoid
 * @param operateV from which it pulls in
 * @param releaseV below which it surely lets go
 */
record BypassLeft(double solenoidV, double wireA, double operateV, double releaseV) {
    private static final double LEAST_OHM = 1e-6;

    /**
     * Solves it as a plan.
     *
     * @param supplyV at the battery
     * @param ballastOhm 0 where the ballast is taken out
     * @param coilOhm the coil's primary
     */
    static BypassLeft of(double supplyV, double feedOhm, double ballastOhm, double coilOhm, double solenoidOhm) {
        Plan plan = plan(supplyV, feedOhm, ballastOhm, coilOhm, solenoidOhm);
        SolvedStep run = new PlanSolver(NetworkLimits.defaults())
                .solve(plan).stream()
                        .filter(step -> step.step() == Step.RUN)
                        .findFirst()
                        .orElseThrow();
        Solenoid solenoid = plan.listParts(Solenoid.class).get(0);
        double scale = plan.system().scaledFrom12V(1);
        return new BypassLeft(run.acrossV(solenoid), run.currentA(solenoid), 8 * scale, 3 * scale);
    }

    boolean pullsIn() {
        return solenoidV >= operateV;
    }

    boolean holds() {
        return solenoidV >= releaseV;
    }

    /** The nominal voltage that a supply belongs to. */
    static double nominalV(double supplyV) {
        return supplyV < 9 ? 6 : supplyV < 18 ? 12 : 24;
    }

    private static Plan plan(double supplyV, double feedOhm, double ballastOhm, double coilOhm, double solenoidOhm) {
        double nominalV = nominalV(supplyV);
        Supply supply = Supply.of(supplyV, 0, 0);
        List<Condition> live = List.of(Condition.RUN, Condition.CRANK, Condition.RUNNING);
        List<Part> parts = new ArrayList<>(List.of(
                Battery.usual("battery"),
                new EarthPoint("earth", null, 0.0),
                key(),
                new Coil("coil", null, coilOhm, null, null, null, null, null, live, List.of()),
                new ContactBreaker("breaker", null, true, 0.03, null),
                new Solenoid(
                        "solenoid",
                        null,
                        solenoidOhm,
                        null,
                        null,
                        null,
                        0.0005,
                        null,
                        List.of(Condition.CRANK),
                        List.of())));
        List<Wire> wires = new ArrayList<>(List.of(
                wire("battery-earth", "battery.minus", "earth.31", LEAST_OHM),
                wire("supply", "battery.plus", "key.30", LEAST_OHM),
                wire("coil-lead", "coil.1", "breaker.1", LEAST_OHM),
                wire("breaker-earth", "breaker.31", "earth.31", LEAST_OHM),
                wire("start", "key.50", "solenoid.50", LEAST_OHM),
                wire("solenoid-earth", "solenoid.31", "earth.31", LEAST_OHM),
                wire("bypass", "solenoid.50", "coil.15", LEAST_OHM)));
        if (ballastOhm > 0) {
            parts.add(new Ballast("ballast", null, List.of(ballastOhm)));
            wires.add(wire("feed", "key.15", "ballast.a", feedOhm));
            wires.add(wire("coil-feed", "ballast.b", "coil.15", LEAST_OHM));
        } else {
            wires.add(wire("feed", "key.15", "coil.15", feedOhm));
        }
        return new Plan(
                Plan.SCHEMA,
                "Bypass left in place",
                new VehicleSystem(nominalV, EarthPolarity.NEGATIVE, 20.0, 20.0),
                new Conditions(supply, supply, supply, supply, supply),
                parts,
                wires,
                List.of(),
                List.of());
    }

    private static Switch key() {
        return new Switch(
                "key",
                null,
                List.of("30", "15", "50"),
                List.of(
                        new Switch.Position("off", List.of()),
                        new Switch.Position("on", List.of(List.of("30", "15"))),
                        new Switch.Position("start", List.of(List.of("30", "15", "50")))),
                new Switch.PositionByCondition("off", "off", "on", "start", "on"),
                null,
                Switch.CONTACT_OHM,
                null,
                false,
                null);
    }

    private static Wire wire(String id, String from, String to, double ohm) {
        return Wire.ofResistance(id, TerminalRef.parse(from), TerminalRef.parse(to), Math.max(LEAST_OHM, ohm));
    }
}
