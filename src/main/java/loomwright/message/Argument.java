package loomwright.message;

import java.util.List;
import java.util.Objects;

/** What a message may say besides its fixed words. */
public sealed interface Argument {

    /**
     * A measured or calculated number.
     *
     * @param value finite
     * @param unit its symbol, such as V or Ω; empty for a ratio
     */
    record Quantity(double value, String unit) implements Argument {
        public Quantity {
            Objects.requireNonNull(unit);
            if (!Double.isFinite(value)) {
                throw new IllegalArgumentException("a quantity of " + value + " " + unit);
            }
        }
    }

    /** A number of things. It decides singular and plural. */
    record Count(long value) implements Argument {}

    /**
     * A part, wire or connector of the plan.
     *
     * @param id unique in the plan
     * @param label what a person calls it; the id where it has no label
     * @param kind what it is
     */
    record Thing(String id, String label, Kind kind) implements Argument {
        /** What a thing of the plan is. Its text says how a sentence names one. */
        public enum Kind implements MessageCode {
            PART,
            WIRE,
            CONNECTOR
        }

        public Thing {
            Objects.requireNonNull(id);
            Objects.requireNonNull(label);
            Objects.requireNonNull(kind);
        }

        public static Thing part(String id, String label) {
            return new Thing(id, label, Kind.PART);
        }

        public static Thing wire(String id) {
            return new Thing(id, id, Kind.WIRE);
        }
    }

    /** A word of a closed set, such as an operating condition. */
    record Word(MessageCode code) implements Argument {
        public Word {
            Objects.requireNonNull(code);
        }
    }

    /** What somebody wrote or what reads the same in every language: a name, a wire size, a formula. */
    record Verbatim(String text) implements Argument {
        public Verbatim {
            Objects.requireNonNull(text);
        }
    }

    /**
     * When: the operating condition, and the switches that stand otherwise than in the plan.
     *
     * @param step a word of a closed set
     * @param switches in the order of the plan; empty if all stand as in the plan
     */
    record Instant(MessageCode step, List<SwitchPosition> switches) implements Argument {
        public Instant {
            Objects.requireNonNull(step);
            switches = List.copyOf(switches);
        }
    }

    /**
     * A switch in one of its positions.
     *
     * @param operated the switch
     * @param position the name that the plan gives the position
     */
    record SwitchPosition(Thing operated, String position) implements Argument {
        public SwitchPosition {
            Objects.requireNonNull(operated);
            Objects.requireNonNull(position);
        }
    }

    /** Several of a kind, in reading order. */
    record Listing(List<Argument> items) implements Argument {
        public Listing {
            items = List.copyOf(items);
        }
    }

    /** A message within a message. */
    record Nested(Message message) implements Argument {
        public Nested {
            Objects.requireNonNull(message);
        }
    }
}
