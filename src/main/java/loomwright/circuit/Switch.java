package loomwright.circuit;

import static loomwright.message.Arg.texts;

import com.fasterxml.jackson.annotation.JsonProperty;
import com.fasterxml.jackson.annotation.JsonTypeName;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Stream;
import loomwright.answer.Accepted;
import loomwright.answer.InputError;
import loomwright.answer.InputErrors;
import org.jspecify.annotations.Nullable;

/**
 * A switch of any number of positions, each joining groups of its terminals.
 *
 * @param terminals their names
 * @param positions what each position joins
 * @param positionByCondition for a switch that follows the condition (the key): its position in each; absent for a switch
 *     that the operator is free to set
 * @param position where a free switch stands; its first position unless said
 * @param contactResistanceOhm of each closed contact; 0.0015 unless said: 15 mV at 10 A, typical of a relay contact
 * @param ratingA what a contact may carry
 * @param momentary whether a spring moves it back to the position it is drawn in, as of a push button; false unless said
 * @param contactFaults contacts that do not do what the positions say; absent if all are sound
 */
@JsonTypeName("switch")
public record Switch(
        String id,
        @Nullable String label,
        List<String> terminals,
        List<Position> positions,
        @Nullable PositionByCondition positionByCondition,
        @Nullable String position,
        Double contactResistanceOhm,
        @Nullable Double ratingA,
        Boolean momentary,
        @Nullable List<ContactFault> contactFaults)
        implements Part {
    /** How many terminals a switch, joint or connector half may have. */
    public static final int MAX_TERMINALS = 40;

    static final int MAX_POSITIONS = 20;
    /** Contact drop of a plug-in relay at 10 A: typically 15 mV (makers' data sheets for the ISO 7588 pin layout). */
    public static final double CONTACT_OHM = 0.0015;

    public Switch {
        InputErrors faults = Bounds.part(id, label);
        terminalNames(faults, terminals, 2);
        Bounds.size(faults, "/positions", positions, 1, MAX_POSITIONS);
        Bounds.resistance(faults, "/contactResistanceOhm", contactResistanceOhm);
        Bounds.current(faults, "/ratingA", ratingA);
        faults.reject();
        checkPositions(faults, terminals, positions, positionByCondition, position);
        momentary = Bounds.orFalse(momentary);
        faults.check(
                !momentary || positionByCondition == null,
                InputError.Code.CONTRADICTION,
                "/momentary",
                momentary,
                AcceptedPlan.NOT_MOMENTARY);
        faults.reject();
        contactFaults = contactFaults == null || contactFaults.isEmpty() ? null : List.copyOf(contactFaults);
        checkContacts(faults, terminals, positions, contactFaults);
        faults.reject();
        terminals = List.copyOf(terminals);
        positions = List.copyOf(positions);
        contactResistanceOhm = Bounds.orElse(contactResistanceOhm, CONTACT_OHM);
    }

    /** Checks a list of terminal names of a part that has its own. */
    static void terminalNames(InputErrors faults, @Nullable List<String> terminals, int min) {
        Bounds.size(faults, "/terminals", terminals, min, MAX_TERMINALS);
        if (terminals == null) {
            return;
        }
        for (int i = 0; i < terminals.size(); i++) {
            String name = terminals.get(i);
            faults.check(
                    name == null || Bounds.isTerminal(name),
                    InputError.Code.MALFORMED,
                    "/terminals/" + i,
                    name,
                    AcceptedPlan.TERMINAL_NAME);
        }
        Bounds.distinct(faults, "/terminals", terminals);
    }

    private static void checkPositions(
            InputErrors faults,
            List<String> terminals,
            List<Position> positions,
            @Nullable PositionByCondition byCondition,
            @Nullable String rest) {
        Set<String> names = new HashSet<>();
        for (int p = 0; p < positions.size(); p++) {
            String at = "/positions/" + p;
            String name = positions.get(p).name();
            faults.check(names.add(name), InputError.Code.DUPLICATE, at + "/name", name, Accepted.EACH_ONCE);
            List<List<String>> joins = positions.get(p).joins();
            for (int j = 0; j < joins.size(); j++) {
                for (int k = 0; k < joins.get(j).size(); k++) {
                    reference(faults, at + "/joins/" + j + "/" + k, joins.get(j).get(k), terminals);
                }
            }
        }
        faults.check(
                byCondition == null || rest == null,
                InputError.Code.CONTRADICTION,
                "/position",
                rest,
                AcceptedPlan.NO_POSITION);
        List<String> known = new ArrayList<>(names);
        if (rest != null) {
            reference(faults, "/position", rest, known);
        }
        if (byCondition != null) {
            reference(faults, "/positionByCondition/off", byCondition.off(), known);
            reference(faults, "/positionByCondition/accessory", byCondition.accessory(), known);
            reference(faults, "/positionByCondition/run", byCondition.run(), known);
            reference(faults, "/positionByCondition/crank", byCondition.crank(), known);
            reference(faults, "/positionByCondition/running", byCondition.running(), known);
        }
    }

    private static void checkContacts(
            InputErrors faults,
            List<String> terminals,
            List<Position> positions,
            @Nullable List<ContactFault> contactFaults) {
        if (contactFaults == null) {
            return;
        }
        for (int i = 0; i < contactFaults.size(); i++) {
            ContactFault fault = contactFaults.get(i);
            String at = "/contactFaults/" + i;
            fault.between().forEach(name -> reference(faults, at + "/between", name, terminals));
            boolean contact = positions.stream().anyMatch(position -> position.hasContact(fault));
            faults.check(
                    contact || fault.state() == ContactState.BRIDGED,
                    InputError.Code.CONTRADICTION,
                    at + "/between",
                    fault.between(),
                    AcceptedPlan.JOINED_TERMINALS);
        }
    }

    private static void reference(InputErrors faults, String pointer, String name, List<String> known) {
        faults.check(
                known.contains(name),
                InputError.Code.UNKNOWN_REFERENCE,
                pointer,
                name,
                Accepted.ONE_OF,
                texts("names", known));
    }

    /** Whether the operator may set it in any condition. */
    public boolean free() {
        return positionByCondition == null;
    }

    /** The position in a condition, or where a free switch stands. */
    public Position in(Condition condition) {
        if (positionByCondition != null) {
            return get(positionByCondition.in(condition));
        }
        return position == null ? positions.get(0) : get(position);
    }

    /**
     * A way through the switch.
     *
     * @param ohm above 0
     */
    public record ClosedContact(String from, String to, double ohm) {}

    /** What a position really joins, the first of a group with each of the others, its faulty contacts considered. */
    public List<ClosedContact> closedIn(Position position) {
        List<ClosedContact> closed = new ArrayList<>();
        for (List<String> contact : position.contacts()) {
            if (fault(contact, ContactState.OPEN).isEmpty()
                    && fault(contact, ContactState.STUCK).isEmpty()) {
                closed.add(new ClosedContact(
                        contact.get(0),
                        contact.get(1),
                        fault(contact, ContactState.WORN).map(this::ohm).orElse(contactResistanceOhm)));
            }
        }
        closed.addAll(alwaysClosed());
        return closed;
    }

    /** What the plan states to be closed in every position: contacts that are stuck, terminals that are bridged. */
    public List<ClosedContact> alwaysClosed() {
        return faults().filter(fault -> fault.state() == ContactState.STUCK || fault.state() == ContactState.BRIDGED)
                .map(fault -> new ClosedContact(
                        fault.between().get(0), fault.between().get(1), ohm(fault)))
                .toList();
    }

    /** Each contact once, however many positions close it. */
    public List<List<String>> contacts() {
        Set<Set<String>> seen = new HashSet<>();
        return positions.stream()
                .flatMap(position -> position.contacts().stream())
                .filter(contact -> seen.add(Set.copyOf(contact)))
                .toList();
    }

    /** The terminals that a position really joins, in groups. */
    public List<List<String>> joinsIn(Position position) {
        return contactFaults == null
                ? position.joins()
                : closedIn(position).stream()
                        .map(contact -> List.of(contact.from(), contact.to()))
                        .toList();
    }

    /** The resistance of a faulty contact while it is closed, ohms. */
    public double ohm(ContactFault fault) {
        return Bounds.orElse(fault.resistanceOhm(), contactResistanceOhm);
    }

    /** What the plan says of its contacts, in the order of the plan. */
    public Stream<ContactFault> faults() {
        return Stream.ofNullable(contactFaults).flatMap(List::stream);
    }

    private Optional<ContactFault> fault(List<String> between, ContactState state) {
        return faults().filter(fault -> fault.state() == state && fault.isBetween(between))
                .findFirst();
    }

    /** The same switch with all its contacts sound. */
    public Switch sound() {
        return contactFaults == null ? this : with(positions, contactResistanceOhm, List.of());
    }

    /** The same switch with one contact as it is given, whatever was said of it. */
    public Switch withContact(ContactFault fault) {
        return with(
                positions,
                contactResistanceOhm,
                Stream.concat(others(fault.between()), Stream.of(fault)).toList());
    }

    /** The same switch with one contact sound. */
    public Switch withSoundContact(List<String> between) {
        return with(positions, contactResistanceOhm, others(between).toList());
    }

    private Stream<ContactFault> others(List<String> between) {
        return faults().filter(fault -> !fault.isBetween(between));
    }

    /** The same switch with a resistance on top in each of its contacts. */
    public Switch withWorseContacts(double moreOhm) {
        return with(
                positions,
                contactResistanceOhm + moreOhm,
                faults().map(fault -> fault.worse(moreOhm)).toList());
    }

    /** The same switch with contacts that stay as in one position wherever it is put, or as in none. */
    public Switch stayingAs(Optional<Position> stays) {
        List<List<String>> closed =
                new ArrayList<>(stays.map(Position::contacts).orElse(List.of()));
        closed.removeIf(contact -> fault(contact, ContactState.OPEN).isPresent());
        faults().filter(fault -> fault.state() == ContactState.STUCK)
                .map(ContactFault::between)
                .forEach(closed::add);
        return with(
                positions.stream().map(p -> new Position(p.name(), closed)).toList(),
                contactResistanceOhm,
                faults().filter(fault -> fault.state() == ContactState.BRIDGED
                                || closed.stream().anyMatch(fault::isBetween))
                        .toList());
    }

    private Switch with(List<Position> other, double ohm, List<ContactFault> faults) {
        return new Switch(id, label, terminals, other, positionByCondition, position, ohm, ratingA, momentary, faults);
    }

    private Position get(String name) {
        return positions.stream()
                .filter(p -> p.name().equals(name))
                .findFirst()
                .orElseThrow(() -> new IllegalStateException(id + " has no position " + name));
    }

    /** The same free switch in another position. */
    public Switch withPosition(String name) {
        return new Switch(
                id,
                label,
                terminals,
                positions,
                positionByCondition,
                name,
                contactResistanceOhm,
                ratingA,
                momentary,
                contactFaults);
    }

    /** The same switch with one more pole, closed in the positions for which {@code closed} says so. */
    public Switch withPole(String from, String to, Predicate<Position> closed) {
        List<String> more = new ArrayList<>(terminals);
        more.addAll(List.of(from, to));
        return new Switch(
                id,
                label,
                more,
                positions.stream()
                        .map(one -> closed.test(one) ? one.joining(List.of(from, to)) : one)
                        .toList(),
                positionByCondition,
                position,
                contactResistanceOhm,
                ratingA,
                momentary,
                contactFaults);
    }

    /** What is wrong with a contact. */
    public enum ContactState {
        /** Welded: closed in every position. */
        @JsonProperty("stuck")
        STUCK,
        /** It never closes. */
        @JsonProperty("open")
        OPEN,
        /** It closes with a resistance. */
        @JsonProperty("worn")
        WORN,
        /** A way to a neighbour, as by dirt or a bent tongue, in every position. */
        @JsonProperty("bridged")
        BRIDGED
    }

    /**
     * A contact that does not do what the positions say.
     *
     * @param between its two terminals
     * @param resistanceOhm while it is closed; needed if worn, and otherwise that of the others unless said
     */
    public record ContactFault(
            ContactState state,
            List<String> between,
            @Nullable Double resistanceOhm) {
        public ContactFault {
            InputErrors faults = new InputErrors().required("/state", state);
            Bounds.size(faults, "/between", between, 2, 2);
            Bounds.resistance(faults, "/resistanceOhm", resistanceOhm);
            faults.reject();
            Bounds.distinct(faults, "/between", between);
            faults.check(
                    (state != ContactState.WORN || resistanceOhm != null)
                            && (state != ContactState.OPEN || resistanceOhm == null),
                    InputError.Code.CONTRADICTION,
                    "/resistanceOhm",
                    resistanceOhm,
                    AcceptedPlan.OHMS_OF_WORN);
            faults.reject();
            between = List.copyOf(between);
        }

        /** Whether it is of that contact, named from either side. */
        public boolean isBetween(List<String> pair) {
            return between.containsAll(pair);
        }

        private ContactFault worse(double moreOhm) {
            boolean closes = state == ContactState.WORN || state == ContactState.STUCK;
            return closes && resistanceOhm != null ? new ContactFault(state, between, resistanceOhm + moreOhm) : this;
        }
    }

    /**
     * One position.
     *
     * @param name unique in the switch
     * @param joins groups of terminals that are joined, the first of a group with each of the others
     */
    public record Position(String name, List<List<String>> joins) {
        public Position {
            InputErrors faults = new InputErrors().required("/name", name);
            Bounds.text(faults, "/name", name, 1, 40);
            Bounds.size(faults, "/joins", joins, 0, MAX_TERMINALS);
            if (faults.isEmpty()) {
                for (int i = 0; i < joins.size(); i++) {
                    String group = "/joins/" + i;
                    Bounds.size(faults, group, joins.get(i), 2, MAX_TERMINALS);
                    Bounds.distinct(faults, group, joins.get(i));
                }
            }
            faults.reject();
            joins = joins.stream().map(List::copyOf).toList();
        }

        /** The contacts that it closes: the first terminal of a group with each of the others. */
        List<List<String>> contacts() {
            return joins.stream()
                    .flatMap(
                            group -> group.subList(1, group.size()).stream().map(other -> List.of(group.get(0), other)))
                    .toList();
        }

        private boolean hasContact(ContactFault fault) {
            return contacts().stream().anyMatch(fault::isBetween);
        }

        private Position joining(List<String> group) {
            List<List<String>> more = new ArrayList<>(joins);
            more.add(group);
            return new Position(name, more);
        }
    }

    /** The position that a switch tied to the condition has in each. */
    public record PositionByCondition(String off, String accessory, String run, String crank, String running) {
        public PositionByCondition {
            new InputErrors()
                    .required("/off", off)
                    .required("/accessory", accessory)
                    .required("/run", run)
                    .required("/crank", crank)
                    .required("/running", running)
                    .reject();
        }

        String in(Condition condition) {
            return switch (condition) {
                case OFF -> off;
                case ACCESSORY -> accessory;
                case RUN -> run;
                case CRANK -> crank;
                case RUNNING -> running;
            };
        }
    }
}
