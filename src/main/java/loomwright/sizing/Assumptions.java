package loomwright.sizing;

import java.util.List;
import java.util.Map;
import loomwright.answer.Assumption;
import loomwright.conductor.FigureText;
import loomwright.message.Unconverted;

/** What was filled in where a question says nothing. */
final class Assumptions {
    private Assumptions() {}

    /**
     * One of them.
     *
     * @param code stable name
     * @param assumed names of properties with what was taken
     */
    static Assumption of(String code, Map<String, Object> assumed, String text) {
        return new Assumption(code, List.of(), assumed, Unconverted.message(code, text), List.of());
    }

    static Assumption chassis(double chassisOhm, double currentA, double poorOhm) {
        return of(
                "chassis",
                Map.of("chassisOhm", chassisOhm),
                "Chassis and its earth joint: " + FigureText.text(1000 * chassisOhm)
                        + " mΩ together. In bad order, at " + FigureText.text(1000 * poorOhm)
                        + " mΩ, they lose " + FigureText.text(currentA * poorOhm) + " V.");
    }
}
