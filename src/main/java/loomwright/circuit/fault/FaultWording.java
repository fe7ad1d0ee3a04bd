package loomwright.circuit.fault;

import static loomwright.message.Arg.arg;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import loomwright.circuit.Coil;
import loomwright.circuit.ContactBreaker;
import loomwright.circuit.FilamentLamp;
import loomwright.circuit.Fuse;
import loomwright.circuit.Generator;
import loomwright.circuit.Motor;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.circuit.Relay;
import loomwright.circuit.Solenoid;
import loomwright.circuit.TerminalRef;
import loomwright.circuit.Wire;
import loomwright.circuit.tolerance.PartFigures;
import loomwright.message.Arg;
import loomwright.message.Argument.Thing;
import loomwright.message.Message;

/** Says what a fault is, with the labels of the plan. */
public final class FaultWording {
    private FaultWording() {}

    /** The fault as a sentence. */
    public static Message of(SingleFault fault, Plan plan) {
        if (fault instanceof SwappedLeads f) {
            return FaultText.LEADS_SWAPPED.with(
                    arg("part", thing(plan, f.one().part())),
                    arg("one", f.one().terminal()),
                    arg("other", f.other().terminal()));
        } else if (fault instanceof CrossedConnectors f) {
            return FaultText.CONNECTORS_CROSSED.with(
                    arg("one", thing(plan, f.one())),
                    arg("other", thing(plan, f.other())),
                    arg("oneHalf", thing(plan, f.oneHalf())),
                    arg("otherHalf", thing(plan, f.otherHalf())));
        } else if (fault instanceof WireOff f) {
            return FaultText.WIRE_OFF.with(
                    arg("wire", thing(plan, f.wire())),
                    arg(
                            "part",
                            thing(
                                    plan,
                                    isCase(f.wire(), plan)
                                            ? machine(f.wire(), plan)
                                            : f.terminal().part())),
                    arg("terminal", f.terminal().terminal()),
                    arg("lead", isCase(f.wire(), plan) ? "case" : "wire"));
        } else if (fault instanceof MisplacedWire f) {
            return FaultText.WIRE_MISPLACED.with(
                    arg("wire", thing(plan, f.wire())),
                    arg("part", thing(plan, f.sits().part())),
                    arg("sits", f.sits().terminal()),
                    arg("belongs", f.belongs().terminal()));
        } else if (fault instanceof StuckRelay f) {
            return (f.closed() ? FaultText.RELAY_STUCK_CLOSED : FaultText.RELAY_STUCK_OPEN)
                    .with(arg("part", thing(plan, f.part())));
        } else if (fault instanceof BlownFuse f) {
            return FaultText.FUSE_BLOWN.with(arg("part", thing(plan, f.part())));
        } else if (fault instanceof LostEarth f) {
            return FaultText.EARTH_LOST.with(arg("part", thing(plan, f.part())));
        } else if (fault instanceof OpenInside f) {
            return FaultText.OPEN_INSIDE.with(
                    arg("part", thing(plan, f.part())),
                    arg("kind", kind(plan.findPart(f.part()).orElseThrow())));
        } else if (fault instanceof NotCharging f) {
            return FaultText.NOT_CHARGING.with(things("parts", plan, f.ids()));
        } else if (fault instanceof StuckSwitch f) {
            return FaultText.SWITCH_STUCK.with(
                    arg("part", thing(plan, f.part())),
                    arg("position", f.position()),
                    arg("makes", f.position().isEmpty() ? "nothing" : "contact"));
        } else if (fault instanceof OpenContact f) {
            return contact(FaultText.CONTACT_OPEN, plan, f.part(), f.between());
        } else if (fault instanceof SoundContact f) {
            return contact(
                    FaultText.CONTACT_SOUND,
                    plan,
                    f.part(),
                    f.between(),
                    arg("stated", f.stated().name().toLowerCase(Locale.ROOT)));
        }
        return sized((SizedFault) fault, plan);
    }

    private static Message contact(FaultText text, Plan plan, String part, List<String> between, Arg... more) {
        List<Arg> args = new ArrayList<>(
                List.of(arg("part", thing(plan, part)), arg("from", between.get(0)), arg("to", between.get(1))));
        args.addAll(List.of(more));
        return text.with(args.toArray(Arg[]::new));
    }

    private static Message sized(SizedFault fault, Plan plan) {
        if (fault instanceof BadJoint f) {
            boolean bolted = isCase(f.at(), plan);
            return FaultText.BAD_JOINT.with(
                    arg("place", thing(plan, bolted ? machine(f.at(), plan) : f.at())),
                    arg("resistanceOhm", f.resistanceOhm()),
                    arg("lead", bolted ? "case" : "other"));
        } else if (fault instanceof ShortToEarth f) {
            return FaultText.SHORT_TO_EARTH.with(
                    arg("part", thing(plan, f.terminal().part())),
                    arg("terminal", f.terminal().terminal()),
                    arg("contact", f.isMetalOnMetal() ? "metal" : "other"),
                    arg("resistanceOhm", f.resistanceOhm()));
        } else if (fault instanceof ShortBetween f) {
            return (f.withinPart() ? FaultText.SHORT_INSIDE : FaultText.WIRES_TOUCH)
                    .with(
                            arg("part", thing(plan, f.one().part())),
                            arg("one", f.one().terminal()),
                            arg("otherPart", thing(plan, f.other().part())),
                            arg("other", f.other().terminal()),
                            arg("resistanceOhm", f.resistanceOhm()));
        } else if (fault instanceof OffValue f) {
            return off(f, plan);
        } else if (fault instanceof WornContact f) {
            return contact(
                    FaultText.CONTACT_WORN, plan, f.part(), f.between(), arg("resistanceOhm", f.resistanceOhm()));
        } else if (fault instanceof DischargedBattery f) {
            return discharged(f)
                    .with(
                            things("batteries", plan, f.ids()),
                            arg("arrangement", f.batteries().arrangement()),
                            arg("restV", f.leftV()),
                            arg("soundV", f.restV()));
        }
        WornBattery f = (WornBattery) fault;
        return FaultText.BATTERY_WORN.with(
                things("batteries", plan, f.ids()),
                arg("arrangement", f.batteries().arrangement()),
                arg("resistanceOhm", f.resistanceOhm()));
    }

    /** Three quarters charged is not discharged, and what lacks a tenth of a volt does not lack a cell. */
    private static FaultText discharged(DischargedBattery fault) {
        return switch (fault.state()) {
            case PARTLY_CHARGED -> FaultText.BATTERY_PARTLY_CHARGED;
            case FLAT -> FaultText.BATTERY_FLAT;
            case CELL_DEAD -> FaultText.BATTERY_DISCHARGED;
        };
    }

    private static Message off(OffValue fault, Plan plan) {
        Thing part = thing(plan, fault.part());
        Part sound = plan.findPart(fault.part()).orElseThrow();
        return switch (fault.kind()) {
            case REGULATOR_OFF ->
                FaultText.REGULATOR_OFF.with(
                        arg("part", part),
                        arg("regulatedV", ((Generator) sound).regulatedV(plan.system()) * fault.factor()));
            case CONTACTS_WORN ->
                FaultText.CONTACTS_WORN.with(
                        arg("part", part), arg("resistanceOhm", contactOhm(sound) * fault.factor()));
            default ->
                FaultText.VALUE_OFF.with(
                        arg("part", part),
                        arg("what", fault.what().name().toLowerCase(Locale.ROOT)),
                        arg("figures", (long)
                                PartFigures.of(sound, plan.system()).size()),
                        arg("element", (long) fault.figure() + 1),
                        arg("valueFactor", fault.factor()));
        };
    }

    private static double contactOhm(Part part) {
        if (part instanceof Fuse fuse) {
            return fuse.resistanceOhm();
        } else if (part instanceof Relay relay) {
            return relay.contactResistanceOhm();
        } else if (part instanceof Solenoid solenoid) {
            return solenoid.contactResistanceOhm();
        }
        return ((ContactBreaker) part).contactResistanceOhm();
    }

    private static String kind(Part part) {
        if (part instanceof FilamentLamp) {
            return "lamp";
        } else if (part instanceof Motor) {
            return "motor";
        } else if (part instanceof Coil) {
            return "coil";
        }
        return part instanceof ContactBreaker ? "points" : "part";
    }

    private static boolean isCase(String wire, Plan plan) {
        return plan.findPart(wire).isEmpty()
                && plan.findWire(wire).filter(plan::isCase).isPresent();
    }

    /** The machine whose case a connection is. */
    private static String machine(String wire, Plan plan) {
        TerminalRef from = plan.findWire(wire).orElseThrow().from();
        TerminalRef to = plan.findWire(wire).orElseThrow().to();
        return plan.isReturn(from) ? from.part() : to.part();
    }

    /** A part, wire or connector of the plan; several may have one id, then the part counts. */
    public static Thing thing(Plan plan, String id) {
        return plan.findPart(id)
                .map(Part::thing)
                .or(() -> plan.findWire(id).map(Wire::thing))
                .orElseGet(() -> new Thing(id, id, Thing.Kind.CONNECTOR));
    }

    private static Arg things(String name, Plan plan, List<String> ids) {
        return Arg.things(name, ids.stream().map(id -> thing(plan, id)).toList());
    }
}
