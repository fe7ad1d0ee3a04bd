package loomwright.drawing.diagram;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import loomwright.circuit.Alternator;
import loomwright.circuit.Ammeter;
import loomwright.circuit.Ballast;
import loomwright.circuit.Battery;
import loomwright.circuit.Capacitor;
import loomwright.circuit.Coil;
import loomwright.circuit.ConnectorHalf;
import loomwright.circuit.ContactBreaker;
import loomwright.circuit.ControlBox;
import loomwright.circuit.Diode;
import loomwright.circuit.Dynamo;
import loomwright.circuit.EarthPoint;
import loomwright.circuit.FilamentLamp;
import loomwright.circuit.FixedResistor;
import loomwright.circuit.Flasher;
import loomwright.circuit.Fuse;
import loomwright.circuit.FusibleLink;
import loomwright.circuit.IgnitionModule;
import loomwright.circuit.Joint;
import loomwright.circuit.LedLamp;
import loomwright.circuit.Load;
import loomwright.circuit.Motor;
import loomwright.circuit.Part;
import loomwright.circuit.Relay;
import loomwright.circuit.Solenoid;
import loomwright.circuit.Stabiliser;
import loomwright.circuit.Switch;

/** The symbol of each kind of part. The one place to look when a kind is added. Shapes after IEC 60617. */
final class Symbols {
    /** Draws a part in the state that it is in. */
    @FunctionalInterface
    interface Symbol<P extends Part> {
        Body draw(P part, Setting setting);
    }

    private static final Map<Class<? extends Part>, Symbol<? extends Part>> SYMBOLS = new HashMap<>();

    static {
        put(Battery.class, SourceSymbols::battery);
        put(Alternator.class, SourceSymbols::alternator);
        put(Dynamo.class, SourceSymbols::dynamo);
        put(ControlBox.class, SourceSymbols::controlBox);
        put(Switch.class, SwitchSymbols::of);
        put(Relay.class, MagnetSymbols::relay);
        put(Solenoid.class, MagnetSymbols::solenoid);
        put(Motor.class, TwoEndSymbols::motor);
        put(Ballast.class, ResistorSymbols::ballast);
        put(FixedResistor.class, ResistorSymbols::resistor);
        put(Coil.class, IgnitionSymbols::coil);
        put(ContactBreaker.class, IgnitionSymbols::breaker);
        put(IgnitionModule.class, IgnitionSymbols::module);
        put(Capacitor.class, TwoEndSymbols::capacitor);
        put(FilamentLamp.class, TwoEndSymbols::lamp);
        put(LedLamp.class, TwoEndSymbols::led);
        put(Load.class, TwoEndSymbols::load);
        put(Ammeter.class, TwoEndSymbols::ammeter);
        put(Stabiliser.class, SourceSymbols::stabiliser);
        put(Flasher.class, SourceSymbols::flasher);
        put(Diode.class, TwoEndSymbols::diode);
        put(Fuse.class, TwoEndSymbols::fuse);
        put(FusibleLink.class, TwoEndSymbols::link);
        put(Joint.class, JunctionSymbols::joint);
        put(EarthPoint.class, JunctionSymbols::earth);
        put(ConnectorHalf.class, JunctionSymbols::half);
    }

    private Symbols() {}

    private static <P extends Part> void put(Class<P> kind, Symbol<P> symbol) {
        SYMBOLS.put(kind, symbol);
    }

    static Set<Class<? extends Part>> kinds() {
        return Set.copyOf(SYMBOLS.keySet());
    }

    static Body of(Setting setting) {
        Part part = setting.part();
        Symbol<? extends Part> symbol = SYMBOLS.get(part.getClass());
        if (symbol == null) {
            throw new IllegalStateException("no symbol for " + part.getClass());
        }
        return draw(symbol, part, setting);
    }

    @SuppressWarnings("unchecked") // put() pairs each class with a symbol of that class
    private static <P extends Part> Body draw(Symbol<P> symbol, Part part, Setting setting) {
        return symbol.draw((P) part, setting);
    }

    /** Terminals in columns from left to right: the left edge of each, and of what comes after the last. */
    static double[] columns(double left, List<String> terminals, Setting setting) {
        double[] x = new double[terminals.size() + 1];
        x[0] = left;
        for (int i = 0; i < terminals.size(); i++) {
            x[i + 1] = x[i] + setting.pitch(terminals.get(i));
        }
        return x;
    }
}
