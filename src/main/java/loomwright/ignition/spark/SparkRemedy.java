package loomwright.ignition.spark;

import static loomwright.message.Arg.arg;

import loomwright.answer.Basis;
import loomwright.circuit.UsualVoltages;
import loomwright.ignition.primary.PrimarySwitch;
import loomwright.message.Message;

/** What raises a spark that is too weak. Each way is calculated first, and only those that help are offered. */
public final class SparkRemedy {
    /** A narrower gap is set at no plug. */
    private static final double NARROWEST_GAP_MM = 0.5;

    static final Basis GAP_BASIS =
            Basis.commonPractice("plug gap 0.5 to 0.8 mm with contacts, 0.8 to 1.5 mm with electronics");

    /** Steps of a feeler gauge. */
    private static final double GAUGE_MM = 0.05;
    /** A supply that raises the available voltage by less helps nothing. */
    private static final double HELPS = 1.01;

    private static final double MORE_SUPPLY = 1.1;

    private SparkRemedy() {}

    /** For an ignition with too little spark, or none. */
    static Message of(SparkInput.Resolved question, SparkPoint at) {
        SparkSystem system = question.system();
        if (system.primarySwitch() instanceof PrimarySwitch.Module module && !module.worksAt(at.supplyV())) {
            return forModule(question.nominalV(), module.deadBelowV());
        }
        double gapMm = GAUGE_MM * Math.floor(widestGapMm(question, at) / GAUGE_MM + 1e-9);
        return SparkFinding.RAISE_SPARK.with(
                arg("gap", gapMm >= NARROWEST_GAP_MM - 1e-9 ? "yes" : "no"),
                arg("gapMm", gapMm),
                arg("volts", suppliedBetter(question, at) ? "yes" : "no"));
    }

    /** For a module that its supply does not surely work. */
    public static Message forModule(double nominalV, double deadBelowV) {
        return deadBelowV > UsualVoltages.CHARGING_V * nominalV / 12
                ? SparkFinding.FIT_MODULE_FOR_SYSTEM.with(arg("nominalV", nominalV))
                : SparkFinding.RAISE_SUPPLY.with();
    }

    /** The widest gap with the wanted reserve, 0 if there is none. */
    private static double widestGapMm(SparkInput.Resolved question, SparkPoint at) {
        Boundary widest = question.search().largestGapMm(question.system(), at);
        return widest.kind() == Boundary.Kind.NEVER_THERE ? 0 : widest.value();
    }

    private static boolean suppliedBetter(SparkInput.Resolved question, SparkPoint at) {
        double betterV = Math.max(MORE_SUPPLY * at.supplyV(), UsualVoltages.CHARGING_V * question.nominalV() / 12);
        SparkPoint better = question.system().at(at.speedRpm(), betterV, at.bypassed());
        return better.margin().availableV() > HELPS * at.margin().availableV();
    }
}
