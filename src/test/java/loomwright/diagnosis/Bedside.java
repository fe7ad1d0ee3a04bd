package loomwright.diagnosis;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import loomwright.answer.Progress;
import loomwright.circuit.Condition;
import loomwright.circuit.Plan;
import loomwright.circuit.Plans;
import loomwright.circuit.fault.SingleFault;
import loomwright.circuit.fault.SizedFault;
import loomwright.message.Message;
import loomwright.message.MessageCode;
import loomwright.network.NetworkLimits;
import loomwright.operation.MeterRange;
import loomwright.operation.Probe;
import loomwright.operation.Quantity;
import org.jspecify.annotations.Nullable;

/** Small plans, and readings of a vehicle with known faults. */
final class Bedside {
    /**
     * <pre>
     *  battery --W2-- F1 --W3-- heater --W4-- body       heater 6 ohm, wires a few hundredths
     *     |        +- F2 --W6-- pump ---W7---- body       pump 3 ohm
     *     +--------W1----------------------- body
     * </pre>
     */
    static final Plan TWO_LOADS = Plans.of(
            "{'kind':'battery','id':'battery'},{'kind':'earth','id':'body'},"
                    + "{'kind':'fuse','id':'F1','ratingA':5},{'kind':'fuse','id':'F2','ratingA':7.5},"
                    + "{'kind':'load','id':'heater','resistanceOhm':6,'meantLive':['run']},"
                    + "{'kind':'load','id':'pump','resistanceOhm':3,'meantLive':['run']}",
            wire("W1", "battery.minus", "body.31", 0.001)
                    + "," + wire("W2", "battery.plus", "F1.a", 0.01)
                    + "," + wire("W3", "F1.b", "heater.a", 0.03)
                    + "," + wire("W4", "heater.b", "body.31", 0.01)
                    + "," + wire("W5", "battery.plus", "F2.a", 0.01)
                    + "," + wire("W6", "F2.b", "pump.a", 0.03)
                    + "," + wire("W7", "pump.b", "body.31", 0.01));

    private static final DiagnosisQuestion METER =
            DiagnosisQuestion.of(TWO_LOADS, List.of(reading(volts("battery.plus", Condition.RUN), 12)));

    private Bedside() {}

    static String wire(String id, String from, String to, double ohm) {
        return "{'id':'" + id + "','from':'" + from + "','to':'" + to + "','resistanceOhm':" + ohm + "}";
    }

    static Measurement volts(String from, Condition condition) {
        return new Measurement(Probe.toEarth(from), Quantity.VOLTS, Measurement.stepOf(condition), Map.of());
    }

    static MeterReading reading(Measurement m, double figure) {
        boolean volts = m.quantity() == Quantity.VOLTS;
        boolean open = !volts && figure >= Bench.OPEN_OHM;
        return new MeterReading(
                m.probe().from().toString(),
                m.probe().to().toString(),
                null,
                m.condition(),
                m.switches(),
                m.contacts(),
                false,
                volts ? (Double) figure : null,
                volts || open ? null : (Double) figure,
                open ? (Boolean) true : null,
                null);
    }

    static Bench bench(Plan plan) {
        return bench(plan, true);
    }

    /** As above; without {@code scanning} every plan is solved in full. */
    static Bench bench(Plan plan, boolean scanning) {
        return new Bench(
                plan,
                new DiagnosisLimits(1_000_000, 800, 3_600_000),
                NetworkLimits.defaults(),
                Progress.UNWATCHED,
                scanning);
    }

    /** What a meter without errors shows. */
    static List<MeterReading> exact(Plan plan, List<SingleFault> faults, List<Measurement> measurements) {
        return noisy(
                bench(plan)
                        .measure(faults, Set.of(), measurements)
                        .orElseThrow()
                        .figures(),
                measurements,
                1,
                null);
    }

    /**
     * What a meter shows: with the engine turning halfway between closed and open contacts, which it averages.
     *
     * @param supply share of the planned EMF that the supply has
     * @param random by which each figure is off, evenly within the accuracy of a plain meter; null for an exact one
     */
    static List<MeterReading> noisy(
            PredictedFigures figures, List<Measurement> measurements, double supply, @Nullable Random random) {
        List<MeterReading> readings = new ArrayList<>();
        // A meter that shows too much does so at every reading; its last digits are each reading's own.
        double share = random == null ? 0 : (2 * random.nextDouble() - 1) * METER.meterFraction();
        for (int i = 0; i < measurements.size(); i++) {
            Measurement m = measurements.get(i);
            double figure = m.step().engineTurning() ? (figures.at(i) + figures.open(i)) / 2 : figures.at(i);
            double shown = figure * (m.quantity() == Quantity.VOLTS ? supply : 1);
            double digits = MeterRange.of(m.quantity(), shown).error(0, 0);
            double error = random == null ? 0 : share * shown + (2 * random.nextDouble() - 1) * digits;
            readings.add(reading(m, shown + error));
        }
        return readings;
    }

    static DiagnosisReport diagnose(Plan plan, List<MeterReading> readings) {
        return diagnose(DiagnosisQuestion.of(plan, readings));
    }

    static DiagnosisReport diagnose(DiagnosisQuestion question) {
        return DiagnosisAnswer.of(question, DiagnosisLimits.defaults(), NetworkLimits.defaults(), Progress.UNWATCHED)
                .result();
    }

    /** Whether a candidate is this fault, of whatever size. */
    static boolean same(SingleFault one, SingleFault other) {
        boolean sized = one instanceof SizedFault;
        return one.kind() == other.kind() && one.ids().equals(other.ids()) && (sized || one.equals(other));
    }

    /** Whether somebody is accused of one fault of this kind, and of having blown these fuses. */
    static boolean accuses(DiagnosisReport.Suspect suspect, SingleFault.Kind kind, String id, String... blown) {
        return suspect.faults().size() == 1
                && suspect.faults().get(0).kind() == kind
                && suspect.faults().get(0).ids().contains(id)
                && suspect.fusesBlown().equals(List.of(blown));
    }

    static List<MessageCode> codes(DiagnosisReport report) {
        return report.conclusion().summary().stream().map(Message::code).toList();
    }
}
