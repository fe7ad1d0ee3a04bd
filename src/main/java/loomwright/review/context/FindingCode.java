package loomwright.review.context;

import loomwright.message.MessageCode;

/** Everything that a review can find. More may be added. */
public enum FindingCode implements MessageCode {
    /** The pole on the chassis is not the one that the plan says. */
    EARTH_POLARITY_CONTRADICTED,
    /** A battery in series is turned, so that it works against those before it. */
    SERIES_BATTERY_REVERSED,
    /** A wire carries more than its continuous current. */
    WIRE_OVERLOADED,
    /** A wire gets too hot within one cranking period. */
    WIRE_OVERLOADED_CRANKING,
    /** A wire lies where it is hotter than its insulation stands. */
    INSULATION_TEMPERATURE_EXCEEDED,
    /** A fusible link carries more than a wire of its size may. */
    LINK_OVERLOADED,
    /** A load that should be live does not work. */
    LOAD_NOT_POWERED,
    /** A lead is off: nothing is joined to a terminal of a part in use. */
    TERMINAL_NOT_CONNECTED,
    /** The return of a load never leads to earth. */
    NO_RETURN,
    /** More volts are lost between source and load than is usual for its kind of circuit. */
    VOLTAGE_DROP,
    /** An earth point loses too much. */
    EARTH_DROP,
    CONTACT_OVERLOADED,
    DIODE_OVERLOADED,
    /** A spike diode across a winding lets the feed through. */
    DIODE_REVERSED,
    /** An LED lamp or polarised load is fed the wrong way round. */
    POLARITY_REVERSED,
    CONNECTOR_OVERLOADED,
    /** The two halves of a connector cannot be pushed together. */
    CONNECTOR_HALVES_DO_NOT_FIT,
    RESISTOR_OVERHEATED,
    /** A filament lamp gets far more volts than it is made for. */
    LAMP_OVERVOLTAGE,
    /** The winding of a relay or solenoid gets far more volts than it is made for. */
    WINDING_OVERVOLTAGE,
    /** An alternator or the supply while running is regulated to more than the system stands. */
    CHARGING_VOLTAGE_HIGH,

    CHARGING_VOLTAGE_LOW,

    /** A battery is charged at fewer volts than its machine gives, as through a blocking diode. */
    CHARGING_DROP,

    /** The plan states that a contact of a switch is stuck, open, worn or bridged. */
    CONTACT_FAULTY,
    /** The sense terminal of an alternator has lost its wire, or measures far less than its output. */
    SENSE_LOST,

    /** Too little flows in the exciter terminal of an alternator for it to charge. */
    NOT_EXCITED,
    /** The plan states that a main diode of an alternator is open or shorted. */
    RECTIFIER_FAULTY,

    GENERATOR_OVERLOADED,
    /** At the speed that the plan states an alternator or dynamo gives less than runs with the engine. */
    GENERATOR_SLOW,
    /** A motor is held fast while it has current. */
    MOTOR_STALLED,
    GAUGES_READ_HIGH,
    /** A switch takes the battery off a machine that goes on charging. */
    BATTERY_OFF_WHILE_CHARGING,
    /** Current flows with the key off that no switch turns off. */
    KEY_OFF_DRAIN,
    /** The lamps of a flasher unit take too little for it to flash. */
    FLASHER_NOT_FLASHING,
    /** They take so little that it flashes at twice its rate. */
    FLASHER_FAST,
    /** They take more than it is made for. */
    FLASHER_OVERLOADED,
    /** A fuse carries so many times its rating that there must be a short. */
    FUSE_BLOWS_AT_ONCE,
    /** A fuse carries more than its rating. */
    FUSE_OVERLOADED,
    /** A fuse carries more than is good for it in the long run. */
    FUSE_NEAR_LIMIT,
    /** A fuse does not protect the smallest wire behind it. */
    FUSE_TOO_LARGE,
    /** A fusible link is not enough smaller than the smallest wire behind it. */
    LINK_TOO_LARGE,
    /** Battery, starter and charging cables without a fuse, as is usual. */
    UNFUSED_CABLE,
    /** A long lead between battery and first fuse. */
    UNFUSED_LEAD,
    /** A circuit without any fuse. */
    UNFUSED_CIRCUIT,
    /** A directed wire carries current backwards. */
    REVERSED_WIRE,
    /** A load is fed that should not be. */
    BACKFEED,
    /** A condition has no solution. */
    UNSOLVABLE,
    /** A battery is almost shorted. */
    DEAD_SHORT,
    /** A circuit undoes its own state. */
    OSCILLATING,
    /** Which part is quicker decides the state. */
    RELAY_RACE,
    /** A load asks for more power than its feed can give. */
    SUPPLY_OVERLOADED,
    COIL_VOLTAGE_LOW,
    /** The bypass of a ballast joins two feeds. */
    BYPASS_NOT_ISOLATED,
    BATTERY_LOW_CRANKING,
    /** The module has to limit the current of the coil. */
    MODULE_LIMITS_CURRENT,
    /** An ignition module has too few volts to work, or to be sure to. */
    MODULE_SUPPLY_LOW;
}
