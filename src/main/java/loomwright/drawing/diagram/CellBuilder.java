package loomwright.drawing.diagram;

import static loomwright.message.Arg.arg;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import loomwright.circuit.Connector;
import loomwright.circuit.EarthPoint;
import loomwright.circuit.Joint;
import loomwright.circuit.Part;
import loomwright.circuit.TerminalRef;
import loomwright.drawing.diagram.Cell.End;
import loomwright.drawing.diagram.Cell.Lead;

/** Puts a symbol, its terminals and its texts into one cell: terminals above and below, texts on the right. */
final class CellBuilder {
    private static final double ROW_PX = 16;
    private static final double BASELINE_PX = 11;
    private static final double EDGE_PX = 3;
    private static final double LINE_PX = 12;
    private static final double NAME_PX = 104;
    /** On paper with large writing. */
    private static final double NARROW_NAME_PX = 76;

    private static final int MOST_LINES = 3;
    /** Room for what a part does, whatever it does: the layout is the same in all steps. */
    private static final double READING_PX = Text.Role.READING.widthPx("-12.4 V pulled in");

    private final Scene scene;
    private final String id;
    private final int depth;
    private final Body body;
    private final List<String> ids = new ArrayList<>();
    private final List<Text> block = new ArrayList<>();
    private final List<Badge> badges = new ArrayList<>();
    private final List<Setting> settings = new ArrayList<>();
    private double blockWidth;
    private double blockHeight;
    private String words = "";
    private boolean free;
    private Emphasis emphasis = Emphasis.NONE;

    CellBuilder(Scene scene, String id, int depth, Body body) {
        this.scene = scene;
        this.id = id;
        this.depth = depth;
        this.body = body;
    }

    CellBuilder emphasis(Emphasis why) {
        emphasis = why;
        return this;
    }

    CellBuilder free(boolean mayBeInAnyOrder) {
        free = mayBeInAnyOrder;
        return this;
    }

    /** The cell of one part. */
    CellBuilder single(Part part, Setting setting) {
        ids.add(part.id());
        settings.add(setting);
        boolean earth = part instanceof EarthPoint;
        Text.Role nameRole = earth ? Text.Role.DATA : Text.Role.NAME;
        double widthPx = scene.figures() ? NAME_PX : narrowPx(part.displayName(), nameRole);
        TextLines.wrapped(part.displayName(), nameRole, widthPx, MOST_LINES)
                .forEach(line -> add(part.id(), nameRole, line));
        String data = earth && !scene.figures()
                ? ""
                : Wordings.data(part, scene.plan()).replace(' ', TextLines.TIE);
        String named = part.label() == null || earth ? data : data.isEmpty() ? part.id() : part.id() + ", " + data;
        TextLines.wrapped(named, Text.Role.DATA, widthPx, 2).forEach(line -> add(part.id(), Text.Role.DATA, line));
        List<Integer> sheets = earth ? List.of() : scene.references(part.id());
        if (!sheets.isEmpty()) {
            TextLines.wrapped(Wordings.reference(sheets), Text.Role.DATA, widthPx, 2)
                    .forEach(line -> add(part.id(), Text.Role.DATA, line));
        }
        String reading = Wordings.reading(scene.part(part.id()));
        if (part instanceof Joint joint) {
            reading = joint.terminals().stream()
                    .map(t -> scene.volts(joint.terminal(t)))
                    .findFirst()
                    .orElse("");
        }
        if (!earth && scene.figures()) {
            blockWidth = Math.max(blockWidth, READING_PX);
            add(part.id(), Text.Role.READING, reading);
        }
        words = DiagramText.PART_WORDS
                .with(
                        arg("part", part.displayName()),
                        arg("kind", part.kind().replace('-', ' ')),
                        arg("does", reading),
                        arg("reading", reading.isEmpty() ? "none" : "some"))
                .text();
        return marks(Stream.of(part.id()));
    }

    /** No wider than its longest word. */
    private static double narrowPx(String name, Text.Role role) {
        return Stream.of(name.split(" ", -1))
                .mapToDouble(role::widthPx)
                .map(px -> Math.min(px, NAME_PX))
                .reduce(NARROW_NAME_PX, Math::max);
    }

    /** The cell of two connector halves that are together. */
    CellBuilder mated(Connector connector, Setting above, Setting below) {
        for (Setting setting : List.of(above, below)) {
            Part half = setting.part();
            ids.add(half.id());
            settings.add(setting);
            TextLines.wrapped(half.displayName(), Text.Role.NAME, NAME_PX + 20, 2)
                    .forEach(line -> add(half.id(), Text.Role.NAME, line));
        }
        add(connector.id(), Text.Role.DATA, connector.id() + ", " + Wordings.data(above.part(), scene.plan()));
        words = DiagramText.CONNECTOR_WORDS
                .with(
                        arg("connector", connector.id()),
                        arg("half", above.part().displayName()),
                        arg("otherHalf", below.part().displayName()))
                .text();
        return marks(Stream.of(connector.id(), above.part().id(), below.part().id()));
    }

    private void add(String owner, Text.Role role, String line) {
        block.add(new Text(owner, role, 0, blockHeight + BASELINE_PX - 1, line));
        blockWidth = Math.max(blockWidth, role.widthPx(line));
        blockHeight += LINE_PX;
    }

    private CellBuilder marks(Stream<String> about) {
        List<Mark> marks =
                about.flatMap(one -> scene.marksAt(one).stream()).distinct().toList();
        int perRow = (int) (NAME_PX / Badge.PITCH_PX);
        for (int i = 0; i < marks.size(); i++) {
            int row = i / perRow;
            if (!scene.shows(marks.get(i))) {
                continue;
            }
            badges.add(new Badge(
                    id,
                    marks.get(i).kind(),
                    marks.get(i).number(),
                    i % perRow * Badge.PITCH_PX + Badge.RADIUS_PX,
                    blockHeight + 1 + Badge.RADIUS_PX + row * Badge.PITCH_PX));
        }
        if (!marks.isEmpty()) {
            int rows = 1 + (marks.size() - 1) / perRow;
            blockHeight += rows * Badge.PITCH_PX;
            blockWidth = Math.max(blockWidth, Math.min(marks.size(), perRow) * Badge.PITCH_PX);
        }
        return this;
    }

    Cell build() {
        double top = hasPins(Side.TOP) ? ROW_PX : EDGE_PX;
        double bottom = hasPins(Side.BOTTOM) ? ROW_PX : EDGE_PX;
        double content = Math.max(body.heightPx(), blockHeight);
        double bodyY = top + (content - body.heightPx()) / 2;
        double height = top + content + bottom;
        double textX = Math.max(body.widthPx() + 8, rightmostLead() + Setting.CLEAR_PX);
        double textY = top + (content - blockHeight) / 2;
        List<Lead> leads = new ArrayList<>();
        List<Text> texts = new ArrayList<>();
        double width = textX + blockWidth + EDGE_PX;
        for (Body.Pin pin : body.pins()) {
            width = Math.max(width, addPin(pin, height, leads, texts));
        }
        block.stream().filter(text -> !text.text().isEmpty()).forEach(text -> texts.add(text.moved(textX, textY)));
        List<Badge> moved = badges.stream().map(b -> b.moved(textX, textY)).toList();
        return new Cell(
                new Cell.CellName(id, ids, words),
                depth,
                width,
                height,
                new Cell.DrawnBody(body, 0, bodyY),
                leads,
                texts,
                moved,
                free,
                emphasis);
    }

    private double rightmostLead() {
        double right = 0;
        for (Body.Pin pin : body.pins()) {
            Setting setting = settingOf(pin);
            int wires = setting.wires(name(pin)).size();
            right = Math.max(right, pin.x() + Math.max(0, wires - 1) * Setting.LEAD_PX);
        }
        return right;
    }

    /** Of two connector halves the one that a terminal is of. */
    private Setting settingOf(Body.Pin pin) {
        boolean second = settings.size() > 1
                && !TerminalRef.parse(pin.terminal())
                        .part()
                        .equals(settings.get(0).part().id());
        return settings.get(second ? 1 : 0);
    }

    private String name(Body.Pin pin) {
        return settings.size() > 1 ? TerminalRef.parse(pin.terminal()).terminal() : pin.terminal();
    }

    private boolean hasPins(Side side) {
        return body.pins().stream().anyMatch(pin -> pin.side() == side);
    }

    /** Adds a terminal's leads and texts; gives the right edge of its column. */
    private double addPin(Body.Pin pin, double height, List<Lead> leads, List<Text> texts) {
        Setting setting = settingOf(pin);
        String name = name(pin);
        TerminalRef terminal = setting.part().terminal(name);
        List<String> wires = setting.wires(name);
        for (int i = 0; i < wires.size(); i++) {
            leads.add(new Lead(new End(wires.get(i), terminal), pin.side(), pin.x() + i * Setting.LEAD_PX));
        }
        double x = pin.x() + Math.max(0, wires.size() - 1) * Setting.LEAD_PX + Setting.CLEAR_PX;
        double baseline = pin.side() == Side.TOP ? BASELINE_PX : height - ROW_PX + BASELINE_PX + 1;
        Part part = setting.part();
        if (!(part instanceof EarthPoint)) {
            texts.add(new Text(part.id(), Text.Role.TERMINAL, x, baseline, name));
            String volts = wires.isEmpty() || part instanceof Joint || !scene.figures() ? "" : scene.volts(terminal);
            if (!volts.isEmpty()) {
                double at = x + Text.Role.TERMINAL.widthPx(name) + Setting.GAP_PX;
                texts.add(new Text(part.id(), Text.Role.VOLTS, at, baseline, volts));
            }
        }
        return pin.x() + setting.pitch(name);
    }
}
