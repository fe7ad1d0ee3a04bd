package loomwright.answer;

import loomwright.message.MessageCode;

/** The cautions of the trade. An answer carries those that apply to it, the last one always. */
public enum Caution implements MessageCode {
    DISCONNECT_BATTERY,
    HIGH_TENSION,
    MOVING_PARTS,
    FUEL_VAPOUR,
    HOT_BALLAST,
    KEY_LEFT_ON,
    UNFUSED_SUPPLY,
    LIVE_WHEN_OFF,
    HIGH_CURRENT,
    LOCAL_CODES
}
