package loomwright.list;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import loomwright.catalogue.PartType;
import org.jspecify.annotations.Nullable;

/** A part while its list is being read: what is known of it so far. */
final class PartDraft {
    final String key;
    final String label;
    final CellRef at;
    final List<Use> uses = new ArrayList<>();
    /** Units of what is said of a bulb. */
    private static final List<String> BULB = List.of("W", "V", "A");

    final List<Quantities.Values> values = new ArrayList<>();
    /** The row of the table of parts; absent for a part that only the wires name. */
    @Nullable
    TableRow row;

    @Nullable
    PartType type;
    /** The kind as the table of parts has it, if that is a kind of the plan document. */
    @Nullable
    String exactKind;

    String id = "";
    /** Whether something inside it, which nobody lists, connects it. */
    boolean connectedInside;

    PartDraft(String key, String label, @Nullable PartType type, CellRef at) {
        this.key = key;
        this.label = label;
        this.type = type;
        this.at = at;
    }

    /** An end of a wire at this part. */
    static final class Use {
        final WireDraft wire;
        final boolean from;
        /** The owner's words for the terminal; empty if there are none. */
        String phrase;
        /** Where the wire ends in the plan, {@code part.terminal}; empty until that is decided. */
        String end = "";

        Use(WireDraft wire, boolean from, String phrase) {
            this.wire = wire;
            this.from = from;
            this.phrase = phrase;
        }

        CellRef at() {
            return wire.row.at(from ? "from" : "to");
        }

        PartDraft other() {
            return from ? wire.to : wire.from;
        }
    }

    /** A wire while its list is being read. */
    static final class WireDraft {
        final TableRow row;
        final String id;
        final Map<String, Object> properties = new LinkedHashMap<>();
        PartDraft from;
        PartDraft to;
        final Use fromUse;
        final Use toUse;

        WireDraft(TableRow row, String id, PartDraft from, String fromPhrase, PartDraft to, String toPhrase) {
            this.row = row;
            this.id = id;
            this.from = from;
            this.to = to;
            this.fromUse = new Use(this, true, fromPhrase);
            this.toUse = new Use(this, false, toPhrase);
            from.uses.add(fromUse);
            to.uses.add(toUse);
        }
    }

    String kind() {
        if (exactKind != null) {
            return exactKind;
        }
        return type == null ? "" : isGivenByOhms() ? "resistor" : type.kind();
    }

    /** A tell-tale in series with glow plugs is a coil of wire and no bulb: it has ohms and neither watts nor volts. */
    private boolean isGivenByOhms() {
        return type != null
                && type.kind().equals("lamp")
                && values.stream().anyMatch(value -> value.in("ohm").isPresent())
                && values.stream()
                        .allMatch(value ->
                                BULB.stream().allMatch(unit -> value.in(unit).isEmpty()));
    }

    String typeName() {
        return type == null ? "" : type.name();
    }

    /** Takes over the wires and values of a part that turns out to be this one, under another name. */
    void absorb(PartDraft other) {
        for (Use use : other.uses) {
            if (use.from) {
                use.wire.from = this;
            } else {
                use.wire.to = this;
            }
        }
        uses.addAll(other.uses);
        values.addAll(other.values);
    }

    boolean is(String kind) {
        return kind().equals(kind);
    }

    /** Whether it is a place on the chassis. */
    boolean isEarth() {
        return is("earth");
    }
}
