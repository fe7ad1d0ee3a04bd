package loomwright.service.conductor;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import loomwright.answer.Finding;
import loomwright.conductor.ConductorSize;
import loomwright.message.Message;
import loomwright.service.form.Table;
import loomwright.sizing.CircuitSizing;
import loomwright.sizing.ConductorSizing;
import loomwright.sizing.FeedSizing;
import loomwright.sizing.FuseChoice;
import loomwright.sizing.SizingText;
import loomwright.sizing.VoltageDrop;
import org.jspecify.annotations.Nullable;

/** Drop, size and fuse as one figure and as one table. */
public final class WireForms {
    public static final List<String> DROP =
            List.of("part", "size", "lengthM", "temperatureC", "resistanceOhm", "dropV", "heatWPerM");
    public static final List<String> SIZE =
            List.of("rule", "size", "areaMm2", "value", "limit", "dropV", "allowedA", "fuseA");
    public static final List<String> FUSE = List.of(
            "ratingA", "kind", "colour", "load", "wire", "ofAmpacity", "overloadTemperatureC", "inrush", "chosen");

    public static final List<String> CIRCUIT = List.of(
            "choice",
            "size",
            "areaMm2",
            "currentA",
            "dropV",
            "loadV",
            "allowedA",
            "fuseA",
            "fuseKind",
            "largestFuseA",
            "switchA",
            "relayA");

    public static final List<String> FEED = List.of(
            "part", "label", "currentA", "budgetV", "size", "areaMm2", "dropV", "totalV", "fuseA", "switchA", "relayA");

    private WireForms() {}

    /** The feed, then each branch, with the smallest sizes. */
    public static Table table(FeedSizing.Result feed) {
        List<List<@Nullable Object>> rows = new ArrayList<>();
        rows.add(feedRow("feed", null, feed.budgetV(), feed.feed(), null));
        feed.branches()
                .forEach(branch -> rows.add(
                        feedRow("branch", branch.label(), branch.budgetV(), branch.circuit(), branch.totalV())));
        return new Table(FEED, rows);
    }

    private static List<@Nullable Object> feedRow(
            String part,
            @Nullable String label,
            double budgetV,
            CircuitSizing.Result circuit,
            @Nullable Double totalV) {
        CircuitSizing.Wire wire = circuit.smallest();
        return Arrays.asList(
                part,
                label,
                circuit.draws().currentA(),
                budgetV,
                wire == null ? null : wire.size(),
                wire == null ? null : wire.areaMm2(),
                wire == null ? null : wire.dropV(),
                totalV,
                wire == null ? null : wire.fuse().fuseA(),
                circuit.switchA(),
                circuit.relayA());
    }

    /** The smallest that will do, then the usual choice. */
    public static Table table(CircuitSizing.Result circuit) {
        return new Table(
                CIRCUIT, List.of(row(circuit, "smallest", circuit.smallest()), row(circuit, "usual", circuit.usual())));
    }

    private static List<@Nullable Object> row(
            CircuitSizing.Result circuit, String choice, CircuitSizing.@Nullable Wire wire) {
        return wire == null
                ? Arrays.asList(
                        choice,
                        null,
                        null,
                        circuit.draws().currentA(),
                        null,
                        null,
                        null,
                        null,
                        null,
                        null,
                        circuit.switchA(),
                        circuit.relayA())
                : Arrays.asList(
                        choice,
                        wire.size(),
                        wire.areaMm2(),
                        circuit.draws().currentA(),
                        wire.dropV(),
                        wire.loadV(),
                        wire.allowedA(),
                        wire.fuse().fuseA(),
                        wire.fuse().fuseKind(),
                        wire.fuse().largestFuseA(),
                        circuit.switchA(),
                        circuit.relayA());
    }

    /** Copper of the smallest size that will do, mm2. */
    public static OptionalDouble areaMm2(CircuitSizing.Result circuit) {
        CircuitSizing.Wire wire = circuit.smallest();
        return wire == null ? OptionalDouble.empty() : OptionalDouble.of(wire.areaMm2());
    }

    /** Why there is none. */
    public static Message whyNone(CircuitSizing.Result circuit) {
        return circuit.findings().stream().map(Finding::message).findFirst().orElseGet(SizingText.NO_SIZE_CHOSEN::with);
    }

    /** One row per wire, joint and chassis in the direction of the current, then the total. */
    public static Table table(VoltageDrop.Result drop) {
        List<List<@Nullable Object>> rows = new ArrayList<>();
        rows.add(row("out", drop.drops().out()));
        drop.drops().jointsOutV().forEach(volts -> rows.add(row("joint out", volts)));
        if (drop.drops().back() != null) {
            rows.add(row("back", drop.drops().back()));
        }
        if (drop.drops().chassisV() > 0) {
            rows.add(row("chassis", drop.drops().chassisV()));
        }
        drop.drops().jointsBackV().forEach(volts -> rows.add(row("joint back", volts)));
        rows.add(Arrays.asList(
                "total", null, null, null, drop.total().totalOhm(), drop.total().totalV(), null));
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
        Double area = areaMm2(sizing.sizes().size());
        return area == null ? OptionalDouble.empty() : OptionalDouble.of(area);
    }

    /** Why no size was chosen. */
    public static Message whyNone(ConductorSizing.Result sizing) {
        return sizing.byRule().stream()
                .filter(rule -> rule.size() == null)
                .findFirst()
                .map(ConductorSizing::noSize)
                .orElseGet(SizingText.NO_SIZE_CHOSEN::with);
    }

    /** One row per requirement with the smallest size that meets it, then the smallest that will do and the usual choice. */
    public static Table table(ConductorSizing.Result sizing) {
        List<List<@Nullable Object>> rows = new ArrayList<>();
        sizing.byRule()
                .forEach(rule -> rows.add(Arrays.asList(
                        rule.rule(), rule.size(), areaMm2(rule.size()), rule.value(), rule.limit(), null, null, null)));
        rows.add(row("smallest", sizing.sizes().smallest()));
        rows.add(row("usual", sizing.sizes().usual()));
        return new Table(SIZE, rows);
    }

    private static List<@Nullable Object> row(String name, ConductorSizing.@Nullable Choice choice) {
        return choice == null
                ? Arrays.asList(name, null, null, null, null, null, null, null)
                : Arrays.asList(
                        name,
                        choice.size(),
                        choice.areaMm2(),
                        null,
                        null,
                        choice.dropV(),
                        choice.allowedA(),
                        choice.fuseA());
    }

    private static @Nullable Double areaMm2(@Nullable String size) {
        return size == null ? null : ConductorSize.parse(size).areaMm2();
    }

    /** The chosen rating in ampere. */
    public static OptionalDouble ratingA(FuseChoice.Result choice) {
        return choice.choice().ratingA() == null
                ? OptionalDouble.empty()
                : OptionalDouble.of(choice.choice().ratingA());
    }

    /** One row per standard rating. */
    public static Table table(FuseChoice.Result choice) {
        return new Table(
                FUSE,
                choice.ratings().stream()
                        .map(one -> Arrays.<@Nullable Object>asList(
                                one.ratingA(),
                                one.kind(),
                                one.colour(),
                                one.load(),
                                one.wire(),
                                one.ofAmpacity(),
                                one.overloadTemperatureC(),
                                one.inrush(),
                                Double.valueOf(one.ratingA())
                                        .equals(choice.choice().ratingA())))
                        .toList());
    }
}
