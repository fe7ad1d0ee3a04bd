package loomwright.drawing.diagram;

import java.util.Arrays;
import java.util.stream.Collectors;
import loomwright.message.MessageCode;
import org.jspecify.annotations.Nullable;

/** Colours of insulation by the letters of IEC 60757, and how they are drawn. */
public enum Insulation implements MessageCode {
    BK("#1a1a1a"),
    BN("#8a4b1f"),
    RD("#d3202a"),
    OG("#f08a1c"),
    YE("#f7d51d"),
    GN("#2d8f3c"),
    BU("#2766c4"),
    VT("#7d3f98"),
    GY("#8f9499"),
    WH("#ffffff"),
    PK("#f39bb5"),
    GD("#c9a227"),
    TQ("#35b5ac"),
    SR("#c3c7cb"),
    /** A wire whose colour is not stated. */
    NONE("#e3e3e3");

    private final String drawn;

    Insulation(String drawn) {
        this.drawn = drawn;
    }

    static Insulation of(String code) {
        return Arrays.stream(values())
                .filter(one -> one.name().equals(code))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("no colour " + code));
    }

    /** A colour code in words, body first: {@code RDBK} is red/black. Empty for none. */
    public static String words(@Nullable String code) {
        return Wordings.colours(code).stream().map(one -> of(one).text()).collect(Collectors.joining("/"));
    }

    String drawn() {
        return drawn;
    }
}
