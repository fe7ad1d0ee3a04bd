package loomwright.sizing;

import static loomwright.message.Arg.arg;

import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.util.ArrayList;
import java.util.List;
import loomwright.answer.Answer;
import loomwright.answer.Basis;
import loomwright.answer.Caution;
import loomwright.answer.Finding;
import loomwright.conductor.ConductorSize;
import loomwright.conductor.SizeSystem;
import loomwright.judgement.ContactRule;
import loomwright.judgement.Dependence;
import loomwright.judgement.LampLaw;
import loomwright.judgement.Verdict;
import loomwright.judgement.wire.FuseRule;
import loomwright.message.Message;
import org.jspecify.annotations.Nullable;

/** One circuit from its load: current, wire, fuse, switch and relay, asked of the functions that answer each alone. */
public final class CircuitSizing {
    private CircuitSizing() {}

    /**
     * What is asked. Required: one of {@code currentA}, {@code powerW} and one of {@code lengthM}, {@code lengthFt}.
     *
     * @param load what it feeds; default OTHER
     * @param returnPath default CHASSIS
     * @param chassisOhm resistance of the chassis return; default 0.01
     * @param supplyV voltage at the source; default 12
     * @param limitV permitted drop; default by the load
     * @param system sizes to choose from; default METRIC_ISO6722
     */
    public record Input(
            @Nullable CircuitLoad load,
            @JsonUnwrapped LoadRating rating,
            @JsonUnwrapped RunLength run,
            @Nullable ReturnPath returnPath,
            @Nullable Double chassisOhm,
            @Nullable Double supplyV,
            @Nullable Double limitV,
            @Nullable SizeSystem system,
            @JsonUnwrapped Laying laying) {

        CircuitLoad kind() {
            return load == null ? CircuitLoad.OTHER : load;
        }

        ConductorSizing.Input sizing() {
            return new ConductorSizing.Input(
                    rating,
                    run,
                    path(),
                    new ConductorSizing.FixedOhms(chassisOhm, null),
                    null,
                    supplyV,
                    new PermittedDrop(limitV, null, kind().drop()),
                    system == null ? SizeSystem.METRIC_ISO6722 : system,
                    laying.withFactorsOfBundle(),
                    null);
        }

        private ReturnPath path() {
            return returnPath == null && !kind().drop().ofLiveSide()
                    ? ReturnPath.CHASSIS
                    : Checked.path(returnPath, kind().drop());
        }

        VoltageDrop.Input drop(double loadA, String size) {
            return new VoltageDrop.Input(
                    LoadRating.ofA(loadA),
                    new VoltageDrop.FeedWire(size, null, null),
                    run,
                    new VoltageDrop.ReturnRun(path(), null, null, null, chassisOhm),
                    null,
                    null,
                    laying.withFactorsOfBundle(),
                    supplyV,
                    new PermittedDrop(limitV, null, kind().drop()));
        }

        FuseChoice.Input fuse(double loadA, String size) {
            return new FuseChoice.Input(
                    LoadRating.ofA(loadA),
                    null,
                    null,
                    new FuseChoice.SwitchOn(
                            kind().surges() ? kind().surge() * loadA : null, kind().surges() ? kind().surgeS() : null),
                    size,
                    laying.withFactorsOfBundle(),
                    null,
                    supplyV,
                    null);
        }
    }

    /**
     * One wire with what follows from it.
     *
     * @param dropV lost from the source to the load and back
     * @param loadV left for the load
     * @param allowedA what it may carry continuously where it lies
     * @param temperatureC as warm as the load makes it
     * @param drop the drop against its limit
     * @param wire the current against what the wire may carry
     */
    public record Wire(
            String size,
            double areaMm2,
            double dropV,
            @Nullable Double loadV,
            double allowedA,
            double temperatureC,
            @JsonUnwrapped WireFuse fuse,
            Verdict drop,
            Verdict wire) {}

    /**
     * The fuse of one wire.
     *
     * @param fuseA the fuse for the load; absent if no standard fuse suits this wire
     * @param fuseInrush what that fuse does at switch-on; absent without a fuse
     * @param largestFuseA the largest fuse that the wire allows; absent if none is so small
     */
    public record WireFuse(
            @Nullable Double fuseA,
            FuseRule.@Nullable Kind fuseKind,
            FuseChoice.@Nullable Inrush fuseInrush,
            @Nullable Double largestFuseA) {}

    /**
     * The circuit.
     *
     * @param decider the requirement that decides the smallest size
     * @param smallest the smallest that will do; absent if there is none
     * @param usual the usual choice; absent if there is none
     * @param switchA rating of a switch that carries the load itself; absent if a relay is needed
     * @param relayA rating of a relay; absent if no usual one carries it
     * @param dependsOn what was assumed and would turn the size chosen into a finding
     */
    public record Result(
            CircuitLoad load,
            @JsonUnwrapped LoadCurrents draws,
            ConductorSizing.Decider decider,
            @Nullable Wire smallest,
            @Nullable Wire usual,
            @Nullable Double switchA,
            @Nullable Double relayA,
            List<Dependence> dependsOn,
            List<Finding> findings) {
        public Result {
            dependsOn = List.copyOf(dependsOn);
            findings = List.copyOf(findings);
        }
    }

    /**
     * What the load draws.
     *
     * @param currentA while it runs
     * @param surgeA when it is switched on
     * @param surgeS how long that lasts
     */
    public record LoadCurrents(double currentA, double surgeA, double surgeS) {}

    /**
     * Sizes a circuit.
     *
     * @param input see there
     * @throws loomwright.answer.RejectedInput with the pointers of the input's properties
     */
    public static Answer<Result> size(Input input) {
        Answer<ConductorSizing.Result> sized = ConductorSizing.size(input.sizing());
        ConductorSizing.Result sizing = sized.result();
        CircuitLoad load = input.kind();
        double currentA = sizing.currentA();
        Wire smallest = wire(input, currentA, sizing.sizes().size());
        Wire usual = wire(input, currentA, sizing.sizes().usualSize());
        Result result = new Result(
                load,
                new LoadCurrents(currentA, load.surge() * currentA, load.surgeS()),
                sizing.sizes().decider(),
                smallest,
                usual == null || smallest == null || usual.areaMm2() >= smallest.areaMm2() ? usual : smallest,
                ContactRule.switchA(currentA, load.surges()).orElse(null),
                ContactRule.relayA(currentA, load.surges()).orElse(null),
                sizing.dependsOn(),
                smallest == null ? List.of(noWire(currentA, sizing)) : List.of());
        return new Answer<>(result, working(result), basis(sized), sized.assumptions(), sized.cautions());
    }

    /** A wire whose fuse bears the switch-on: the size asked about, or the next that allows such a fuse. */
    private static @Nullable Wire wire(Input input, double currentA, @Nullable String size) {
        if (size == null) {
            return null;
        }
        FuseChoice.Result fuse = FuseChoice.choose(input.fuse(currentA, size)).result();
        String better = fuse.wire().betterSize();
        if (fuse.choice().ratingA() == null && better != null) {
            return wire(input, currentA, better);
        }
        VoltageDrop.Result drop =
                VoltageDrop.calculate(input.drop(currentA, size)).result();
        return new Wire(
                size,
                ConductorSize.parse(size).areaMm2(),
                drop.total().totalV(),
                drop.total().loadV(),
                fuse.wire().allowedA(),
                drop.drops().out().temperatureC(),
                new WireFuse(
                        fuse.choice().ratingA(),
                        fuse.choice().kind(),
                        fuse.chosenInrush(),
                        fuse.choice().largestA()),
                drop.judged().verdict(),
                drop.judged().wireVerdict());
    }

    private static Finding noWire(double currentA, ConductorSizing.Result sizing) {
        return Finding.warning(
                        CircuitMessage.NO_WIRE_WILL_DO.with(
                                arg("currentA", currentA),
                                arg("limitV", sizing.limit().newWireV())),
                        sizing.limit().basis())
                .remedy(CircuitMessage.SHORTEN_OR_DIVIDE.with());
    }

    static List<Message> working(Result result) {
        List<Message> lines = new ArrayList<>();
        lines.add(CircuitMessage.LOAD_DRAWS.with(arg("currentA", result.draws().currentA())));
        if (result.load().surges()) {
            lines.add(CircuitMessage.LOAD_SURGES.with(
                    arg("surgeA", result.draws().surgeA()),
                    arg("surgeS", result.draws().surgeS())));
        }
        for (Wire wire : new @Nullable Wire[] {result.smallest(), result.usual()}) {
            if (wire != null) {
                lines.addAll(working(wire));
            }
        }
        return lines.stream().distinct().toList();
    }

    static List<Message> working(Wire wire) {
        List<Message> lines = new ArrayList<>();
        lines.add(CircuitMessage.WIRE_CHOSEN.with(
                arg("size", wire.size()), arg("dropV", wire.dropV()), arg("allowedA", wire.allowedA())));
        Double fuseA = wire.fuse().fuseA();
        if (fuseA != null) {
            lines.add(CircuitMessage.FUSE_CHOSEN.with(
                    arg("size", wire.size()),
                    arg("ratingA", fuseA),
                    arg("mayBlow", wire.fuse().fuseInrush() == FuseChoice.Inrush.MAY_BLOW ? "yes" : "no")));
        }
        return lines;
    }

    static List<Basis> basis(Answer<ConductorSizing.Result> sized) {
        List<Basis> basis = new ArrayList<>(sized.basis());
        basis.add(CircuitLoad.SURGE_BASIS);
        basis.add(ContactRule.BASIS);
        basis.add(LampLaw.CURRENT_BASIS);
        return basis.stream().distinct().toList();
    }

    static List<Caution> cautions() {
        return List.of(Caution.DISCONNECT_BATTERY, Caution.LOCAL_CODES);
    }
}
