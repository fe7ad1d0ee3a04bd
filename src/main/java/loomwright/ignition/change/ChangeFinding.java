package loomwright.ignition.change;

import loomwright.message.MessageCode;

/** What stands against a change of the ignition, and what to do about it. */
public enum ChangeFinding implements MessageCode {
    BALLAST_OVERLOADED,
    GAP_WITHOUT_ENERGY,
    WIRE_OVERLOADED,
    FUSE_TOO_LARGE,
    FUSE_NEAR_LIMIT,
    FUSE_TOO_SMALL,
    FUSIBLE_LINK_OVERLOADED,
    FUSIBLE_LINK_TOO_THICK,
    BYPASS_WITHOUT_BALLAST,
    BYPASS_NOT_ISOLATED,
    BYPASS_STARTS_ENGINE,
    BYPASS_HOLDS_STARTER,
    BYPASS_FEEDS_BACK,
    // What to do.
    FIT_LARGER_BALLAST,
    KEEP_GAP,
    FIT_THICKER_WIRE,
    SPLIT_LOAD_OVER_WIRES,
    SPLIT_LOAD,
    FIT_SMALLER_FUSE,
    FIT_LARGER_FUSE,
    FIT_LARGER_FUSE_AND_WIRE,
    FIT_THICKER_FEED_AND_LINK,
    FIT_THINNER_LINK,
    FIT_FUSE_INSTEAD_OF_LINK,
    REMOVE_BYPASS,
    REMOVE_BYPASS_OR_FIT_DIODE,
    MOVE_BYPASS_OR_FIT_DIODE
}
