package loomwright.conductor;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;

/**
 * A checked {@link ConductorSizing.Input}.
 *
 * @param lengthM length of the run, one way
 * @param wireM length of wire in all: twice the run with a return wire
 * @param fixedOhm chassis and joints
 * @param cranking whether the current flows only for one go of the starter
 */
record SizingCase(
        double currentA,
        double lengthM,
        double wireM,
        double fixedOhm,
        double temperatureC,
        DropLimit limit,
        List<ConductorSize> candidates,
        Ampacity.Conditions conditions,
        boolean insulationAssumed,
        double supplyV,
        boolean cranking,
        List<AmpacityTable> tables) {
    /** AC 43.13-1B table 11-9 note 1: the largest bundle its figures cover. */
    private static final int AC43_BUNDLE = 33;

    static SizingCase of(ConductorSizing.Input input) {
        Checked checked = new Checked();
        double currentA = checked.current("/currentA", input.currentA());
        double lengthM = checked.length(input.lengthM(), input.lengthFt());
        ReturnPath path = input.returnPath() == null ? ReturnPath.WIRE : input.returnPath();
        checked.chassis(path, input.chassisOhm());
        double chassisOhm = checked.ohm("/chassisOhm", input.chassisOhm());
        double jointsOhm = checked.ohm("/jointsOhm", input.jointsOhm());
        double supplyV = checked.supply(input.supplyV());
        boolean bundleFactors =
                input.bundleFactors() == null ? supplyV >= Ampacity.BUNDLE_RULE_FROM_V : input.bundleFactors();
        Ampacity.Conditions conditions = checked.conditions(
                input.insulationC(),
                input.ambientC(),
                Boolean.TRUE.equals(input.engineSpace()),
                input.bundleCount(),
                bundleFactors);
        double temperatureC = checked.temperature("/temperatureC", input.temperatureC(), conditions.ambientC());
        DropLimit limit = checked.limit(input.limitV(), input.limitPercent(), input.circuit(), supplyV);
        AmpacityTable named = input.ampacityTable();
        List<AmpacityTable> tables = named == null ? List.of(AmpacityTable.values()) : List.of(named);
        checked.reject();
        return new SizingCase(
                currentA,
                lengthM,
                path == ReturnPath.WIRE ? 2 * lengthM : lengthM,
                chassisOhm + jointsOhm,
                temperatureC,
                limit,
                candidates(input.system() == null ? SizeSystem.AWG : input.system()),
                conditions,
                input.insulationC() == null,
                supplyV,
                input.circuit() == CircuitKind.STARTER && named == null,
                tables);
    }

    ConductorSizing.Result solve() {
        Optional<ConductorSize> byDrop = smallest(size -> dropV(size) <= limit.limitV());
        List<ConductorSizing.ByTable> byTable = tables.stream()
                .map(this::byTable)
                .sorted(Comparator.comparingDouble(SizingCase::caution).reversed())
                .toList();
        ConductorSizing.ByCrankingHeat byHeat = cranking ? byCrankingHeat() : null;
        Optional<ConductorSize> byCurrent = Optional.ofNullable(
                        byHeat == null ? byTable.get(0).size() : byHeat.size())
                .map(ConductorSize::parse);
        ConductorSizing.Decider decider = decider(byDrop, byCurrent);
        Optional<ConductorSize> chosen =
                byDrop.flatMap(drop -> byCurrent.map(amp -> amp.areaMm2() > drop.areaMm2() ? amp : drop));
        ConductorSize thickest = candidates.get(candidates.size() - 1);
        return new ConductorSizing.Result(
                chosen.map(ConductorSize::name).orElse(null),
                decider,
                chosen.map(this::dropV).orElse(null),
                new ConductorSizing.ByDrop(
                        byDrop.map(ConductorSize::name).orElse(null), dropV(byDrop.orElse(thickest)), limit),
                byTable,
                byHeat,
                byCircularMils(),
                notes());
    }

    private double dropV(ConductorSize size) {
        return currentA * (ohmPerM(size) * wireM + fixedOhm);
    }

    /** With the twist of the strands, which the figures of metric sizes contain already. */
    double ohmPerM(ConductorSize size) {
        boolean maximumKnown =
                size.system() == SizeSystem.METRIC_IEC60228 || size.system() == SizeSystem.METRIC_ISO6722;
        double stranding = maximumKnown ? 1 : Copper.STRANDING;
        return size.resistanceOhmPerM(temperatureC) * stranding;
    }

    private ConductorSizing.ByTable byTable(AmpacityTable table) {
        Optional<ConductorSize> size = smallest(s -> carries(s, table, conditions));
        return new ConductorSizing.ByTable(
                table,
                size.map(ConductorSize::name).orElse(null),
                size.flatMap(s -> Ampacity.find(s, table, conditions)).orElse(null));
    }

    private boolean carries(ConductorSize size, AmpacityTable table, Ampacity.Conditions under) {
        return Ampacity.find(size, table, under)
                .filter(a -> a.allowedA() >= currentA)
                .isPresent();
    }

    /** The more copper a table asks for the more cautious; one that no size satisfies most. */
    private static double caution(ConductorSizing.ByTable choice) {
        String size = choice.size();
        return size == null ? Double.MAX_VALUE : ConductorSize.parse(size).areaMm2();
    }

    private ConductorSizing.ByCrankingHeat byCrankingHeat() {
        Optional<ConductorSize> size = smallest(s -> CrankingHeat.bears(crankingS(s)));
        return new ConductorSizing.ByCrankingHeat(
                size.map(ConductorSize::name).orElse(null),
                crankingS(size.orElse(candidates.get(candidates.size() - 1))),
                CrankingHeat.GO_S);
    }

    private double crankingS(ConductorSize size) {
        return CrankingHeat.timeS(size, currentA, conditions.ambientC(), conditions.insulationC());
    }

    private ConductorSizing.Decider decider(Optional<ConductorSize> byDrop, Optional<ConductorSize> byCurrent) {
        if (byDrop.isEmpty() || byCurrent.isEmpty()) {
            return ConductorSizing.Decider.NO_SUCH_SIZE;
        }
        int more = Double.compare(byDrop.get().areaMm2(), byCurrent.get().areaMm2());
        if (more == 0) {
            return ConductorSizing.Decider.BOTH;
        }
        if (more > 0) {
            return ConductorSizing.Decider.DROP;
        }
        return cranking ? ConductorSizing.Decider.CRANKING_HEAT : ConductorSizing.Decider.AMPACITY;
    }

    private ConductorSizing.@Nullable ByCircularMils byCircularMils() {
        double leftV = limit.limitV() - currentA * fixedOhm;
        if (leftV <= 0) {
            return null;
        }
        double needed = ConductorSizing.circularMils(currentA, wireM / Copper.METRES_PER_FOOT, leftV);
        return new ConductorSizing.ByCircularMils(
                needed,
                smallest(s -> s.circularMils() >= needed)
                        .map(ConductorSize::name)
                        .orElse(null));
    }

    private List<String> notes() {
        List<String> notes = new ArrayList<>();
        if (insulationAssumed) {
            notes.add(Checked.Defaults.INSULATION_NOTE);
        }
        double bundle = Ampacity.bundleFactor(conditions.bundleCount());
        if (bundle < 1 && !conditions.bundleFactors() && tables.contains(AmpacityTable.US_33CFR183)) {
            Ampacity.Conditions bundled = new Ampacity.Conditions(
                    conditions.insulationC(),
                    conditions.ambientC(),
                    conditions.engineSpace(),
                    conditions.bundleCount(),
                    true);
            String size = smallest(s -> carries(s, AmpacityTable.US_33CFR183, bundled))
                    .map(ConductorSize::name)
                    .orElse("no size of this system");
            notes.add("33 CFR 183.435(b) asks for the bundle factor " + FigureText.text(bundle) + " (for "
                    + conditions.bundleCount() + " wires) only from 50 V on; applied here as a caution it gives "
                    + size);
        }
        if (conditions.bundleCount() > AC43_BUNDLE && tables.contains(AmpacityTable.AC43_13)) {
            notes.add("AC 43.13-1B table 11-9 covers bundles of " + AC43_BUNDLE
                    + " wires, 9 from 8 AWG on: this bundle is larger");
        }
        if (tables.contains(AmpacityTable.US_33CFR183)) {
            notes.add("33 CFR 183.425 wants at least 16 AWG for a wire by itself, 18 AWG in a sheath");
        }
        if (tables.contains(AmpacityTable.AC43_13)) {
            notes.add("AC 43.13-1B table 11-9 is for large bundles at height: much below a single wire on the ground");
        }
        return notes;
    }

    private Optional<ConductorSize> smallest(Predicate<ConductorSize> fits) {
        return candidates.stream().filter(fits).findFirst();
    }

    /** The sizes of a standard that the trade sells. */
    static List<ConductorSize> candidates(SizeSystem system) {
        return ConductorSize.list(system).stream()
                .filter(s -> system != SizeSystem.AWG || isTradeGauge(s))
                .toList();
    }

    private static boolean isTradeGauge(ConductorSize size) {
        String gauge = size.name().substring(0, size.name().indexOf(' '));
        return List.of(AmpacityTable.values()).stream()
                .anyMatch(t -> t.table().findRow(gauge).isPresent());
    }
}
