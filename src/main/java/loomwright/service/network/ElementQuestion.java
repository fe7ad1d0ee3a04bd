package loomwright.service.network;

import static loomwright.message.Arg.arg;

import com.fasterxml.jackson.annotation.JsonSubTypes;
import com.fasterxml.jackson.annotation.JsonTypeInfo;
import java.util.List;
import loomwright.answer.Accepted;
import loomwright.answer.InputError;
import loomwright.answer.InputErrors;
import loomwright.network.CurrentSource;
import loomwright.network.Element;
import loomwright.network.Lamp;
import loomwright.network.PowerLoad;
import loomwright.network.Resistor;
import loomwright.network.UnidirectionalElement;
import loomwright.network.VoltageSource;
import org.jspecify.annotations.Nullable;

/**
 * An element between two named nodes. For every kind the voltage is that of the first node against the second, and the
 * current is positive from the first through the element to the second.
 */
@JsonTypeInfo(use = JsonTypeInfo.Id.NAME, property = "kind")
@JsonSubTypes({
    @JsonSubTypes.Type(name = "resistor", value = ElementQuestion.OfResistor.class),
    @JsonSubTypes.Type(name = "voltage-source", value = ElementQuestion.OfVoltageSource.class),
    @JsonSubTypes.Type(name = "current-source", value = ElementQuestion.OfCurrentSource.class),
    @JsonSubTypes.Type(name = "power-load", value = ElementQuestion.OfPowerLoad.class),
    @JsonSubTypes.Type(name = "diode", value = ElementQuestion.OfDiode.class),
    @JsonSubTypes.Type(name = "lamp", value = ElementQuestion.OfLamp.class),
    @JsonSubTypes.Type(name = "switch", value = ElementQuestion.OfSwitch.class)
})
public sealed interface ElementQuestion {
    /** Longest name of an element or node. */
    int LONGEST_NAME = 100;

    String id();

    List<String> between();

    /** The element for the solver; null where nothing conducts, as in an open switch. */
    @Nullable
    Element between(int first, int second);

    /** Whether the solver counts current and voltage from the second node. */
    default boolean turned() {
        return false;
    }

    /** A resistance; 0 is an ideal joint. */
    record OfResistor(String id, List<String> between, double resistanceOhm) implements ElementQuestion {
        public OfResistor {
            between = checked(id, between);
        }

        @Override
        public Element between(int first, int second) {
            return new Resistor(id, first, second, resistanceOhm);
        }
    }

    /** A source whose first node is positive; without resistance it is ideal. */
    record OfVoltageSource(
            String id,
            List<String> between,
            double voltageV,
            @Nullable Double resistanceOhm) implements ElementQuestion {
        public OfVoltageSource {
            between = checked(id, between);
        }

        @Override
        public Element between(int first, int second) {
            return new VoltageSource(id, second, first, voltageV, resistanceOhm == null ? 0 : resistanceOhm);
        }

        @Override
        public boolean turned() {
            return true;
        }
    }

    /** A current driven from the first node through the source to the second. */
    record OfCurrentSource(String id, List<String> between, double currentA) implements ElementQuestion {
        public OfCurrentSource {
            between = checked(id, between);
        }

        @Override
        public Element between(int first, int second) {
            return new CurrentSource(id, first, second, currentA);
        }
    }

    /** A load of constant power down to a minimum voltage. */
    record OfPowerLoad(String id, List<String> between, double powerW, double minimumV) implements ElementQuestion {
        public OfPowerLoad {
            between = checked(id, between);
        }

        @Override
        public Element between(int first, int second) {
            return new PowerLoad(id, first, second, powerW, minimumV);
        }
    }

    /** A diode, anode first. */
    record OfDiode(
            String id,
            List<String> between,
            double forwardV,
            @Nullable Double slopeOhm) implements ElementQuestion {
        public OfDiode {
            between = checked(id, between);
            new InputErrors().range("/forwardV", forwardV, 0, Element.MAXIMUM_V).reject();
        }

        @Override
        public Element between(int first, int second) {
            return new UnidirectionalElement(
                    id, first, second, forwardV, slopeOhm == null ? 0 : slopeOhm, Double.POSITIVE_INFINITY);
        }
    }

    /** A filament lamp. */
    record OfLamp(
            String id,
            List<String> between,
            double ratedV,
            double ratedW,
            @Nullable Double coldFraction) implements ElementQuestion {
        /** Cold resistance of a filament as a fraction of the hot one: common practice, no source. */
        public static final double DEFAULT_COLD_FRACTION = 0.1;

        public OfLamp {
            between = checked(id, between);
        }

        @Override
        public Element between(int first, int second) {
            return new Lamp(
                    id, first, second, ratedV, ratedW, coldFraction == null ? DEFAULT_COLD_FRACTION : coldFraction);
        }
    }

    /** A switch; closed it is its contact resistance, or an ideal joint. */
    record OfSwitch(
            String id,
            List<String> between,
            boolean closed,
            @Nullable Double contactOhm) implements ElementQuestion {
        public OfSwitch {
            between = checked(id, between);
            InputErrors faults = new InputErrors();
            Element.checkResistance(faults, "/contactOhm", contactOhm == null ? 0 : contactOhm);
            faults.reject();
        }

        @Override
        public @Nullable Element between(int first, int second) {
            return closed ? new Resistor(id, first, second, contactOhm == null ? 0 : contactOhm) : null;
        }
    }

    private static List<String> checked(@Nullable String id, @Nullable List<String> between) {
        InputErrors faults = new InputErrors().required("/id", id).required("/between", between);
        faults.reject();
        checkName(faults, "/id", id == null ? "" : id);
        List<String> ends = between == null ? List.of() : List.copyOf(between);
        faults.check(
                ends.size() == 2, InputError.Code.OUT_OF_RANGE, "/between", ends.size(), AcceptedNetwork.TWO_NAMES);
        for (int i = 0; i < ends.size(); i++) {
            checkName(faults, "/between/" + i, ends.get(i));
        }
        faults.reject();
        return ends;
    }

    private static void checkName(InputErrors faults, String pointer, String name) {
        int length = name.codePointCount(0, name.length());
        faults.check(
                length >= 1 && length <= LONGEST_NAME,
                InputError.Code.OUT_OF_RANGE,
                pointer,
                name,
                Accepted.CHARACTERS,
                arg("min", 1),
                arg("max", LONGEST_NAME));
    }
}
