package loomwright.workshop;

import static loomwright.message.Arg.arg;
import static loomwright.message.Arg.texts;

import java.util.ArrayList;
import java.util.List;
import loomwright.answer.Accepted;
import loomwright.answer.Answer;
import loomwright.answer.Basis;
import loomwright.answer.Caution;
import loomwright.answer.Finding;
import loomwright.answer.InputError;
import loomwright.answer.InputErrors;
import loomwright.message.Message;
import org.jspecify.annotations.Nullable;

/** Dwell of one contact set in a distributor, in degrees and per cent, and from the gap and back. */
public final class PointsDwell {
    public static final Basis ANGLE_BASIS = Basis.computed(
            "dwell in per cent: degrees over 360 degrees a cylinder; the distributor turns at half the speed of a"
                    + " four-stroke engine",
            "definition");
    public static final Basis GAP_BASIS = Basis.commonPractice(
            "contact gap and dwell: no published law, it depends on the cam. The nose of the cam is taken as a parabola, so"
                    + " that the open angle goes with the root of the gap, through the pair of the data book");
    public static final Basis USUAL_BASIS =
            Basis.commonPractice("dwell of contact points: half to 70 per cent of the cycle");

    private static final double LEAST_PERCENT = 50;
    private static final double MOST_PERCENT = 70;
    private static final double USUAL_PERCENT = 60;

    private PointsDwell() {}

    /**
     * What is asked: one of dwell in degrees, dwell in per cent, gap. The gap needs the pair of the data book.
     *
     * @param cylinders served by the distributor, 1 to 12; 4 unless said
     * @param dwellDegrees of the distributor, 1 to 359
     * @param dwellPercent of the cycle, 1 to 99
     * @param gapMm of the points, fully open, 0.05 to 2
     * @param knownGapMm gap of the data book, 0.05 to 2
     * @param knownDwellDegrees its dwell, 1 to 359
     * @param speedRpm of the crankshaft, 20 to 20 000, for the time
     */
    public record Input(
            @Nullable Integer cylinders,
            @Nullable Double dwellDegrees,
            @Nullable Double dwellPercent,
            @Nullable Double gapMm,
            @Nullable Double knownGapMm,
            @Nullable Double knownDwellDegrees,
            @Nullable Double speedRpm) {
        public Input {
            InputErrors faults = new InputErrors()
                    .range("/cylinders", cylinders == null ? null : cylinders.doubleValue(), 1, 12)
                    .range("/dwellDegrees", dwellDegrees, 1, 359)
                    .range("/dwellPercent", dwellPercent, 1, 99)
                    .range("/gapMm", gapMm, 0.05, 2)
                    .range("/knownGapMm", knownGapMm, 0.05, 2)
                    .range("/knownDwellDegrees", knownDwellDegrees, 1, 359)
                    .range("/speedRpm", speedRpm, 20, 20_000);
            faults.reject();
            int given = (dwellDegrees == null ? 0 : 1) + (dwellPercent == null ? 0 : 1) + (gapMm == null ? 0 : 1);
            faults.check(
                    given == 1,
                    given == 0 ? InputError.Code.MISSING : InputError.Code.CONTRADICTION,
                    "/dwellDegrees",
                    dwellDegrees,
                    Accepted.EXACTLY_ONE,
                    texts("names", List.of("dwellDegrees", "dwellPercent", "gapMm")));
            boolean pair = knownGapMm != null && knownDwellDegrees != null;
            faults.check(
                    pair || (gapMm == null && knownGapMm == null && knownDwellDegrees == null),
                    InputError.Code.MISSING,
                    knownGapMm == null ? "/knownGapMm" : "/knownDwellDegrees",
                    null,
                    Accepted.ALL_OF,
                    texts("names", List.of("gapMm", "knownGapMm", "knownDwellDegrees")));
            faults.reject();
        }

        double cycle() {
            return 360.0 / (cylinders == null ? 4 : cylinders);
        }
    }

    /**
     * The answer, in degrees of the distributor.
     *
     * @param openDegrees for which the points are open
     * @param gapMm absent without the pair of the data book
     * @param degreesLessPerTenth by how much the dwell falls if the gap is a tenth of a millimetre wider; absent likewise
     * @param dwellMs absent without a speed
     */
    public record Result(
            double dwellDegrees,
            double dwellPercent,
            double openDegrees,
            @Nullable Double gapMm,
            @Nullable Double degreesLessPerTenth,
            @Nullable Double dwellMs,
            List<Finding> findings) {}

    /** Answers. */
    public static Answer<Result> calculate(Input input) {
        double cycle = input.cycle();
        Double gap = input.gapMm();
        double dwell = gap != null ? cycle - open(input, gap) : degrees(input);
        InputErrors faults = new InputErrors();
        faults.check(
                dwell > 0 && dwell < cycle,
                InputError.Code.OUT_OF_RANGE,
                gap != null ? "/gapMm" : "/dwellDegrees",
                gap != null ? gap : input.dwellDegrees(),
                AcceptedBench.DWELL,
                arg("cycleDegrees", (double) Math.round(cycle)));
        Double knownDwell = input.knownDwellDegrees();
        faults.check(
                knownDwell == null || knownDwell < cycle,
                InputError.Code.OUT_OF_RANGE,
                "/knownDwellDegrees",
                knownDwell,
                AcceptedBench.DWELL,
                arg("cycleDegrees", (double) Math.round(cycle)));
        faults.reject();
        Double gapMm = gap != null ? gap : knownDwell == null ? null : gap(input, cycle - dwell);
        Double perTenth = gapMm == null ? null : open(input, gapMm + 0.1) - open(input, gapMm);
        Double speedRpm = input.speedRpm();
        double percent = 100 * dwell / cycle;
        List<Message> working = new ArrayList<>(List.of(WorkshopMessage.DWELL_LAW.with(
                arg("dwellDegrees", dwell), arg("cycleDegrees", cycle), arg("dwellPercent", percent))));
        working.add(
                gapMm == null || perTenth == null
                        ? WorkshopMessage.NO_LAW_FOR_GAP.with()
                        : WorkshopMessage.GAP_LAW.with(arg("gapMm", gapMm), arg("lessDegrees", perTenth)));
        return new Answer<>(
                new Result(
                        dwell,
                        percent,
                        cycle - dwell,
                        gapMm,
                        perTenth,
                        speedRpm == null ? null : 1000 * dwell / (3 * speedRpm),
                        findings(percent, cycle)),
                working,
                List.of(ANGLE_BASIS, GAP_BASIS, USUAL_BASIS),
                List.of(Caution.MOVING_PARTS, Caution.LOCAL_CODES));
    }

    private static double degrees(Input input) {
        Double degrees = input.dwellDegrees();
        Double percent = input.dwellPercent();
        return degrees != null ? degrees : percent == null ? 0 : percent / 100 * input.cycle();
    }

    private static double open(Input input, double gapMm) {
        Double knownGap = input.knownGapMm();
        Double knownDwell = input.knownDwellDegrees();
        return knownGap == null || knownDwell == null ? 0 : (input.cycle() - knownDwell) * Math.sqrt(gapMm / knownGap);
    }

    private static double gap(Input input, double openDegrees) {
        Double knownGap = input.knownGapMm();
        return knownGap == null ? 0 : knownGap * Math.pow(openDegrees / open(input, knownGap), 2);
    }

    private static List<Finding> findings(double percent, double cycle) {
        if (percent >= LEAST_PERCENT && percent <= MOST_PERCENT) {
            return List.of();
        }
        return List.of(Finding.note(
                        WorkshopMessage.DWELL_UNUSUAL.with(
                                arg("dwellPercent", percent), arg("side", percent < LEAST_PERCENT ? "short" : "long")),
                        USUAL_BASIS)
                .remedy(WorkshopMessage.SET_USUAL_DWELL.with(arg("usualDegrees", USUAL_PERCENT / 100 * cycle))));
    }
}
