package loomwright.circuit.fault;

import java.util.List;
import loomwright.circuit.Plan;

/**
 * One mistake or defect: a change to a plan whose parts and wires keep their ids and terminals, so that what is solved can be
 * compared with the sound plan name by name.
 */
public sealed interface SingleFault
        permits SwappedLeads,
                CrossedConnectors,
                WireOff,
                MisplacedWire,
                StuckRelay,
                SizedFault,
                BlownFuse,
                LostEarth,
                StuckSwitch,
                OpenContact,
                SoundContact,
                OpenInside,
                NotCharging {

    /** The kinds of fault. */
    enum Kind {
        LEADS_SWAPPED,
        CONNECTORS_CROSSED,
        WIRE_OFF,
        WIRE_MISPLACED,
        RELAY_STUCK_OPEN,
        RELAY_STUCK_CLOSED,
        BAD_JOINT,
        FUSE_BLOWN,
        EARTH_LOST,
        SHORT_TO_EARTH,
        OPEN_INSIDE,
        BATTERY_DISCHARGED,
        BATTERY_WORN,
        NOT_CHARGING,
        SHORT_INSIDE,
        WIRES_TOUCH,
        VALUE_OFF,
        CONTACTS_WORN,
        REGULATOR_OFF,
        SWITCH_STUCK,
        CONTACT_OPEN,
        CONTACT_WORN,
        CONTACT_SOUND
    }

    Kind kind();

    /** The parts, wires and connectors that are not as they should be. */
    List<String> ids();

    /**
     * The plan with the fault in it.
     *
     * @throws IllegalArgumentException if the fault is not one of this plan
     */
    Plan applyTo(Plan plan);
}
