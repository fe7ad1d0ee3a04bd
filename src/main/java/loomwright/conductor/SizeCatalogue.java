package loomwright.conductor;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import loomwright.answer.Basis;

/** All sizes of all standards; AWG by its rule, the others from their tables. */
final class SizeCatalogue {
    /** ASTM B258: diameter of gauge 36, ratio of the diameters of 4/0 and 36, and the steps between them. */
    private static final double DIAMETER_OF_36_MM = 0.127;

    private static final double DIAMETER_RATIO = 92;
    private static final double STEPS = 39;
    /** Gauge numbers of 4/0 and of the thinnest wire carried. */
    static final int THICKEST_GAUGE = -3;

    static final int THINNEST_GAUGE = 24;

    private static final Map<SizeSystem, List<ConductorSize>> SIZES = build();

    /** No two sizes have one name. */
    private static final Map<String, ConductorSize> BY_NAME = SIZES.values().stream()
            .flatMap(List::stream)
            .collect(Collectors.toUnmodifiableMap(ConductorSize::name, size -> size));

    private SizeCatalogue() {}

    /** The size of just that name. */
    static Optional<ConductorSize> find(String name) {
        return Optional.ofNullable(BY_NAME.get(name));
    }

    static List<ConductorSize> list(SizeSystem system) {
        return SIZES.getOrDefault(system, List.of());
    }

    static Optional<ConductorSize> find(SizeSystem system, String name) {
        return list(system).stream().filter(s -> s.name().equals(name)).findFirst();
    }

    /** How a gauge number is written: 1/0 for 0, 2/0 for -1. */
    static String gaugeText(int gauge) {
        return gauge > 0 ? String.valueOf(gauge) : (1 - gauge) + "/0";
    }

    private static Map<SizeSystem, List<ConductorSize>> build() {
        Map<SizeSystem, List<ConductorSize>> sizes = new EnumMap<>(SizeSystem.class);
        sizes.put(SizeSystem.AWG, awg());
        sizes.put(SizeSystem.METRIC_IEC60228, metric(SizeSystem.METRIC_IEC60228, "maxOhmPerKm20CPlain", ""));
        sizes.put(SizeSystem.METRIC_ISO6722, metric(SizeSystem.METRIC_ISO6722, "maxMilliohmPerM20C", "ISO "));
        sizes.put(SizeSystem.SAE, sae());
        sizes.put(SizeSystem.STRANDS, StrandSizes.list());
        sizes.replaceAll((system, list) -> list.stream()
                .sorted(Comparator.comparingDouble(ConductorSize::areaMm2))
                .toList());
        return sizes;
    }

    private static List<ConductorSize> awg() {
        Basis basis = SizeSystem.AWG.table().basis("diameter by the gauge rule, resistance of solid annealed copper");
        List<ConductorSize> sizes = new ArrayList<>();
        for (int gauge = THICKEST_GAUGE; gauge <= THINNEST_GAUGE; gauge++) {
            double diameterMm = DIAMETER_OF_36_MM * Math.pow(DIAMETER_RATIO, (36 - gauge) / STEPS);
            double areaMm2 = Math.PI / 4 * diameterMm * diameterMm;
            sizes.add(new ConductorSize(
                    SizeSystem.AWG,
                    gaugeText(gauge) + " AWG",
                    areaMm2,
                    Copper.RESISTIVITY_OHM_MM2_PER_M / areaMm2,
                    basis));
        }
        return sizes;
    }

    /** Both columns are ohm per kilometre: a milliohm per metre is the same. */
    private static List<ConductorSize> metric(SizeSystem system, String ohmPerKmColumn, String prefix) {
        ReferenceTable table = system.table();
        return table.rows().stream()
                .map(row -> new ConductorSize(
                        system,
                        prefix + table.getCell(row, "areaMm2") + " mm2",
                        table.getNumber(row, "areaMm2"),
                        table.getNumber(row, ohmPerKmColumn) / 1000,
                        table.basis("maximum resistance of the size", row)))
                .toList();
    }

    private static List<ConductorSize> sae() {
        ReferenceTable table = SizeSystem.SAE.table();
        List<ConductorSize> sizes = new ArrayList<>();
        for (List<String> row : table.rows()) {
            double areaMm2 = Math.min(
                    orInfinity(table.getCell(row, "j1128MinAreaMm2")),
                    orInfinity(table.getCell(row, "minCircularMils")) * Copper.MM2_PER_CIRCULAR_MIL);
            sizes.add(new ConductorSize(
                    SizeSystem.SAE,
                    "SAE " + row.get(0),
                    areaMm2,
                    Copper.RESISTIVITY_OHM_MM2_PER_M / areaMm2,
                    table.basis("minimum area of the size, resistance of annealed copper of that area", row)));
        }
        return sizes;
    }

    private static double orInfinity(String cell) {
        return cell.isBlank() ? Double.POSITIVE_INFINITY : Double.parseDouble(cell);
    }
}
