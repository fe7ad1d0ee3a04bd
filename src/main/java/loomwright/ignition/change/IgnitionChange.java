package loomwright.ignition.change;

import static loomwright.message.Arg.arg;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import loomwright.answer.Answer;
import loomwright.answer.Basis;
import loomwright.answer.Caution;
import loomwright.answer.Finding;
import loomwright.answer.InputErrors;
import loomwright.answer.RejectedInput;
import loomwright.conductor.ConductorSize;
import loomwright.ignition.change.ChangeResult.Compared;
import loomwright.ignition.spark.Spark;
import loomwright.ignition.spark.SparkCurves;
import loomwright.ignition.spark.SparkInput;
import loomwright.ignition.spark.SparkPoint;
import loomwright.ignition.spark.SparkResult;
import loomwright.message.Message;
import org.jspecify.annotations.Nullable;

/** A change of coil, module, ballast or gap, judged against everything that has to carry the new current. */
public final class IgnitionChange {
    private IgnitionChange() {}

    /**
     * Both ignitions side by side with the findings of the change.
     *
     * <p>Each side is the spark calculation; nothing is calculated twice. One vehicle has one supply: a side without one has
     * that of the other, and if none is given both have the one usual with the coil before.
     *
     * @param asked both ignitions and the ratings that are known
     * @return figures and findings; what is not given is not judged
     * @throws RejectedInput with every fault, those of the two sides under /before and /after
     */
    public static Answer<ChangeResult> calculate(ChangeInput asked) {
        ChangeInput input = asked.onOneSupply().withSwitchRatings();
        InputErrors faults = new InputErrors()
                .range("/contactsA", input.fitted().contactsA(), 0.5, 30)
                .range("/moduleA", input.fitted().moduleA(), 0.5, 60)
                .range("/ballastW", input.fitted().ballastW(), 0.1, 1000)
                .range("/wireInsulationC", input.fitted().wireInsulationC(), 60, 250)
                .range("/ambientC", input.fitted().ambientC(), -60, 55)
                .range("/fuseA", input.fitted().fuseA(), 0.5, 500)
                .range("/solenoidOhm", input.bypass().solenoidOhm(), 0.05, 100);
        ConductorSize wire = size(faults, "/wireSize", input.fitted().wireSize());
        ConductorSize link = size(faults, "/fusibleLinkSize", input.fitted().fusibleLinkSize());
        Answer<SparkResult> before = side(faults, "/before", input.before());
        Answer<SparkResult> after = side(faults, "/after", input.after());
        faults.reject();
        if (before == null || after == null) {
            throw new IllegalStateException("a side without faults was not calculated");
        }
        ChangeFindings findings = new ChangeFindings(input, before.result(), after.result(), wire, link);
        ChangeResult result = new ChangeResult(
                before.result(), after.result(), compared(before.result(), after.result()), findings.list());
        List<Message> working = new ArrayList<>(asked.supplyWorking().stream().toList());
        before.working().forEach(line -> working.add(ChangeText.BEFORE.with(arg("line", line))));
        after.working().forEach(line -> working.add(ChangeText.AFTER.with(arg("line", line))));
        working.addAll(findings.working());
        List<Basis> basis = new ArrayList<>(before.basis());
        basis.addAll(after.basis());
        result.findings().forEach(finding -> basis.add(finding.basis()));
        return new Answer<>(
                result, working, basis.stream().distinct().toList(), cautions(before, after, result.findings()));
    }

    /**
     * The curves of both ignitions over the same speeds and supplies.
     *
     * @return before and after
     * @throws RejectedInput with every fault of the two sides, under /before and /after
     */
    public static List<SparkCurves> curves(ChangeInput asked) {
        ChangeInput input = asked.onOneSupply().withSwitchRatings();
        InputErrors faults = new InputErrors();
        side(faults, "/before", input.before());
        side(faults, "/after", input.after());
        faults.reject();
        return SparkCurves.ofBoth(input.before(), input.after());
    }

    private static @Nullable ConductorSize size(InputErrors faults, String pointer, @Nullable String text) {
        if (text == null) {
            return null;
        }
        try {
            return ConductorSize.parse(text);
        } catch (RejectedInput rejected) {
            rejected.faults().forEach(fault -> faults.add(fault.under(pointer)));
            return null;
        }
    }

    private static @Nullable Answer<SparkResult> side(InputErrors faults, String pointer, SparkInput input) {
        try {
            return Spark.calculate(input);
        } catch (RejectedInput rejected) {
            rejected.faults().forEach(fault -> faults.add(fault.under(pointer)));
            return null;
        }
    }

    private static List<Caution> cautions(
            Answer<SparkResult> before, Answer<SparkResult> after, List<Finding> findings) {
        Set<Caution> cautions = new LinkedHashSet<>(List.of(Caution.DISCONNECT_BATTERY));
        if (findings.stream().anyMatch(f -> BypassFindings.TURNS_THE_STARTER.contains(f.kind()))) {
            cautions.add(Caution.MOVING_PARTS);
        }
        for (Caution caution : Caution.values()) {
            if (before.cautions().contains(caution) || after.cautions().contains(caution)) {
                cautions.add(caution);
            }
        }
        return List.copyOf(cautions);
    }

    private static List<Compared> compared(SparkResult before, SparkResult after) {
        SparkPoint was = before.at();
        SparkPoint is = after.at();
        return List.of(
                new Compared("peakA", was.build().peakA(), is.build().peakA()),
                new Compared("averageA", was.means().averageA(), is.means().averageA()),
                new Compared("allCoilsA", was.means().allCoilsA(), is.means().allCoilsA()),
                new Compared(
                        "feedA", before.feedNeed().currentA(), after.feedNeed().currentA()),
                new Compared(
                        "closedA", before.closed().currentA(), after.closed().currentA()),
                new Compared(
                        "closedCoilV", before.closed().coilV(), after.closed().coilV()),
                new Compared(
                        "closedCoilHeatW",
                        before.closed().coilHeatW(),
                        after.closed().coilHeatW()),
                new Compared("coilHeatW", was.heat().coilHeatW(), is.heat().coilHeatW()),
                new Compared(
                        "ballastHeatW", was.heat().ballastHeatW(), is.heat().ballastHeatW()),
                new Compared("switchHeatW", was.heat().switchHeatW(), is.heat().switchHeatW()),
                new Compared(
                        "energyMj", was.stored().energyJ() * 1e3, is.stored().energyJ() * 1e3),
                new Compared(
                        "availableKv",
                        was.margin().availableV() / 1e3,
                        is.margin().availableV() / 1e3),
                new Compared(
                        "requiredKv",
                        was.margin().requiredV() / 1e3,
                        is.margin().requiredV() / 1e3),
                new Compared(
                        "marginKv", was.margin().marginV() / 1e3, is.margin().marginV() / 1e3),
                new Compared(
                        "marginRatio", was.margin().marginRatio(), is.margin().marginRatio()));
    }
}
