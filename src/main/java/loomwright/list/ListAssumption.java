package loomwright.list;

import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import loomwright.answer.Basis;
import loomwright.message.Message;
import loomwright.message.MessageCode;
import org.jspecify.annotations.Nullable;

/**
 * Something that a list leaves out and that was filled in.
 *
 * @param message what was assumed
 * @param instead how to say it otherwise
 * @param about ids of the parts and wires of the plan that it is about; empty for the whole plan
 * @param basis because of what; absent if the list itself is the reason
 * @param at where in the list it is about
 */
public record ListAssumption(
        Message message,
        Instead instead,
        List<String> about,
        @Nullable Basis basis,
        CellRef at) {

    /** The kinds of assumptions. */
    public enum Code implements MessageCode {
        VOLTAGE(Instead.SETTING),
        EARTH_POLARITY(Instead.SETTING),
        USUAL_VALUE(Instead.PART_ROW),
        SEVERAL_BULBS(Instead.PART_ROW),
        CASE_EARTH(Instead.WIRE_ROW),
        SELF_EXCITING(Instead.WIRE_ROW),
        SENSE_LOST(Instead.PART_ROW),
        STRAP_CONTRADICTED(Instead.WIRE_ROW),
        STRAP_WITHOUT_ENGINE(Instead.WIRE_ROW),
        ENGINE_ON_BODY(Instead.SETTING),
        DYNAMO_EXCITES_ITSELF(Instead.WIRE_ROW),
        SOLENOID_ON_STARTER(Instead.PART_ROW),
        FUSE_CONSTRUCTION(Instead.PART_ROW),
        CUT_OUT_ON_DYNAMO(Instead.WIRE_ROW),
        BATTERY_EARTH(Instead.WIRE_ROW),
        SWITCH_EARTH(Instead.WIRE_ROW),
        POSITIONS(Instead.POSITIONS_ROW),
        KEY_LIGHTS_SPLIT(Instead.POSITIONS_ROW),
        LENGTH(Instead.CELL),
        LENGTH_UNIT(Instead.HEADING),
        SIZE_UNIT(Instead.HEADING),
        SIZE(Instead.CELL),
        THIN_WALL(Instead.CELL),
        SPELLING(Instead.CELL),
        TERMINAL(Instead.CELL),
        AS_ROW_ABOVE(Instead.CELL),
        COLUMN_NOT_READ(Instead.NONE),
        ROW_LEFT_OUT(Instead.CELL),
        VIA_SPLIT(Instead.WIRE_ROW),
        TWO_PARTS(Instead.WIRE_ROW),
        UNMODELLED_TERMINAL(Instead.NONE);

        private final Instead instead;

        Code(Instead instead) {
            this.instead = instead;
        }

        Instead instead() {
            return instead;
        }
    }

    /** How an assumption is overruled. */
    public enum Instead implements MessageCode {
        SETTING,
        PART_ROW,
        WIRE_ROW,
        HEADING,
        CELL,
        POSITIONS_ROW,
        NONE
    }

    public ListAssumption {
        about = List.copyOf(about);
    }

    private static final Set<Code> OF_VALUES = EnumSet.of(
            Code.USUAL_VALUE,
            Code.SEVERAL_BULBS,
            Code.LENGTH,
            Code.LENGTH_UNIT,
            Code.SIZE_UNIT,
            Code.FUSE_CONSTRUCTION,
            Code.SENSE_LOST,
            Code.SIZE,
            Code.THIN_WALL,
            Code.POSITIONS);

    /** Whether figures depend on it, so that a finding may turn out otherwise. */
    public boolean isOfValue() {
        return message.code() instanceof Code code && OF_VALUES.contains(code);
    }

    /** Whether its owner can say it otherwise. */
    public boolean isAvoidable() {
        return instead != Instead.NONE;
    }
}
