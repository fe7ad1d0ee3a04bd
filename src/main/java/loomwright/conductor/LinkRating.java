package loomwright.conductor;

import java.util.List;
import java.util.Optional;
import loomwright.answer.Basis;

/**
 * A fusible link for a wire.
 *
 * @param size the link wire: four AWG numbers smaller than the wire it protects
 * @param areaRatio its area over that of the wire
 * @param minLengthM shortest usual length
 * @param maxLengthM longest usual length
 * @param preeceA steady current that melts it bare in free air
 * @param onderdonk1sA current that melts it in 1 s, no heat leaving it
 * @param onderdonk10sA the same in 10 s
 */
public record LinkRating(
        String size,
        double areaRatio,
        double minLengthM,
        double maxLengthM,
        double preeceA,
        double onderdonk1sA,
        double onderdonk10sA) {
    /** Common practice: four numbers smaller; 6 to 9 in long. */
    private static final int NUMBERS_SMALLER = 4;

    private static final double MIN_LENGTH_M = 0.15;
    private static final double MAX_LENGTH_M = 0.23;
    /** Area ratio of four gauge numbers by the gauge rule: 92^(-8/39). */
    private static final double AREA_RATIO = Math.pow(92, -2.0 * NUMBERS_SMALLER / 39);

    private static final double ROUNDING = 1 + 1e-9;

    /**
     * The link for a wire.
     *
     * <p>AWG and SAE: four numbers smaller. Metric: the thickest size of its standard with at most 0.3955 of the area,
     * which is what four gauge numbers are.
     *
     * @param wire the wire to protect
     * @param ambientC for the melting current in a given time, -60 to 400 C
     * @return empty if the tables have no wire so thin
     *     <p>Source: common practice, no source; Preece and Onderdonk see {@link FusingCurrent}.
     */
    public static Optional<LinkRating> find(ConductorSize wire, double ambientC) {
        return linkSize(wire)
                .map(link -> new LinkRating(
                        link.name(),
                        link.areaMm2() / wire.areaMm2(),
                        MIN_LENGTH_M,
                        MAX_LENGTH_M,
                        FusingCurrent.preeceA(link.diameterMm()),
                        FusingCurrent.onderdonkA(link.areaMm2(), 1, ambientC),
                        FusingCurrent.onderdonkA(link.areaMm2(), FusingCurrent.ONDERDONK_MAX_S, ambientC)));
    }

    public static List<Basis> basis() {
        return List.of(
                Basis.commonPractice(
                        "fusible link: copper, four gauge numbers smaller than the wire, 150 to 230 mm long,"
                                + " insulation that does not burn, never inside the cabin"),
                Basis.verified("steady current that melts a bare wire: 10244 d^1.5, d in inches", "Preece's equation"),
                Basis.verified("current that melts a wire in a short time, no heat lost", "Onderdonk's equation"));
    }

    private static Optional<ConductorSize> linkSize(ConductorSize wire) {
        if (wire.system() == SizeSystem.SAE) {
            return saeGauge(wire);
        }
        return ConductorSize.list(wire.system()).stream()
                .filter(s -> s.areaMm2() <= wire.areaMm2() * AREA_RATIO * ROUNDING)
                .reduce((thinner, thicker) -> thicker);
    }

    private static Optional<ConductorSize> saeGauge(ConductorSize wire) {
        String number = wire.name().substring("SAE ".length());
        int gauge = number.endsWith("/0") ? 1 - Integer.parseInt(number.substring(0, 1)) : Integer.parseInt(number);
        return SizeCatalogue.find(SizeSystem.SAE, "SAE " + SizeCatalogue.gaugeText(gauge + NUMBERS_SMALLER));
    }
}
