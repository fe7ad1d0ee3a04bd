package loomwright.ignition;

import java.util.ArrayList;
import java.util.List;
import loomwright.ignition.CoilData.Feed;
import org.jspecify.annotations.Nullable;

/** What an adviser would add to the figures of a spark: each note only where it applies. */
final class SparkNotes {

    /** Contacts of a plain system switch about 4 to 5 A: Army manual TM 9-8000, chapter 15. */
    private static final double CONTACTS_A = 5;

    private SparkNotes() {}

    static List<String> of(SparkInput.Resolved question, SparkPoint at, SparkResult.@Nullable HotCoil hotCoil) {
        List<String> notes = new ArrayList<>();
        margin(question, at, notes);
        demand(question.system().demand(), notes);
        feed(question, notes);
        if (question.system().primarySwitch() instanceof PrimarySwitch.Breaker && at.breakA() > CONTACTS_A) {
            notes.add("The contacts break " + Figure.of(at.breakA()) + " A; those of a plain system switch about 4 to 5"
                    + " A (TM 9-8000, chapter 15) and will burn.");
        }
        if (at.startA() > 0) {
            notes.add("The primary closes again while the spark still burns: " + Figure.of(at.startA())
                    + " A is left in the coil, and the spark is cut short after " + Figure.milli(at.sparkS()) + " ms.");
        }
        if (hotCoil != null && hotCoil.end() instanceof SelfHeating.Runaway runaway) {
            notes.add("The coil does not settle: at "
                    + Figure.of(runaway.atCeiling().temperatureC()) + " C it still takes "
                    + Figure.of(runaway.atCeiling().powerW()) + " W. It would burn.");
        }
        return notes;
    }

    private static void margin(SparkInput.Resolved question, SparkPoint at, List<String> notes) {
        if (at.marginRatio() < 1) {
            notes.add("No spark: " + Figure.kilo(at.availableV()) + " kV available, " + Figure.kilo(at.requiredV())
                    + " kV required.");
        } else if (at.marginRatio() < question.search().reserveRatio()) {
            notes.add("A spark, but less than the wanted reserve of "
                    + Figure.of(question.search().reserveRatio()) + ": worn plugs, damp leads or a lean charge will"
                    + " make it miss.");
        }
    }

    private static void demand(Demand demand, List<String> notes) {
        BreakdownVoltage plug = demand.plug();
        notes.add("Required voltage: the four published formulas give " + Figure.kilo(plug.lowestV()) + " to "
                + Figure.kilo(plug.highestV()) + " kV for this gap; take the spread as the uncertainty.");
        if (!plug.withinRange()) {
            notes.add("Outside the range of the formula (" + plug.formula().range()
                    + "): the required voltage is an extrapolation.");
        }
    }

    private static void feed(SparkInput.Resolved question, List<String> notes) {
        SparkSystem system = question.system();
        Feed meantFor = system.coil().meantFor();
        if (meantFor == Feed.WITH_BALLAST && system.ballastOhm(question.bypassed()) == 0) {
            notes.add(
                    "A coil meant for use with a ballast is fed directly: right for the moment of starting, too hot for"
                            + " running.");
        }
        if (meantFor == Feed.DIRECT && system.ballastOhm(question.bypassed()) > 0) {
            notes.add("A coil meant for direct feed is fed through a ballast: a weak spark.");
        }
        if (meantFor == Feed.LIMITING_MODULE
                && Double.isInfinite(system.primarySwitch().limitA())) {
            notes.add("A high-energy coil without a current limit: it draws "
                    + Figure.of(system.closedA(question.supplyV(), question.bypassed()))
                    + " A with the primary closed and burns what switches it.");
        }
    }
}
