package loomwright.conductor;

import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import loomwright.answer.Basis;

/**
 * Sizes named by their strands: {@code 28/0.30} is 28 strands of 0.30 mm, {@code 14/.012} is 14 strands of 0.012 inch.
 *
 * <p>area = number x pi/4 x diameter^2. The resistance is 1.08 times that of solid copper of that area, for the lay of the
 * strands and for tolerances: a trailer-wiring chart prints 1.076 to 1.085 times for six sizes.
 */
final class StrandSizes {
    private static final Pattern FORM = Pattern.compile("([1-9][0-9]{0,3})/([0-9]?\\.[0-9]{1,4})");
    /** Strands thinner than this are given in inches: .012 inch is common, 0.012 mm does not exist in vehicle cable. */
    private static final double THINNEST_MM = 0.07;

    private static final double THICKEST_MM = 3;
    /** Of real cable over solid copper of the same area. */
    private static final double LAY = 1.08;

    private StrandSizes() {}

    /** Any size of that form with strands from 0.07 to 3 mm. */
    static Optional<ConductorSize> find(String text) {
        Matcher form = FORM.matcher(text);
        if (!form.matches()) {
            return Optional.empty();
        }
        int number = Integer.parseInt(form.group(1));
        double written = Double.parseDouble(form.group(2));
        double diameterMm = written < THINNEST_MM ? written * Copper.MM_PER_INCH : written;
        if (diameterMm < THINNEST_MM || diameterMm > THICKEST_MM) {
            return Optional.empty();
        }
        double areaMm2 = number * Math.PI / 4 * diameterMm * diameterMm;
        return Optional.of(new ConductorSize(
                SizeSystem.STRANDS,
                text,
                areaMm2,
                LAY * Copper.RESISTIVITY_OHM_MM2_PER_M / areaMm2,
                Basis.computed(
                        "area of the strands; resistance 1.08 times that of solid copper",
                        "trailer-wiring cable chart of a towing-parts supplier: 1.076 to 1.085 times")));
    }

    /** The size that the trade calls by this area, as 4.5 mm2 for 65/0.30. */
    static Optional<ConductorSize> ofNominalArea(String number) {
        ReferenceTable table = SizeSystem.STRANDS.table();
        return table.rows().stream()
                .filter(row -> !table.getCell(row, "nominalAreaMm2").isBlank())
                .filter(row -> table.getNumber(row, "nominalAreaMm2") == Double.parseDouble(number))
                .flatMap(row -> find(row.get(0)).stream())
                .findFirst();
    }

    static List<ConductorSize> list() {
        return SizeSystem.STRANDS.table().rows().stream()
                .map(row -> find(row.get(0)).orElseThrow())
                .toList();
    }
}
