package loomwright.review.part;

import static loomwright.message.Arg.arg;

import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import loomwright.answer.Basis;
import loomwright.answer.Finding;
import loomwright.answer.Severity;
import loomwright.circuit.Switch;
import loomwright.circuit.Switch.ContactFault;
import loomwright.circuit.Switch.ContactState;
import loomwright.review.context.Check;
import loomwright.review.context.FindingCode;
import loomwright.review.context.ReviewContext;
import loomwright.review.context.ReviewText;

/** Contacts of switches of which the plan itself says that they are faulty. What they lead to is found by the other checks. */
public final class FaultyContacts implements Check {
    private static final Basis STATED = Basis.computed("the contacts of each switch", "what the plan says of them");

    @Override
    public List<Finding> check(ReviewContext context) {
        return context.plan().listParts(Switch.class).stream()
                .flatMap(chosen -> Stream.ofNullable(chosen.contactFaults())
                        .flatMap(List::stream)
                        .map(fault -> finding(chosen, fault)))
                .toList();
    }

    private static Finding finding(Switch chosen, ContactFault fault) {
        String state = fault.state().name().toLowerCase(Locale.ROOT);
        return Finding.of(
                        fault.state() == ContactState.WORN ? Severity.NOTE : Severity.WARNING,
                        FindingCode.CONTACT_FAULTY.with(
                                arg("switch", chosen.thing()),
                                arg("from", fault.between().get(0)),
                                arg("to", fault.between().get(1)),
                                arg("state", state),
                                arg("resistanceOhm", chosen.ohm(fault))),
                        STATED)
                .remedy(ReviewText.REPLACE_CONTACTS.with(
                        arg("switch", chosen.thing()), arg("worn", fault.state() == ContactState.WORN ? "yes" : "no")));
    }
}
