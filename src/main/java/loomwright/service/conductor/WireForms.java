package loomwright.service.conductor;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import loomwright.conductor.Ampacity;
import loomwright.conductor.ConductorSize;
import loomwright.conductor.ConductorSizing;
import loomwright.conductor.FuseChoice;
import loomwright.conductor.VoltageDrop;
import loomwright.service.form.CellNumbers;
import loomwright.service.form.Table;
import org.jspecify.annotations.Nullable;

/** Drop, size and fuse as one figure and as one table. */
public final class WireForms {
    public static final List<String> DROP =
            List.of("part", "size", "lengthM", "temperatureC", "resistanceOhm", "dropV", "heatWPerM");
    public static final List<String> SIZE = List.of("rule", "size", "areaMm2", "dropV", "allowedA");
    public static final List<String> FUSE =
            List.of("ratingA", "colour", "carriesLoad", "withinAmpacity", "inrush", "protectsWire", "chosen");

    private WireForms() {}

    /** One row per wire, joint and chassis in the direction of the current, then the total. */
    public static Table table(VoltageDrop.Result drop) {
        List<List<@Nullable Object>> rows = new ArrayList<>();
        rows.add(row("out", drop.out()));
        drop.jointsOutV().forEach(volts -> rows.add(row("joint out", volts)));
        if (drop.back() != null) {
            rows.add(row("back", drop.back()));
        }
        if (drop.chassisV() > 0) {
            rows.add(row("chassis", drop.chassisV()));
        }
        drop.jointsBackV().forEach(volts -> rows.add(row("joint back", volts)));
        rows.add(Arrays.asList("total", null, null, null, drop.totalOhm(), drop.totalV(), null));
        return new Table(DROP, rows);
    }

    private static List<@Nullable Object> row(String part, VoltageDrop.Wire wire) {
        return Arrays.asList(
                part,
                wire.size(),
                wire.lengthM(),
                wire.temperatureC(),
                wire.resistanceOhm(),
                wire.dropV(),
                wire.heatWPerM());
    }

    private static List<@Nullable Object> row(String part, double volts) {
        return Arrays.asList(part, null, null, null, null, volts, null);
    }

    /** Area of the chosen size in mm2. */
    public static OptionalDouble areaMm2(ConductorSizing.Result sizing) {
        Double area = areaMm2(sizing.size());
        return area == null ? OptionalDouble.empty() : OptionalDouble.of(area);
    }

    /** Why no size was chosen. */
    public static String whyNone(ConductorSizing.Result sizing) {
        return sizing.byDrop().size() == null
                ? "no size of the system keeps the drop at "
                        + CellNumbers.text(sizing.byDrop().limit().limitV()) + " V"
                : "no size of the system carries the current";
    }

    /** One row per rule with the smallest size it allows, then the chosen one. */
    public static Table table(ConductorSizing.Result sizing) {
        List<List<@Nullable Object>> rows = new ArrayList<>();
        ConductorSizing.ByDrop byDrop = sizing.byDrop();
        rows.add(Arrays.asList("drop", byDrop.size(), areaMm2(byDrop.size()), byDrop.dropV(), null));
        for (ConductorSizing.ByTable choice : sizing.byAmpacity()) {
            Ampacity ampacity = choice.ampacity();
            rows.add(Arrays.asList(
                    choice.table(),
                    choice.size(),
                    areaMm2(choice.size()),
                    null,
                    ampacity == null ? null : ampacity.allowedA()));
        }
        ConductorSizing.ByCrankingHeat heat = sizing.byCrankingHeat();
        if (heat != null) {
            rows.add(Arrays.asList("cranking-heat", heat.size(), areaMm2(heat.size()), null, null));
        }
        ConductorSizing.ByCircularMils mils = sizing.byCircularMils();
        if (mils != null) {
            rows.add(Arrays.asList("circular-mils", mils.size(), areaMm2(mils.size()), null, null));
        }
        rows.add(Arrays.asList("chosen", sizing.size(), areaMm2(sizing.size()), sizing.dropV(), null));
        return new Table(SIZE, rows);
    }

    private static @Nullable Double areaMm2(@Nullable String size) {
        return size == null ? null : ConductorSize.parse(size).areaMm2();
    }

    /** The chosen rating in ampere. */
    public static OptionalDouble ratingA(FuseChoice.Result choice) {
        return choice.ratingA() == null ? OptionalDouble.empty() : OptionalDouble.of(choice.ratingA());
    }

    /** One row per standard rating. */
    public static Table table(FuseChoice.Result choice) {
        return new Table(
                FUSE,
                choice.ratings().stream()
                        .map(one -> Arrays.<@Nullable Object>asList(
                                one.ratingA(),
                                one.colour(),
                                one.carriesLoad(),
                                one.withinAmpacity(),
                                one.inrush(),
                                one.protectsWire(),
                                Double.valueOf(one.ratingA()).equals(choice.ratingA())))
                        .toList());
    }
}
