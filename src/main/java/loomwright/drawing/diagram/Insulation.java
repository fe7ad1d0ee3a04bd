package loomwright.drawing.diagram;

import java.util.Arrays;

/** Colours of insulation by the letters of IEC 60757, and how they are drawn. */
enum Insulation {
    BK("black", "#1a1a1a"),
    BN("brown", "#8a4b1f"),
    RD("red", "#d3202a"),
    OG("orange", "#f08a1c"),
    YE("yellow", "#f7d51d"),
    GN("green", "#2d8f3c"),
    BU("blue", "#2766c4"),
    VT("violet", "#7d3f98"),
    GY("grey", "#8f9499"),
    WH("white", "#ffffff"),
    PK("pink", "#f39bb5"),
    GD("gold", "#c9a227"),
    TQ("turquoise", "#35b5ac"),
    SR("silver", "#c3c7cb"),
    /** A wire whose colour is not stated. */
    NONE("not stated", "#e3e3e3");

    private final String words;
    private final String drawn;

    Insulation(String words, String drawn) {
        this.words = words;
        this.drawn = drawn;
    }

    static Insulation of(String code) {
        return Arrays.stream(values())
                .filter(one -> one.name().equals(code))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("no colour " + code));
    }

    String words() {
        return words;
    }

    String drawn() {
        return drawn;
    }
}
