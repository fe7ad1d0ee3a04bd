package loomwright.answer;

/** The cautions of the trade. An answer carries those that apply to it, the last one always. */
public enum Caution {
    DISCONNECT_BATTERY("Disconnect the battery before you touch the wiring; take the earthed terminal off first and put"
            + " it back last."),
    HIGH_TENSION("The ignition coil gives tens of kilovolts, and several hundred volts at its primary: keep hands and"
            + " meters off while the engine turns. People with a pacemaker stay away."),
    MOVING_PARTS("The engine can turn: keep hands, hair and leads clear of fan, belts and flywheel, put the gearbox in"
            + " neutral."),
    FUEL_VAPOUR("Fuel vapour and battery gas can catch fire from a spark: ventilate, and keep sparks and flames away."),
    HOT_BALLAST("A ballast resistor and a coil grow hot enough to burn skin and insulation: let them cool, mount them"
            + " clear of wiring."),
    KEY_LEFT_ON("Do not leave the key on with the engine stopped: with the contacts closed coil and ballast heat up"
            + " all the while."),
    UNFUSED_SUPPLY("This circuit has wire without a fuse between it and the battery: a chafed wire there can start a"
            + " fire."),
    LIVE_WHEN_OFF("Something stays live when it should be dead: isolate the battery until it is put right."),
    HIGH_CURRENT("A battery can deliver hundreds of amperes: remove rings and watch straps, and keep tools from"
            + " bridging its terminals."),
    LOCAL_CODES("This is a calculation, not an inspection. Local codes and a licensed or qualified electrician have"
            + " the last word.");

    private final String text;

    Caution(String text) {
        this.text = text;
    }

    /** The caution as a sentence for the person at the vehicle. */
    public String text() {
        return text;
    }
}
