package loomwright.readings;

import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import loomwright.circuit.Condition;
import loomwright.message.Message;
import loomwright.message.MessageCode;
import loomwright.operation.Contacts;
import loomwright.operation.Quantity;
import org.jspecify.annotations.Nullable;

/**
 * What to measure, in this order.
 *
 * @param plan its name
 * @param first what to look at before any meter
 * @param readings in the order to take them
 * @param leftOut what is not on the sheet, and why
 */
public record ReadingsSheet(String plan, List<Message> first, List<Reading> readings, List<Message> leftOut) {
    public ReadingsSheet {
        first = List.copyOf(first);
        readings = List.copyOf(readings);
        leftOut = List.copyOf(leftOut);
    }

    /** Why a reading is taken. */
    public enum Purpose {
        /** Whether anything bridges the supply. */
        SUPPLY_BRIDGED,
        /** Resistance of a winding, filament or element. */
        OWN_RESISTANCE,
        /** Whether a fuse or contact joins. */
        CONTINUITY,
        /** The battery or the charging. */
        SUPPLY,
        /** Whether a load is dead when it should be. */
        DEAD,
        /** What a load gets. */
        LOAD,
        /** Volts lost on the way to a load. */
        FEED_DROP,
        /** Volts lost in its return. */
        RETURN_DROP,
        /** Volts lost in a part that is made for it. */
        ACROSS_PART,
        /** Halves the way on which the fault must be. */
        HALF_SPLIT
    }

    /** What the meter shows. */
    public enum Shows implements MessageCode {
        /** A figure between lowest and highest. */
        FIGURE,
        /** Nothing steady: nothing joins the point to the chassis. */
        FLOATING,
        /** Over the range: nothing joins the two points. */
        OPEN
    }

    /**
     * One reading.
     *
     * @param number place in the order, from 1
     * @param circuit id of the load whose circuit it belongs to; absent for the supply
     * @param meter function and range
     * @param tells what follows from it
     */
    public record Reading(
            int number,
            Purpose purpose,
            @JsonUnwrapped Circumstances taken,
            @Nullable String circuit,
            Quantity quantity,
            @JsonUnwrapped MeterLeads leads,
            String meter,
            @JsonUnwrapped Expected expected,
            List<Message> tells) {
        public Reading {
            tells = List.copyOf(tells);
        }

        /** What it means, as one text. */
        public String advice() {
            return tells.stream().map(Message::text).collect(Collectors.joining(" "));
        }
    }

    /**
     * When it is taken.
     *
     * @param condition where the key stands
     * @param situation that and all that must be set, in words
     * @param switches free switches to be set otherwise than drawn, id to position
     * @param contacts how the ignition's contacts must stand
     */
    public record Circumstances(
            Condition condition, String situation, Map<String, String> switches, Contacts contacts) {}

    /**
     * Where the leads of the meter go.
     *
     * @param red where the red lead goes: {@code part.terminal} or {@code earth}
     * @param redLabel the same in words; so for the black lead
     */
    public record MeterLeads(String red, String redLabel, String black, String blackLabel) {}

    /**
     * What a sound vehicle shows.
     *
     * @param unit V or ohm
     * @param lowest what a sound circuit shows at least, the meter's own error included; absent if it shows no figure; so
     *     the next two
     * @param nominal with everything at its stated figure and a perfect meter
     */
    public record Expected(
            Shows shows,
            String unit,
            @Nullable Double lowest,
            @Nullable Double nominal,
            @Nullable Double highest) {}
}
