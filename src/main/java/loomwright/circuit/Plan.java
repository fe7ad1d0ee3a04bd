package loomwright.circuit;

import static loomwright.message.Arg.arg;

import com.fasterxml.jackson.annotation.JsonCreator;
import com.fasterxml.jackson.annotation.JsonProperty;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;
import loomwright.answer.Accepted;
import loomwright.answer.InputError;
import loomwright.answer.InputErrors;
import loomwright.message.Argument.Thing;
import loomwright.message.Message;
import org.jspecify.annotations.Nullable;

/**
 * One vehicle's circuit. Every reference in it leads somewhere; whether it makes sense as a circuit says
 * {@link PlanCheck}.
 *
 * @param schema version of this document's form, {@link #SCHEMA}
 * @param name what it is a plan of
 * @param system nominal voltage, earth polarity, temperatures
 * @param conditions the supply in each condition
 * @param parts 1 or more, in a document up to 500; a remedy or fault that is tried on a full one may add to it
 * @param wires in a document up to 1000, likewise
 * @param connectors pairs of connector halves that are pushed together
 * @param notes anything a person should know
 */
public record Plan(
        String schema,
        String name,
        VehicleSystem system,
        Conditions conditions,
        List<Part> parts,
        List<Wire> wires,
        List<Connector> connectors,
        List<String> notes) {
    public static final String SCHEMA = "loomwright/plan/1";
    static final int MAX_PARTS = 500;
    static final int MAX_WIRES = 1000;
    static final int MAX_CONNECTORS = 200;
    static final int MAX_NOTES = 100;
    private static final int MAX_NOTE = 2000;
    private static final int ROOM_FOR_NUMBER = 3;

    public Plan {
        InputErrors faults = new InputErrors()
                .check(
                        SCHEMA.equals(schema),
                        InputError.Code.NOT_ONE_OF,
                        "/schema",
                        schema,
                        Accepted.THE_TEXT,
                        arg("text", SCHEMA))
                .required("/name", name)
                .required("/system", system);
        Bounds.text(faults, "/name", name, 1, Bounds.MAX_TEXT);
        Bounds.size(faults, "/parts", parts, 1, Integer.MAX_VALUE);
        Bounds.size(faults, "/wires", wires, 0, Integer.MAX_VALUE);
        connectors = orEmpty(connectors);
        notes = orEmpty(notes);
        Bounds.size(faults, "/connectors", connectors, 0, MAX_CONNECTORS);
        Bounds.size(faults, "/notes", notes, 0, MAX_NOTES);
        for (int i = 0; i < notes.size(); i++) {
            Bounds.text(faults, "/notes/" + i, notes.get(i), 0, MAX_NOTE);
        }
        faults.reject();
        References.check(parts, wires, connectors, faults);
        faults.reject();
        conditions = orUsual(conditions);
        parts = List.copyOf(parts);
        wires = List.copyOf(wires);
        connectors = List.copyOf(connectors);
        notes = List.copyOf(notes);
    }

    /** A plan as a caller sends it, which is no larger than documents may be. */
    @JsonCreator
    static Plan document(
            @JsonProperty("schema") String schema,
            @JsonProperty("name") String name,
            @JsonProperty("system") VehicleSystem system,
            @JsonProperty("conditions") Conditions conditions,
            @JsonProperty("parts") List<Part> parts,
            @JsonProperty("wires") List<Wire> wires,
            @JsonProperty("connectors") List<Connector> connectors,
            @JsonProperty("notes") List<String> notes) {
        InputErrors faults = new InputErrors();
        Bounds.size(faults, "/parts", orEmpty(parts), 0, MAX_PARTS);
        Bounds.size(faults, "/wires", orEmpty(wires), 0, MAX_WIRES);
        faults.reject();
        return new Plan(schema, name, system, conditions, parts, wires, connectors, notes);
    }

    private static <T> List<T> orEmpty(@Nullable List<T> list) {
        return list == null ? List.of() : list;
    }

    private static Conditions orUsual(@Nullable Conditions conditions) {
        return conditions == null ? Conditions.USUAL : conditions;
    }

    /** The part, wire or connector of that id, as a message names it. */
    public Thing thing(String id) {
        return findPart(id)
                .map(Part::thing)
                .or(() -> findWire(id).map(Wire::thing))
                .orElseGet(() -> new Thing(id, id, Thing.Kind.CONNECTOR));
    }

    /** A terminal as a message names it: the label of its part, and its own name. */
    public Message describe(TerminalRef terminal) {
        return PlanText.TERMINAL.with(arg("part", thing(terminal.part())), arg("terminal", terminal.terminal()));
    }

    /** How many ends of wires there are at the terminals of a part. */
    public long wiresAt(Part part) {
        return part.terminals().stream()
                .mapToLong(name -> wiresAt(part.terminal(name)))
                .sum();
    }

    /** How many ends of wires there are at a terminal. */
    public long wiresAt(TerminalRef terminal) {
        return wires.stream()
                .flatMap(wire -> Stream.of(wire.from(), wire.to()))
                .filter(terminal::equals)
                .count();
    }

    /**
     * Whether a connection is no lead but the case of a machine that is bolted down: given by its ohms alone, it leads to where
     * the machine's current returns.
     */
    public boolean isCase(Wire wire) {
        return wire.conductor().resistanceOhm() != null && (isReturn(wire.from()) || isReturn(wire.to()));
    }

    /** Whether a terminal is where a machine's current returns, which most have on their case. */
    public boolean isReturn(TerminalRef end) {
        Part part = findPart(end.part()).orElse(null);
        String name = part instanceof Generator generator
                ? generator.returnTerminal()
                : part instanceof Motor ? Motor.RETURN : part instanceof Solenoid ? Solenoid.RETURN : null;
        return end.terminal().equals(name);
    }

    public Optional<Part> findPart(String id) {
        for (Part part : parts) {
            if (part.id().equals(id)) {
                return Optional.of(part);
            }
        }
        return Optional.empty();
    }

    public Optional<Wire> findWire(String id) {
        for (Wire wire : wires) {
            if (wire.id().equals(id)) {
                return Optional.of(wire);
            }
        }
        return Optional.empty();
    }

    /** The supply of the whole system in a condition, but for what batteries state themselves beside their capacity. */
    public ResolvedSupply supply(Condition condition) {
        Double capacityAh = listParts(Battery.class).stream()
                .map(Battery::capacityAh)
                .filter(Objects::nonNull)
                .findFirst()
                .orElse(null);
        return new Battery("any", null, null, null, null, null, null, capacityAh).in(condition, this);
    }

    /** The same as the only battery has it, with what it states itself; of several batteries that of the system. */
    public ResolvedSupply batterySupply(Condition condition) {
        List<Battery> batteries = listParts(Battery.class);
        return batteries.size() == 1 ? batteries.get(0).in(condition, this) : supply(condition);
    }

    /** Whether a starter loads the battery while the engine is cranked. */
    public boolean hasStarter() {
        return parts.stream().anyMatch(part -> part instanceof Motor motor && isStarter(motor));
    }

    private boolean isStarter(Motor motor) {
        List<Condition> conditions = motor.meantLive();
        boolean meant =
                conditions != null && conditions.contains(Condition.CRANK) && !conditions.contains(Condition.RUN);
        return meant
                || listParts(Solenoid.class).stream()
                        .map(solenoid -> solenoid.terminal(Solenoid.MOTOR))
                        .anyMatch(contact -> joins(contact, motor.terminal(Motor.FEED)));
    }

    private boolean joins(TerminalRef one, TerminalRef other) {
        return wires.stream()
                .anyMatch(wire -> (wire.from().equals(one) && wire.to().equals(other))
                        || (wire.from().equals(other) && wire.to().equals(one)));
    }

    /** All parts of one kind, in the order of the plan. */
    public <P extends Part> List<P> listParts(Class<P> kind) {
        return parts.stream().filter(kind::isInstance).map(kind::cast).toList();
    }

    /**
     * What the electrical answers depend on. Plans of the same circuit may differ in their names and notes.
     */
    public record Circuit(
            VehicleSystem system,
            Conditions conditions,
            List<Part> parts,
            List<Wire> wires,
            List<Connector> connectors) {}

    /** The plan without its name and notes. */
    public Circuit circuit() {
        return new Circuit(system, conditions, parts, wires, connectors);
    }

    /** The same plan with other parts and wires. */
    public Plan with(List<? extends Part> newParts, List<Wire> newWires) {
        return new Plan(schema, name, system, conditions, new ArrayList<>(newParts), newWires, connectors, notes);
    }

    /**
     * An id that nothing in the plan bears yet, made of a known one, which is cut if it is too long. Different endings give
     * different ids.
     */
    public String freeId(String stem, String ending) {
        String start = stem.substring(0, Math.min(stem.length(), Bounds.MAX_ID - ending.length() - ROOM_FOR_NUMBER));
        String id = start + ending;
        int number = 2;
        while (findPart(id).isPresent() || findWire(id).isPresent()) {
            id = start + ending + number++;
        }
        return id;
    }

    /** The same plan with a part in the place of the one that has its id. */
    public Plan withPart(Part changed) {
        return with(
                parts.stream()
                        .map(p -> p.id().equals(changed.id()) ? changed : p)
                        .toList(),
                wires);
    }

    /** The parts by id, in the order of the plan. */
    public Map<String, Part> partsById() {
        Map<String, Part> byId = new LinkedHashMap<>();
        for (Part part : parts) {
            byId.put(part.id(), part);
        }
        return byId;
    }
}
