package loomwright.readings;

import java.util.ArrayList;
import java.util.List;
import loomwright.circuit.EarthPolarity;
import loomwright.circuit.Plan;
import loomwright.message.Message;
import loomwright.operation.MeterRange;
import loomwright.operation.Point;
import loomwright.operation.Quantity;
import loomwright.readings.ReadingsSheet.Circumstances;
import loomwright.readings.ReadingsSheet.Expected;
import loomwright.readings.ReadingsSheet.MeterLeads;
import loomwright.readings.ReadingsSheet.Purpose;
import loomwright.readings.ReadingsSheet.Reading;
import loomwright.readings.ReadingsSheet.Shows;

/** A line of the sheet. */
final class SheetRow {
    /** What is left of a zero after the arithmetic, V or ohm. */
    private static final double ROUNDING = 1e-12;

    private SheetRow() {}

    /** The line for a candidate; the leads lie so that a sound circuit shows a figure above zero. */
    static Reading of(Plan plan, ReadingCandidate c, Range range, int number, double accuracyFraction) {
        boolean postToPost = c.purpose() == Purpose.SUPPLY;
        boolean turned = c.quantity() == Quantity.VOLTS
                && !postToPost
                && plan.system().earthPolarity() == EarthPolarity.POSITIVE;
        Point red = turned ? c.probe().to() : c.probe().from();
        Point black = turned ? c.probe().from() : c.probe().to();
        boolean figure = range.nominal().isPresent();
        double stated = range.nominal().orElse(0);
        double nominal = Math.abs(stated) < ROUNDING ? 0 : turned ? -stated : stated;
        double low = turned ? -range.highest() : range.lowest();
        double high = turned ? -range.lowest() : range.highest();
        MeterRange meter = MeterRange.of(
                c.quantity(), figure || c.quantity() == Quantity.VOLTS ? Math.max(-low, high) : Double.MAX_VALUE);
        double lowest = low - meter.error(low, accuracyFraction);
        boolean ohms = c.quantity() == Quantity.OHMS;
        return new Reading(
                number,
                c.purpose(),
                new Circumstances(
                        c.situation().step().condition(),
                        c.situation().message(plan, ohms).text(),
                        c.situation().setting(),
                        c.situation().contacts()),
                c.circuit(),
                c.quantity(),
                new MeterLeads(
                        red.toString(),
                        ReadingWording.label(plan, red),
                        black.toString(),
                        ReadingWording.label(plan, black)),
                meter.description().text(),
                new Expected(
                        figure ? Shows.FIGURE : ohms ? Shows.OPEN : Shows.FLOATING,
                        ohms ? "ohm" : "V",
                        figure ? (Double) (ohms ? Math.max(0, lowest) : lowest) : null,
                        figure ? (Double) nominal : null,
                        figure ? (Double) (high + meter.error(high, accuracyFraction)) : null),
                tells(plan, c, range, nominal));
    }

    private static List<Message> tells(Plan plan, ReadingCandidate c, Range range, double nominal) {
        List<Message> tells = new ArrayList<>(List.of(c.tells()));
        if (range.hanging()) {
            tells.add(ReadingText.RELAY_MAY_BE_EITHER.with());
        }
        if (isBackfed(plan, c, nominal)) {
            tells.add(ReadingText.BACKFED.with());
        }
        return tells;
    }

    private static boolean isBackfed(Plan plan, ReadingCandidate c, double nominal) {
        return c.purpose() == Purpose.DEAD && Math.abs(nominal) > plan.system().scaledFrom12V(0.5);
    }
}
