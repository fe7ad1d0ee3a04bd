package loomwright.drawing.diagram;

import java.util.ArrayList;
import java.util.List;
import loomwright.circuit.Wire;
import loomwright.operation.FeedStrength;
import loomwright.operation.PlanReadings.WireReading;
import org.jspecify.annotations.Nullable;

/** The texts beside a wire: what it is called, how much it carries, what it is made of. */
record WireLabel(List<Text> texts, List<Badge> badges, double widthPx, double heightPx) {
    /** From the wire to its texts. */
    static final double GAP_PX = Setting.CLEAR_PX;

    /** Room for any current. */
    private static final double AMPS_PX = Text.Role.AMPS.widthPx("88.8 mA");

    private static final double LINE_PX = 12;

    /** Of two labels of the same wire that which needs more room. */
    WireLabel wider(WireLabel other) {
        return other.widthPx > widthPx ? other : this;
    }

    static WireLabel of(Wire wire, Scene scene) {
        List<Text> texts = new ArrayList<>();
        String name = scene.name(wire.id());
        double idWidth = Text.Role.WIRE.widthPx(name) + 6;
        texts.add(new Text(wire.id(), Text.Role.WIRE, GAP_PX, 10, name));
        String size = wire.conductor().size();
        String amps = scene.figures() ? amps(scene.wire(wire.id())) : size == null ? "" : Wordings.size(size);
        if (!amps.isEmpty()) {
            texts.add(
                    new Text(wire.id(), scene.figures() ? Text.Role.AMPS : Text.Role.DATA, GAP_PX + idWidth, 10, amps));
        }
        String colour = scene.colourWords() ? Insulation.words(wire.colour()) : wire.colour();
        String conductor = scene.figures() ? Wordings.conductor(wire, colour) : Insulation.words(wire.colour());
        texts.add(new Text(wire.id(), Text.Role.DATA, GAP_PX, 10 + LINE_PX, conductor));
        double width = GAP_PX
                + Math.max(
                        idWidth + Math.max(scene.figures() ? AMPS_PX : 0, Text.Role.AMPS.widthPx(amps)),
                        Text.Role.DATA.widthPx(conductor));
        List<Badge> badges = new ArrayList<>();
        double x = GAP_PX + Badge.RADIUS_PX;
        for (Mark mark : scene.marksAt(wire.id())) {
            if (scene.shows(mark)) {
                badges.add(new Badge(wire.id(), mark.kind(), mark.number(), x, 2 * LINE_PX + 2 + Badge.RADIUS_PX));
            }
            x += Badge.PITCH_PX;
        }
        return new WireLabel(
                texts,
                badges,
                Math.max(width, x - Badge.RADIUS_PX),
                2 * LINE_PX + 2 + (scene.marksAt(wire.id()).isEmpty() ? 0 : Badge.PITCH_PX));
    }

    private static String amps(@Nullable WireReading reading) {
        return reading == null || Math.abs(reading.currentA()) < FeedStrength.TRICKLE_A
                ? ""
                : DiagramNumbers.amps(reading.currentA());
    }
}
