package loomwright.sizing;

import static loomwright.message.Arg.arg;

import java.util.ArrayList;
import java.util.List;
import loomwright.answer.Answer;
import loomwright.answer.Basis;
import loomwright.answer.Caution;
import loomwright.answer.Finding;
import loomwright.circuit.Place;
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
     * @param currentA continuous current
     * @param powerW rated watts instead
     * @param lengthM one way, metres
     * @param lengthFt one way, feet
     * @param returnPath default CHASSIS
     * @param chassisOhm resistance of the chassis return; default 0.01
     * @param supplyV voltage at the source; default 12
     * @param limitV permitted drop; default by the load
     * @param system sizes to choose from; default METRIC_ISO6722
     * @param insulationC default 80, PVC
     * @param ambientC default that of its place
     * @param place default CABIN
     * @param bundleCount loaded wires in the bundle; default 1. If given, the bundle lowers what the wire may carry
     */
    public record Input(
            @Nullable CircuitLoad load,
            @Nullable Double currentA,
            @Nullable Double powerW,
            @Nullable Double lengthM,
            @Nullable Double lengthFt,
            @Nullable ReturnPath returnPath,
            @Nullable Double chassisOhm,
            @Nullable Double supplyV,
            @Nullable Double limitV,
            @Nullable SizeSystem system,
            @Nullable Double insulationC,
            @Nullable Double ambientC,
            @Nullable Place place,
            @Nullable Integer bundleCount) {

        CircuitLoad kind() {
            return load == null ? CircuitLoad.OTHER : load;
        }

        ConductorSizing.Input sizing() {
            return new ConductorSizing.Input(
                    currentA,
                    powerW,
                    lengthM,
                    lengthFt,
                    path(),
                    chassisOhm,
                    null,
                    null,
                    supplyV,
                    limitV,
                    null,
                    kind().drop(),
                    system == null ? SizeSystem.METRIC_ISO6722 : system,
                    insulationC,
                    ambientC,
                    place,
                    bundleCount,
                    bundleCount == null ? null : Boolean.TRUE,
                    null);
        }

        private ReturnPath path() {
            return returnPath == null && !kind().drop().ofLiveSide()
                    ? ReturnPath.CHASSIS
                    : Checked.path(returnPath, kind().drop());
        }

        VoltageDrop.Input drop(double loadA, String size) {
            return new VoltageDrop.Input(
                    loadA,
                    null,
                    size,
                    lengthM,
                    lengthFt,
                    path(),
                    null,
                    null,
                    null,
                    chassisOhm,
                    null,
                    null,
                    null,
                    ambientC,
                    place,
                    insulationC,
                    bundleCount,
                    bundleCount == null ? null : Boolean.TRUE,
                    null,
                    supplyV,
                    limitV,
                    null,
                    kind().drop());
        }

        FuseChoice.Input fuse(double loadA, String size) {
            return new FuseChoice.Input(
                    loadA,
                    null,
                    null,
                    null,
                    kind().surges() ? kind().surge() * loadA : null,
                    kind().surges() ? kind().surgeS() : null,
                    size,
                    insulationC,
                    ambientC,
                    place,
                    bundleCount,
                    bundleCount == null ? null : Boolean.TRUE,
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
     * @param fuseA the fuse for the load; absent if no standard fuse suits this wire
     * @param fuseInrush what that fuse does at switch-on; absent without a fuse
     * @param largestFuseA the largest fuse that the wire allows; absent if none is so small
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
            @Nullable Double fuseA,
            FuseRule.@Nullable Kind fuseKind,
            FuseChoice.@Nullable Inrush fuseInrush,
            @Nullable Double largestFuseA,
            Verdict drop,
            Verdict wire) {}

    /**
     * The circuit.
     *
     * @param currentA while it runs
     * @param surgeA when it is switched on
     * @param surgeS how long that lasts
     * @param decider the requirement that decides the smallest size
     * @param smallest the smallest that will do; absent if there is none
     * @param usual the usual choice; absent if there is none
     * @param switchA rating of a switch that carries the load itself; absent if a relay is needed
     * @param relayA rating of a relay; absent if no usual one carries it
     * @param dependsOn what was assumed and would turn the size chosen into a finding
     */
    public record Result(
            CircuitLoad load,
            double currentA,
            double surgeA,
            double surgeS,
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
        Wire smallest = wire(input, currentA, sizing.size());
        Wire usual = wire(input, currentA, sizing.usualSize());
        Result result = new Result(
                load,
                currentA,
                load.surge() * currentA,
                load.surgeS(),
                sizing.decider(),
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
        String better = fuse.betterSize();
        if (fuse.ratingA() == null && better != null) {
            return wire(input, currentA, better);
        }
        VoltageDrop.Result drop =
                VoltageDrop.calculate(input.drop(currentA, size)).result();
        return new Wire(
                size,
                ConductorSize.parse(size).areaMm2(),
                drop.totalV(),
                drop.loadV(),
                fuse.allowedA(),
                drop.out().temperatureC(),
                fuse.ratingA(),
                fuse.kind(),
                fuse.chosenInrush(),
                fuse.largestA(),
                drop.verdict(),
                drop.wireVerdict());
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
        lines.add(CircuitMessage.LOAD_DRAWS.with(arg("currentA", result.currentA())));
        if (result.load().surges()) {
            lines.add(CircuitMessage.LOAD_SURGES.with(arg("surgeA", result.surgeA()), arg("surgeS", result.surgeS())));
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
        Double fuseA = wire.fuseA();
        if (fuseA != null) {
            lines.add(CircuitMessage.FUSE_CHOSEN.with(
                    arg("size", wire.size()),
                    arg("ratingA", fuseA),
                    arg("mayBlow", wire.fuseInrush() == FuseChoice.Inrush.MAY_BLOW ? "yes" : "no")));
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
