package loomwright.circuit;

import java.util.List;
import loomwright.answer.InputErrors;

/**
 * Two connector halves pushed together: terminals of the same name are joined.
 *
 * @param id unique among the connectors
 * @param halves the two {@link ConnectorHalf} parts
 * @param contactResistanceOhm of each contact
 */
public record Connector(String id, List<String> halves, Double contactResistanceOhm) {
    public Connector {
        InputErrors faults = Bounds.id(new InputErrors(), "/id", id);
        Bounds.size(faults, "/halves", halves, 2, 2);
        if (faults.isEmpty()) {
            for (int i = 0; i < 2; i++) {
                Bounds.id(faults, "/halves/" + i, halves.get(i));
            }
            Bounds.distinct(faults, "/halves", halves);
        }
        Bounds.resistance(faults, "/contactResistanceOhm", contactResistanceOhm).reject();
        halves = List.copyOf(halves);
        contactResistanceOhm = Bounds.orElse(contactResistanceOhm, Switch.CONTACT_OHM);
    }
}
