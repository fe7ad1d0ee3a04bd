package loomwright.readings;

import java.util.List;
import loomwright.answer.Progress;
import loomwright.circuit.Plan;
import loomwright.network.NetworkLimits;
import loomwright.readings.ReadingsSheet.Purpose;
import loomwright.readings.ReadingsSheet.Reading;

/** Sheets asked in the words of a test. */
final class Sheets {
    private Sheets() {}

    static ReadingsSheet of(Plan plan) {
        return of(ReadingsQuestion.of(plan));
    }

    static ReadingsSheet of(ReadingsQuestion question) {
        return ReadingsAnswer.of(question, NetworkLimits.defaults(), Progress.UNWATCHED)
                .result();
    }

    static Reading one(ReadingsSheet sheet, Purpose purpose, String situation, String red, String black) {
        List<Reading> found = sheet.readings().stream()
                .filter(r -> r.purpose() == purpose
                        && r.taken().situation().equals(situation)
                        && r.leads().red().equals(red)
                        && r.leads().black().equals(black))
                .toList();
        if (found.size() != 1) {
            throw new AssertionError(found.size() + " readings from " + red + " to " + black + ", " + situation);
        }
        return found.get(0);
    }
}
