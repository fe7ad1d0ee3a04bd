package loomwright.circuit;

import static loomwright.circuit.VehicleDraft.f;
import static loomwright.circuit.VehicleFeed.ALWAYS;
import static loomwright.circuit.VehicleFeed.KEY_ON;

import java.util.List;
import java.util.Map;

/** What supplies a vehicle made at random, and what starts and charges it. */
final class VehicleSupply {
    private final VehicleDraft draft;

    VehicleSupply(VehicleDraft draft) {
        this.draft = draft;
    }

    void supply() {
        String live = draft.negative ? "plus" : "minus";
        String earthed = draft.negative ? "minus" : "plus";
        draft.part("earth", "body", "");
        if (draft.nominalV == 12 && draft.shape.parts() > 20 && draft.random.nextInt(3) == 0) {
            draft.part("battery", "rear", ",'nominalVoltageV':6");
            draft.part("battery", "front", ",'nominalVoltageV':6");
            draft.wire("rear." + earthed, "body.31", false);
            draft.wire("rear." + live, "front." + earthed, false);
            draft.wire("front." + live, "key.30", false);
            draft.feeds.add(new VehicleFeed("front." + live, ALWAYS, Map.of()));
        } else {
            draft.part("battery", "battery", ownFigures());
            draft.wire("battery." + earthed, "body.31", false);
            draft.wire("battery." + live, "key.30", false);
            draft.feeds.add(new VehicleFeed("battery." + live, ALWAYS, Map.of()));
        }
        draft.part(
                "switch",
                "key",
                ",'terminals':['30','15','15a','50'],'positions':[{'name':'off','joins':[]},"
                        + "{'name':'accessory','joins':[['30','15a']]},{'name':'run','joins':[['30','15','15a']]},"
                        + "{'name':'crank','joins':[['30','15','50']]}],'positionByCondition':{'off':'off',"
                        + "'accessory':'accessory','run':'run','crank':'crank','running':'run'}");
        draft.feeds.add(new VehicleFeed("key.15", KEY_ON, Map.of()));
        draft.feeds.add(new VehicleFeed("key.15", KEY_ON, Map.of()));
        draft.feeds.add(new VehicleFeed("key.15a", List.of("accessory", "run", "running"), Map.of()));
        draft.points.add("key.15");
    }

    String conditions() {
        double restV = draft.volts(draft.between(12.2, 12.8));
        double insideOhm = draft.between(0.005, 0.03);
        String atRest = stated(restV, insideOhm);
        return "'conditions':{'off':" + atRest + ",'accessory':" + atRest + ",'run':" + atRest + ",'crank':"
                + stated(draft.volts(draft.between(10, 12.4)), insideOhm) + ",'running':"
                + stated(draft.volts(draft.between(12.3, 12.7)), draft.between(0.02, 0.2)) + "}";
    }

    static String stated(double emfV, double ohm) {
        return f("{'emfV':%.4f,'internalResistanceOhm':%.5f}", emfV, ohm);
    }

    /** What a battery states of itself, which is often nothing. */
    String ownFigures() {
        return switch (draft.random.nextInt(5)) {
            case 0 ->
                f(
                        ",'stateOfChargePercent':%d,'capacityAh':%d",
                        20 + draft.random.nextInt(81), 30 + draft.random.nextInt(60));
            case 1 ->
                f(
                        ",'emfV':%.4f,'internalResistanceOhm':%.5f,'chargeResistanceOhm':%.4f",
                        draft.volts(draft.between(11.9, 12.9)), draft.between(0.004, 0.02), draft.between(0.02, 0.3));
            default -> "";
        };
    }

    void starter(boolean twoWindings) {
        String id = draft.id("solenoid");
        String motor = draft.id("motor");
        VehicleFeed live = draft.feeds.get(0);
        String windings = twoWindings
                ? f(
                        ",'holdInResistanceOhm':%.3f,'pullInResistanceOhm':%.3f",
                        draft.ohms(draft.between(0.8, 1.5)), draft.ohms(0.4))
                : f(",'holdInResistanceOhm':%.3f", draft.ohms(draft.between(2, 5)));
        draft.part("solenoid", id, windings + ",'meantLive':['crank']");
        draft.part(
                "motor",
                motor,
                f(",'resistanceOhm':%.4f,'meantLive':['crank']", draft.ohms(draft.between(0.05, 0.3)))
                        + draft.any(List.of("", ",'excitation':'series'")));
        draft.wire("key.50", id + ".50", true);
        draft.wire(id + ".31", "body.31", false);
        draft.wires.add(draft.wire(live.terminal(), id + ".30", "'resistanceOhm':0.002", true));
        draft.wires.add(draft.wire(id + ".45", motor + ".33", "'resistanceOhm':0.001", true));
        draft.wires.add(draft.wire(motor + ".32", "body.31", "'resistanceOhm':0.001", false));
        draft.points.add(id + ".50");
        if (draft.random.nextBoolean()) {
            draft.feeds.add(new VehicleFeed(id + ".15a", List.of("crank"), Map.of()));
            draft.points.add(id + ".15a");
        }
    }

    void alternator() {
        String id = draft.id("alternator");
        String lamp = draft.id("lamp");
        String sense = draft.any(List.of("", "", ",'senseLost':'falls-back'", ",'senseLost':'full-output'"));
        draft.part(
                "alternator",
                id,
                f(",'regulatedV':%.3f,'limitA':%.1f", draft.volts(draft.between(13.8, 14.6)), draft.between(8, 45))
                        + (draft.random.nextInt(5) == 0 ? ",'selfExciting':true" : "")
                        + draft.any(List.of("", "", "", ",'rectifier':'diode-open'", ",'rectifier':'diode-shorted'"))
                        + draft.any(List.of("", "", ",'exciterDiodes':false"))
                        + draft.any(List.of("", "", f(",'speedRpm':%.0f", draft.between(700, 6000))))
                        + draft.any(List.of("", "", f(",'leakageA':%.3f", draft.between(0.01, 0.5))))
                        + sense);
        if (!sense.isEmpty() && draft.random.nextInt(4) > 0) {
            draft.wire(draft.any(draft.feeds).terminal(), id + ".S", true);
        }
        draft.wire(id + (draft.negative ? ".B-" : ".B+"), "body.31", false);
        draft.wire(draft.feeds.get(0).terminal(), id + (draft.negative ? ".B+" : ".B-"), false);
        VehicleFeed feed = new VehicleFeed("key.15", List.of("run", "crank"), Map.of());
        draft.part(
                "lamp", lamp, f(",'ratedV':%d,'ratedW':%.1f,", draft.nominalV, draft.between(2, 4)) + feed.meantLive());
        draft.wire(feed.terminal(), lamp + ".a", true);
        if (draft.random.nextInt(3) == 0 && draft.room() > 0) {
            draft.wire(lamp + ".b", draft.diode(id + ".D+"), true);
        } else {
            draft.wire(lamp + ".b", id + ".D+", true);
        }
        if (draft.random.nextInt(3) == 0) {
            draft.feeds.add(new VehicleFeed(id + ".D+", List.of("running"), Map.of()));
        }
        draft.points.add(id + ".D+");
    }

    /** A dynamo with its control box, an ammeter before the battery, and the lamp across the cut-out. */
    void dynamo() {
        String id = draft.id("dynamo");
        String box = draft.id("box");
        String lamp = draft.id("lamp");
        String meter = draft.id("meter");
        String regulation = draft.any(List.of("compensated", "voltage", "third-brush"));
        draft.part(
                "dynamo",
                id,
                f(",'limitA':%.1f,'regulation':'%s'", draft.between(8, 30), regulation)
                        + draft.any(List.of("", f(",'speedRpm':%.0f", draft.between(300, 5000))))
                        + draft.any(List.of("", ",'cutInRpm':1050,'fullOutputRpm':1900")));
        draft.part("control-box", box, f(",'cutInV':%.2f", draft.volts(draft.between(12.7, 13.3))));
        draft.part("ammeter", meter, "");
        draft.wire(id + ".E", "body.31", false);
        draft.wire(box + ".E", "body.31", false);
        draft.wire(id + ".D", box + ".D", false);
        if (draft.random.nextInt(4) > 0) {
            draft.wire(id + ".F", box + ".F", false);
        }
        draft.wire(box + ".A", meter + ".b", false);
        draft.wire(meter + ".a", draft.feeds.get(0).terminal(), false);
        VehicleFeed feed = new VehicleFeed("key.15", List.of("run", "crank"), Map.of());
        draft.part(
                "lamp", lamp, f(",'ratedV':%d,'ratedW':%.1f,", draft.nominalV, draft.between(2, 4)) + feed.meantLive());
        draft.wire(feed.terminal(), lamp + ".a", true);
        draft.wire(lamp + ".b", box + ".D", true);
        draft.feeds.add(new VehicleFeed(box + ".A1", ALWAYS, Map.of()));
        draft.points.add(box + ".D");
        draft.points.add(id + ".F");
    }

    void secondBattery() {
        draft.part("battery", "second", ownFigures());
        String from = draft.diodeAfter(draft.feeds.get(0).terminal());
        draft.wire(from, "second." + (draft.negative ? "plus" : "minus"), true);
        draft.wire("second." + (draft.negative ? "minus" : "plus"), "body.31", false);
        draft.feeds.add(new VehicleFeed("second." + (draft.negative ? "plus" : "minus"), ALWAYS, Map.of()));
    }
}
