package loomwright.circuit;

import com.fasterxml.jackson.annotation.JsonSubTypes;
import com.fasterxml.jackson.annotation.JsonTypeInfo;
import java.util.List;
import loomwright.message.Argument.Thing;
import org.jspecify.annotations.Nullable;

/**
 * Something that wires are joined to. A closed set: {@code kind} names which.
 *
 * <p>Terminals bear the numbers of DIN 72552 where it has them; otherwise {@code a} and {@code b} for parts whose two
 * ends are alike, and {@code plus} and {@code minus} for the battery, whose poles stay what they are whichever of them
 * is earthed.
 */
@JsonTypeInfo(use = JsonTypeInfo.Id.NAME, property = "kind")
@JsonSubTypes({
    @JsonSubTypes.Type(Battery.class),
    @JsonSubTypes.Type(Alternator.class),
    @JsonSubTypes.Type(Dynamo.class),
    @JsonSubTypes.Type(ControlBox.class),
    @JsonSubTypes.Type(Switch.class),
    @JsonSubTypes.Type(Relay.class),
    @JsonSubTypes.Type(Solenoid.class),
    @JsonSubTypes.Type(Motor.class),
    @JsonSubTypes.Type(Ballast.class),
    @JsonSubTypes.Type(FixedResistor.class),
    @JsonSubTypes.Type(Coil.class),
    @JsonSubTypes.Type(ContactBreaker.class),
    @JsonSubTypes.Type(IgnitionModule.class),
    @JsonSubTypes.Type(Capacitor.class),
    @JsonSubTypes.Type(FilamentLamp.class),
    @JsonSubTypes.Type(LedLamp.class),
    @JsonSubTypes.Type(Load.class),
    @JsonSubTypes.Type(Ammeter.class),
    @JsonSubTypes.Type(Stabiliser.class),
    @JsonSubTypes.Type(Flasher.class),
    @JsonSubTypes.Type(Diode.class),
    @JsonSubTypes.Type(Fuse.class),
    @JsonSubTypes.Type(FusibleLink.class),
    @JsonSubTypes.Type(Joint.class),
    @JsonSubTypes.Type(EarthPoint.class),
    @JsonSubTypes.Type(ConnectorHalf.class)
})
public sealed interface Part
        permits Battery,
                Generator,
                ControlBox,
                Switch,
                Ballast,
                FixedResistor,
                ContactBreaker,
                IgnitionModule,
                Capacitor,
                Ammeter,
                Stabiliser,
                Flasher,
                Diode,
                Fuse,
                FusibleLink,
                Joint,
                EarthPoint,
                ConnectorHalf,
                Consumer {

    /** Unique among the parts of a plan. */
    String id();

    /** What a person calls it. */
    @Nullable
    String label();

    /** The names of its terminals, in a fixed order. */
    List<String> terminals();

    /** The word that names this kind of part in the document. */
    default String kind() {
        return KindWords.OF_CLASS.get(getClass());
    }

    /** What to call it in a sentence: its label if it has one, else its id. */
    default String displayName() {
        String label = label();
        return label == null ? id() : label;
    }

    /** What a message names. */
    default Thing thing() {
        return Thing.part(id(), displayName());
    }

    default TerminalRef terminal(String name) {
        return new TerminalRef(id(), name);
    }
}
