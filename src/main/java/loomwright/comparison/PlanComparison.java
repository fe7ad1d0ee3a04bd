package loomwright.comparison;

import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import loomwright.answer.Finding;
import loomwright.message.Message;
import loomwright.message.MessageCode;
import loomwright.operation.Step;
import org.jspecify.annotations.Nullable;

/**
 * What is different between two plans. Swapping the plans swaps all that is said of before and after.
 *
 * @param before name of the plan as built
 * @param after name of the plan as modified
 * @param same whether there is no difference at all
 * @param settings what changed in system and supply
 * @param changes parts, wires and connectors that changed, in the order of the plans
 * @param steps the steps in which a reading or a state changes
 * @param findings what was wrong and what is
 */
public record PlanComparison(
        String before,
        String after,
        boolean same,
        List<PropertyChange> settings,
        List<ItemChange> changes,
        List<StepChange> steps,
        FindingChanges findings,
        @JsonUnwrapped LooseEnds looseEnds,
        @JsonUnwrapped ChangedMaterial material) {

    /**
     * One property.
     *
     * @param property its name in the plan document
     * @param before its value; absent if it had none
     * @param after its value; absent if it has none
     */
    public record PropertyChange(
            String property,
            @Nullable PropertyValue before,
            @Nullable PropertyValue after) {
        static PropertyChange of(String property, Object before, Object after) {
            return new PropertyChange(property, new PropertyValue(before), new PropertyValue(after));
        }

        /** The properties in which two records differ, by name, leaving out {@code except}. */
        static List<PropertyChange> list(Record before, Record after, Set<String> except) {
            Map<String, PropertyValue> was = PropertyValue.listOf(before);
            Map<String, PropertyValue> is = PropertyValue.listOf(after);
            Set<String> names = new TreeSet<>(was.keySet());
            names.addAll(is.keySet());
            names.removeAll(except);
            return names.stream()
                    .map(name -> new PropertyChange(name, was.get(name), is.get(name)))
                    .filter(change -> !Objects.toString(change.before()).equals(Objects.toString(change.after())))
                    .toList();
        }
    }

    /**
     * A part, wire or connector that is not as it was.
     *
     * @param before its id before; absent if it was not there
     * @param after its id after; absent if it is no more
     * @param wasText what it was, for a person
     * @param isText what it is, for a person
     * @param changes in which ways it changed
     * @param properties each property that differs, of one that is in both plans
     */
    public record ItemChange(
            Item item,
            @Nullable String before,
            @Nullable String after,
            @Nullable String wasText,
            @Nullable String isText,
            List<Change> changes,
            List<PropertyChange> properties) {
        /** The properties of the thing itself, without those that say how it is used. */
        public List<PropertyChange> ofTheThing() {
            return properties.stream()
                    .filter(change -> !Descriptions.USE.contains(change.property()))
                    .toList();
        }

        /** How it changed, in words: a wire is moved, a part is wired to other places. */
        public String description() {
            return changes.stream()
                    .map(change -> change == Change.MOVED && item == Item.PART
                            ? "wired to other places"
                            : change.name().toLowerCase(Locale.ROOT))
                    .collect(Collectors.joining(" and "));
        }
    }

    /** What sort of thing. */
    public enum Item implements MessageCode {
        PART,
        WIRE,
        CONNECTOR
    }

    /** How a thing changed. */
    public enum Change {
        ADDED,
        REMOVED,
        /** The same by its ends, under another id. */
        RENAMED,
        /** A wire with another end; a part of which every terminal leads to other places altogether. */
        MOVED,
        /** A wire or link of another size or length. */
        RESIZED,
        /** Another value of any other property. */
        CHANGED
    }

    /**
     * One step.
     *
     * @param settledBefore whether every relay and the like was at rest, and there was a solution
     * @param readings of things that are in both plans: volts to earth, volts across loads, currents; largest change first
     */
    public record StepChange(
            Step step,
            String description,
            boolean settledBefore,
            boolean settledAfter,
            List<ReadingChange> readings,
            List<StateChange> states) {}

    /**
     * A reading that changes by more than the threshold.
     *
     * @param at the terminal, part or wire, by its name after
     * @param atBefore its name before, if another
     * @param unit V or A
     * @param before absent if it floated
     * @param after absent if it floats
     * @param change after less before; absent if either floats
     */
    public record ReadingChange(
            Quantity quantity,
            String at,
            @Nullable String atBefore,
            String unit,
            @Nullable Double before,
            @Nullable Double after,
            @Nullable Double change) {}

    /** What a meter reads. */
    public enum Quantity {
        TO_EARTH,
        ACROSS,
        CURRENT
    }

    /** What a part does, in the words of the solution, if that changes. */
    public record StateChange(String part, @Nullable String partBefore, String before, String after) {}

    /** The findings of the review of both plans. The same code about the same thing is the same finding. */
    public record FindingChanges(List<Finding> appear, List<Kept> stay, List<Finding> disappear) {}

    /** A finding of both plans, with its figures in each. */
    public record Kept(Finding before, Finding after) {}

    /**
     * Something that leads nowhere.
     *
     * @param message what it is; its code is a {@link Kind}
     * @param id of the wire or part
     * @param terminal where the loose end is
     * @param liveIn steps in which it is live; empty if it is dead throughout
     * @param highestV the most it shows to earth, its amount
     * @param remedy what to do about it
     */
    public record Leftover(
            Message message, String id, @Nullable String terminal, List<Step> liveIn, double highestV, Message remedy) {
        public Kind kind() {
            return (Kind) message.code();
        }

        public String text() {
            return message.text();
        }

        /** What is left. */
        public enum Kind implements MessageCode {
            /** A wire end where nothing else hangs. */
            LOOSE_END,
            /** A wire that ends at something with nothing behind it. */
            IDLE_WIRE,
            /** A relay, fuse, link or other part with nothing behind it. */
            IDLE_PART
        }
    }

    /**
     * A list to buy or to put on the shelf.
     *
     * @param parts added or exchanged
     * @param wires by colour and size
     * @param terminals to be crimped: for new pieces of wire and for ends that move
     */
    public record Material(List<PartLine> parts, List<CutLine> wires, List<TerminalLine> terminals) {}

    /**
     * One part.
     *
     * @param properties what a person has to know to get such a part
     */
    public record PartLine(String part, String kind, String label, Map<String, PropertyValue> properties) {}

    /**
     * Wire of one colour and size.
     *
     * @param pieces how many
     * @param lengthsM of the pieces, those that are stated, longest first
     * @param totalM their sum
     * @param wires the ids
     */
    public record CutLine(
            @Nullable String colour,
            @Nullable String size,
            int pieces,
            List<Double> lengthsM,
            double totalM,
            List<String> wires) {}

    /**
     * Terminals of one form.
     *
     * @param form of the connector half they belong to; absent where the plan does not say what form is needed
     * @param at what kind of part they go to
     * @param size of the wire they are crimped on; absent if not stated
     */
    public record TerminalLine(
            @Nullable String form,
            @Nullable Double widthMm,
            @Nullable String gender,
            String at,
            @Nullable String size,
            int number) {}

    /**
     * What the change leaves without a purpose, or no longer does.
     *
     * @param newLooseEnds what hangs loose or has nothing behind it after the change and did not before
     * @param resolvedLooseEnds what did so before and does no more
     */
    public record LooseEnds(List<Leftover> newLooseEnds, List<Leftover> resolvedLooseEnds) {}

    /**
     * What the change takes.
     *
     * @param needed what the change takes
     * @param removedMaterial what it leaves over
     */
    public record ChangedMaterial(Material needed, Material removedMaterial) {}
}
