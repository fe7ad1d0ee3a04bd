package loomwright.ignition.change;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import loomwright.answer.Basis;
import loomwright.answer.Finding;
import loomwright.answer.Severity;
import loomwright.conductor.Ampacity;
import loomwright.conductor.AmpacityTable;
import loomwright.conductor.ConductorSize;
import loomwright.conductor.FuseChoice;
import loomwright.conductor.LinkRating;
import loomwright.ignition.WorkingNumber;
import loomwright.ignition.spark.SparkResult;
import loomwright.ignition.spark.SwitchInput;
import org.jspecify.annotations.Nullable;

/** The lasting current of a change against feed wire, fuse and fusible link. */
final class CarriedCurrent {
    private static final double INSULATION_C = 105;
    private static final double AMBIENT_C = 50;

    private final ChangeInput input;
    private final SparkResult before;
    private final SparkResult after;
    private final List<Finding> findings = new ArrayList<>();
    private final List<String> working = new ArrayList<>();

    CarriedCurrent(ChangeInput input, SparkResult before, SparkResult after) {
        this.input = input;
        this.before = before;
        this.after = after;
    }

    List<Finding> list(@Nullable ConductorSize wire, @Nullable ConductorSize link) {
        if (wire != null) {
            wire(wire);
        }
        fuse();
        if (link != null) {
            fusibleLink(link, wire);
        }
        return findings;
    }

    List<String> working() {
        return working;
    }

    /** The largest current that lasts: running, or key on with the primary closed, which a module switches off itself. */
    private double lastingA() {
        boolean module = input.after().primarySwitch().kind() == SwitchInput.Kind.MODULE;
        return Math.max(after.at().allCoilsA(), module ? 0 : after.closed().currentA());
    }

    private void wire(ConductorSize size) {
        Optional<Ampacity> allowed = allowed(size);
        double currentA = lastingA();
        allowed.ifPresent(ampacity -> working.add("Wire " + size.name() + ": table "
                + WorkingNumber.of(ampacity.tableA()) + " A, with its corrections "
                + WorkingNumber.of(ampacity.allowedA())
                + " A; lasting current " + WorkingNumber.of(currentA) + " A"));
        if (allowed.isEmpty()) {
            findings.add(new Finding(
                    Severity.NOTE,
                    "wire-not-in-tables",
                    List.of("feed"),
                    "No table of continuous current lists " + size.name() + " with this insulation.",
                    List.of(new Finding.Figure("currentA", currentA)),
                    Basis.computed("tables looked up", "33 CFR 183.425 Table 5, AC 43.13-1B table 11-9"),
                    null));
        } else if (allowed.get().allowedA() < currentA) {
            findings.add(new Finding(
                    Severity.DANGER,
                    "wire-overloaded",
                    List.of("feed"),
                    "The feed wire carries " + WorkingNumber.of(currentA) + " A for long (before: "
                            + WorkingNumber.of(before.at().allCoilsA()) + " A running); " + size.name() + " may carry "
                            + WorkingNumber.of(allowed.get().allowedA()) + " A here.",
                    List.of(
                            new Finding.Figure("currentA", currentA),
                            new Finding.Figure("allowedA", allowed.get().allowedA())),
                    allowed.get().basis().get(0),
                    "A thicker feed wire, or a relay near the coil with a wire of its own."));
        }
    }

    private Optional<Ampacity> allowed(ConductorSize size) {
        Double insulation = input.wireInsulationC();
        Double ambient = input.ambientC();
        double ambientC = ambient == null ? AMBIENT_C : ambient;
        Ampacity.Conditions conditions =
                Ampacity.Conditions.of(insulation == null ? INSULATION_C : insulation, ambientC);
        return Stream.of(AmpacityTable.values())
                .flatMap(table -> Ampacity.find(size, table, conditions).stream())
                .findFirst();
    }

    private void fuse() {
        Double fuseA = input.fuseA();
        double currentA = lastingA();
        if (fuseA != null && currentA > FuseChoice.LOAD_SHARE * fuseA) {
            findings.add(new Finding(
                    Severity.WARNING,
                    "fuse-too-small",
                    List.of("fuse"),
                    "The fuse of " + WorkingNumber.of(fuseA) + " A carries " + WorkingNumber.of(currentA)
                            + " A for long (before: "
                            + WorkingNumber.of(before.at().allCoilsA())
                            + " A running); " + FuseChoice.LOAD_PERCENT
                            + " of its rating is the most it should carry, peaks at break are "
                            + WorkingNumber.of(after.at().peakA()) + " A.",
                    List.of(new Finding.Figure("currentA", currentA), new Finding.Figure("ratingA", fuseA)),
                    FuseChoice.LOAD_BASIS,
                    "A fuse of at least " + WorkingNumber.of(currentA / FuseChoice.LOAD_SHARE)
                            + " A, if the wire behind it carries that."));
        }
    }

    private void fusibleLink(ConductorSize size, @Nullable ConductorSize behind) {
        double currentA = lastingA();
        Optional<Ampacity> allowed = allowed(size);
        if (allowed.isPresent() && allowed.get().allowedA() < currentA) {
            findings.add(new Finding(
                    Severity.WARNING,
                    "fusible-link-overloaded",
                    List.of("fusible-link"),
                    "The fusible link of " + size.name() + " carries " + WorkingNumber.of(currentA)
                            + " A for long; as a wire it may carry "
                            + WorkingNumber.of(allowed.get().allowedA()) + " A.",
                    List.of(
                            new Finding.Figure("currentA", currentA),
                            new Finding.Figure("allowedA", allowed.get().allowedA())),
                    allowed.get().basis().get(0),
                    "A thicker feed wire with the link that belongs to it."));
        }
        if (behind != null && size.areaMm2() > linkAreaMm2(behind) * 1.01) {
            findings.add(new Finding(
                    Severity.WARNING,
                    "fusible-link-too-thick",
                    List.of("fusible-link", "feed"),
                    "The fusible link of " + size.name() + " does not protect a feed wire of " + behind.name()
                            + ": it should be four gauge numbers thinner.",
                    List.of(
                            new Finding.Figure("linkAreaMm2", size.areaMm2()),
                            new Finding.Figure("wireAreaMm2", behind.areaMm2())),
                    Basis.commonPractice("fusible link four gauge numbers smaller than the wire it protects"),
                    LinkRating.find(behind, 20)
                            .map(l -> "A link of " + l.size() + ".")
                            .orElse("A fuse: the tables have no wire so thin.")));
        }
    }

    /** Area of the link that belongs to a wire, 0 where the tables have none. */
    private static double linkAreaMm2(ConductorSize wire) {
        return LinkRating.find(wire, 20)
                .map(link -> wire.areaMm2() * link.areaRatio())
                .orElse(0.0);
    }
}
