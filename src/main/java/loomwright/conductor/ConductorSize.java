package loomwright.conductor;

import java.util.List;
import loomwright.answer.Basis;

/**
 * One conductor size of one standard, copper.
 *
 * @param system the standard
 * @param name as the trade writes it; {@link #parse} reads it back to the same size
 * @param areaMm2 area: geometric for AWG, nominal for metric sizes, minimum for SAE
 * @param resistanceOhmPerM20C resistance at 20 C: of the solid wire for AWG, the permitted maximum for metric sizes (plain
 *     copper), 1/58 ohm mm2/m over the minimum area for SAE
 * @param basis where the figures come from
 */
public record ConductorSize(SizeSystem system, String name, double areaMm2, double resistanceOhmPerM20C, Basis basis) {
    public ConductorSize {
        if (!(areaMm2 > 0 && resistanceOhmPerM20C > 0)) {
            throw new IllegalArgumentException("size " + name + " must have an area and a resistance");
        }
    }

    /**
     * Reads a size as people type it: {@code 14}, {@code 14AWG}, {@code AWG 14}, {@code 2/0}, {@code 00}, {@code 2.5mm2},
     * {@code 2,5 mm²}, {@code SAE 14}, {@code IEC 2.5 mm2}, {@code ISO 6722 3 mm2}; capitals do not matter.
     *
     * <p>A bare number is an American gauge, unless it is also a metric size (as 10 and 16 are): that is refused, with
     * both readings named. Bare 12 and 20 are read as gauges all the same: they are among the commonest gauges, and 12 and
     * 20 mm2 cable is rare. A bare decimal number (2.5) can only be square millimetres. Square millimetres without a
     * standard are IEC 60228 class 5, whose figures were verified; where only ISO 6722 has the size, that. The name and
     * the basis of the result say which.
     *
     * @param text at most 32 characters; read in time linear in its length
     * @throws loomwright.answer.RejectedInput pointer "": MALFORMED where the text is ambiguous or not a size,
     *     OUT_OF_RANGE where it is too long or a gauge outside 4/0 to 24, NOT_ONE_OF where the table lacks the size
     */
    public static ConductorSize parse(String text) {
        return SizeCatalogue.find(text).orElseGet(() -> new SizeText(text).read());
    }

    /** All sizes of a standard, the smallest first. */
    public static List<ConductorSize> list(SizeSystem system) {
        return SizeCatalogue.list(system);
    }

    /** The sizes of a standard that the trade sells, the smallest first: of gauges those that a table of currents prints. */
    public static List<ConductorSize> listTrade(SizeSystem system) {
        return list(system).stream()
                .filter(size -> system != SizeSystem.AWG || size.isTradeGauge())
                .toList();
    }

    private boolean isTradeGauge() {
        String gauge = name.substring(0, name.indexOf(' '));
        return List.of(AmpacityTable.values()).stream()
                .anyMatch(table -> table.table().findRow(gauge).isPresent());
    }

    /**
     * Resistance per metre at a conductor temperature.
     *
     * <p>R = R20 (1 + 0.00393 (T - 20)).
     *
     * @param temperatureC conductor temperature
     * @return ohm per metre
     */
    public double resistanceOhmPerM(double temperatureC) {
        return resistanceOhmPerM20C * Copper.resistanceRatio(temperatureC);
    }

    /**
     * Resistance per metre of vehicle wire of this size: for AWG and SAE sizes 1.08 times that of solid copper, for metric
     * sizes their permitted maximum, for a wire with a data sheet that.
     *
     * @param temperatureC conductor temperature
     * @return ohm per metre
     *     <p>Source: makers' tables of stranded cable have 1.08 times the ideal of their area.
     */
    public double wireOhmPerM(double temperatureC) {
        boolean solid = system == SizeSystem.AWG || system == SizeSystem.SAE;
        return resistanceOhmPerM(temperatureC) * (solid ? Copper.STRANDING : 1);
    }

    /**
     * The same size with the resistance of a data sheet.
     *
     * @param ohmPerM at 20 C
     */
    public ConductorSize withWireOhmPerM20C(double ohmPerM, Basis source) {
        double stranding = wireOhmPerM(Copper.REFERENCE_C) / resistanceOhmPerM20C;
        return new ConductorSize(system, name, areaMm2, ohmPerM / stranding, source);
    }

    /** Area in circular mils: the square of the diameter in thousandths of an inch. */
    public double circularMils() {
        return Copper.circularMils(areaMm2);
    }

    /** Diameter of the solid round wire of this area; a stranded conductor is thicker. */
    public double diameterMm() {
        return Copper.diameterMm(areaMm2);
    }
}
