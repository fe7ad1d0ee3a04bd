package loomwright.drawing.diagram;

import static loomwright.message.Arg.arg;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import loomwright.circuit.TerminalRef;
import loomwright.circuit.Wire;
import loomwright.conductor.ConductorSize;
import loomwright.drawing.Markup;
import loomwright.drawing.diagram.Cell.End;
import loomwright.drawing.diagram.Drawing.Arrow;
import loomwright.drawing.diagram.Drawing.Line;
import loomwright.drawing.diagram.Drawing.LineWords;
import loomwright.drawing.diagram.Drawing.State;
import loomwright.drawing.diagram.Drawing.Symbol;
import loomwright.operation.FeedStrength;
import loomwright.operation.PlanReadings.WireReading;
import org.jspecify.annotations.Nullable;

/** The circuit of a drawing, without title and legend: cells and wires in their places. */
record Draft(
        double widthPx, double heightPx, List<Symbol> symbols, List<Line> wires, List<Text> texts, List<Badge> badges) {
    private static final double HEAVY_MM2 = 10;

    /** Draws one of the scenes that were placed together. */
    static Draft of(Scene scene, Layout.Placed placed) {
        return new Maker(scene, placed).make();
    }

    private static final class Maker {
        private final Scene scene;
        private final Layout.Placed placed;
        private final Map<End, DiagramPoint> pins = new HashMap<>();
        private final List<Symbol> symbols = new ArrayList<>();
        private final List<Line> wires = new ArrayList<>();
        private final List<Text> texts = new ArrayList<>();
        private final List<Badge> badges = new ArrayList<>();

        Maker(Scene scene, Layout.Placed placed) {
            this.scene = scene;
            this.placed = placed;
        }

        Draft make() {
            placed.cells(scene).forEach(this::addCell);
            scene.plan().wires().forEach(this::addWire);
            return new Draft(placed.layout().widthPx(), placed.layout().heightPx(), symbols, wires, texts, badges);
        }

        private static DiagramPoint at(Map<String, DiagramPoint> places, String id) {
            DiagramPoint point = places.get(id);
            if (point == null) {
                throw new IllegalStateException("no place for " + id);
            }
            return point;
        }

        private void addCell(Cell cell) {
            DiagramPoint at = at(placed.layout().cells(), cell.named().id());
            double x = at.x() + cell.drawn().bodyX();
            double y = at.y() + cell.drawn().bodyY();
            Body body = cell.drawn().body();
            List<Drawing.Pin> ends = new ArrayList<>();
            for (Body.Pin pin : body.pins()) {
                ends.add(new Drawing.Pin(
                        terminal(cell, pin),
                        new DiagramPoint(x + pin.x(), y + (pin.side() == Side.TOP ? 0 : body.heightPx()))));
            }
            for (Cell.Lead lead : cell.leads()) {
                pins.put(
                        lead.end(),
                        new DiagramPoint(x + lead.x(), y + (lead.side() == Side.TOP ? 0 : body.heightPx())));
            }
            List<Shape> shapes = new ArrayList<>(body.shapes());
            body.pins().forEach(pin -> tie(cell, pin).ifPresent(shapes::add));
            symbols.add(new Symbol(
                    cell.named().ids(),
                    cell.named().words(),
                    new Rect(x, y, body.widthPx(), body.heightPx()),
                    shapes,
                    body.glyphs(),
                    ends,
                    cell.emphasis()));
            cell.texts().forEach(text -> texts.add(text.moved(at.x(), at.y())));
            cell.badges().forEach(badge -> badges.add(badge.moved(at.x(), at.y())));
        }

        /** The pins of two connector halves that are together say which half they are of. */
        private static String terminal(Cell cell, Body.Pin pin) {
            return cell.named().ids().size() > 1
                    ? pin.terminal()
                    : cell.named().ids().get(0) + "." + pin.terminal();
        }

        /** Joins the leads of a terminal that has several. */
        private static Optional<Shape> tie(Cell cell, Body.Pin pin) {
            double y = pin.side() == Side.TOP ? 0 : cell.drawn().body().heightPx();
            return cell.leads().stream()
                    .filter(lead -> lead.side() == pin.side() && isOf(lead, pin))
                    .map(Cell.Lead::x)
                    .max(Double::compare)
                    .filter(last -> last > pin.x())
                    .map(last -> new Shape(
                            "M" + Markup.number(pin.x()) + " " + Markup.number(y) + "H" + Markup.number(last),
                            Shape.Paint.THICK));
        }

        private static boolean isOf(Cell.Lead lead, Body.Pin pin) {
            TerminalRef terminal = lead.end().terminal();
            return pin.terminal().equals(terminal.terminal()) || pin.terminal().equals(terminal.toString());
        }

        private void addWire(Wire wire) {
            List<DiagramPoint> points = new ArrayList<>(placed.layout().wires().getOrDefault(wire.id(), List.of()));
            end(new End(wire.id(), wire.from())).ifPresent(p -> points.add(0, p));
            end(new End(wire.id(), wire.to())).ifPresent(points::add);
            DiagramPoint label = at(placed.layout().labels(), wire.id());
            WireLabel texted = WireLabel.of(wire, scene);
            texted.texts().forEach(text -> texts.add(text.moved(label.x(), label.y())));
            texted.badges().forEach(badge -> badges.add(badge.moved(label.x(), label.y())));
            WireReading reading = scene.wire(wire.id());
            wires.add(new Line(
                    new LineWords(
                            wire.id(), wire.from().toString(), wire.to().toString(), words(wire), does(wire, reading)),
                    points,
                    Wordings.colours(wire.colour()),
                    scene.figures()
                            ? state(reading)
                            : scene.emphasis(wire.id()) == Emphasis.REMOVED ? State.DEAD : State.RETURN,
                    heavy(wire),
                    scene.emphasis(wire.id()),
                    arrow(points, label, reading)));
        }

        private Optional<DiagramPoint> end(End end) {
            return Optional.ofNullable(pins.get(end));
        }

        private String words(Wire wire) {
            return DiagramText.WIRE_WORDS
                    .with(
                            arg("wire", scene.name(wire.id())),
                            arg("conductor", Wordings.conductor(wire)),
                            arg("from", end(wire.from())),
                            arg("to", end(wire.to())))
                    .text();
        }

        private String end(TerminalRef end) {
            return Wordings.terminal(scene.plan(), end);
        }

        private String does(Wire wire, @Nullable WireReading reading) {
            if (reading == null) {
                return "";
            }
            double currentA = reading.currentA();
            if (Math.abs(currentA) < FeedStrength.TRICKLE_A) {
                return (reading.live() ? DiagramText.WIRE_LIVE : DiagramText.WIRE_DEAD).text();
            }
            return DiagramText.WIRE_CARRIES
                    .with(
                            arg("currentA", Math.abs(currentA)),
                            arg("towards", end(currentA > 0 ? wire.to() : wire.from())),
                            arg("feed", reading.againstFeed() ? "against" : "with"))
                    .text();
        }

        private static State state(@Nullable WireReading reading) {
            if (reading == null) {
                return State.DEAD;
            } else if (reading.live()) {
                return State.LIVE;
            }
            return Math.abs(reading.currentA()) < FeedStrength.TRICKLE_A ? State.DEAD : State.RETURN;
        }

        private static boolean heavy(Wire wire) {
            String size = wire.conductor().size();
            return size != null && ConductorSize.parse(size).areaMm2() >= HEAVY_MM2;
        }

        /** Beside the first line of the wire's label, where the wire runs straight. */
        private static @Nullable Arrow arrow(
                List<DiagramPoint> points, DiagramPoint label, @Nullable WireReading reading) {
            if (reading == null || Math.abs(reading.currentA()) < FeedStrength.TRICKLE_A) {
                return null;
            }
            double y = label.y() + 12;
            int forward = reading.currentA() > 0 ? 1 : -1;
            Arrow nearest = null;
            double distance = Double.MAX_VALUE;
            for (int i = 1; i < points.size(); i++) {
                DiagramPoint a = points.get(i - 1);
                DiagramPoint b = points.get(i);
                double away = Math.abs(a.x() - label.x());
                if (a.x() == b.x() && Math.min(a.y(), b.y()) <= y && y <= Math.max(a.y(), b.y()) && away < distance) {
                    distance = away;
                    nearest = new Arrow(a.x(), y, 0, forward * Math.signum(b.y() - a.y()), reading.againstFeed());
                }
            }
            return nearest;
        }
    }
}
