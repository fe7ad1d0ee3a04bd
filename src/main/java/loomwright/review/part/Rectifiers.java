package loomwright.review.part;

import static loomwright.message.Arg.arg;

import java.util.List;
import loomwright.answer.Basis;
import loomwright.answer.Finding;
import loomwright.circuit.Alternator;
import loomwright.review.context.Check;
import loomwright.review.context.FindingCode;
import loomwright.review.context.ReviewContext;
import loomwright.review.context.ReviewText;

/** Alternators of which the plan itself says that a main diode is open or shorted. What it leads to is found by the other checks. */
public final class Rectifiers implements Check {
    private static final Basis SHARE = Basis.commonPractice(
            "an alternator gives two thirds of its current with one main diode open, a third with one shorted");

    @Override
    public List<Finding> check(ReviewContext context) {
        return context.plan().listParts(Alternator.class).stream()
                .filter(alternator -> alternator.rectifier() != Alternator.Rectifier.SOUND)
                .map(alternator -> Finding.warning(
                                FindingCode.RECTIFIER_FAULTY.with(
                                        arg("generator", alternator.thing()),
                                        arg(
                                                "diode",
                                                alternator.rectifier() == Alternator.Rectifier.DIODE_OPEN
                                                        ? "open"
                                                        : "shorted"),
                                        arg("mostA", alternator.outputLimitA())),
                                SHARE)
                        .remedy(ReviewText.REPAIR_RECTIFIER.with(arg("generator", alternator.thing()))))
                .toList();
    }
}
