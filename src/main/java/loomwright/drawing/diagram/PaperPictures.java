package loomwright.drawing.diagram;

import static loomwright.message.Arg.texts;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import loomwright.answer.Finding;
import loomwright.answer.Progress;
import loomwright.circuit.EarthPoint;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.circuit.Wire;
import loomwright.comparison.ComparisonQuestion;
import loomwright.comparison.PlanComparison;
import loomwright.comparison.PlanComparison.ItemChange;
import loomwright.drawing.Svg;
import loomwright.drawing.diagram.Layout.Layers;
import loomwright.operation.PlanReadings;
import loomwright.operation.Step;

/**
 * The wiring that a job is about, in pictures that are read on one page: the wires in question with the parts at their
 * ends and, where there is room, the wires between those parts. No figures; colours in words.
 *
 * @param pictures in the order of their numbers; as many as one page holds
 * @param keys what its lines mean, as a picture of its own; absent where nothing stands out
 * @param leftOut numbers that are in none of the pictures
 */
public record PaperPictures(List<Svg> pictures, List<Svg> keys, List<Integer> leftOut) {
    /** What a page of A4 or Letter holds within its margins beside a caption, before it is enlarged. */
    private static final double WIDTH_PX = 614;

    private static final double HEIGHT_PX = 770;

    /** So large that the smallest writing, of 9.5 pixels, has 8 points. */
    private static final double SCALE = 1.125;

    private static final double APART_PX = 8;

    private static final double KEYS_PX = 400;

    public PaperPictures {
        pictures = List.copyOf(pictures);
        keys = List.copyOf(keys);
        leftOut = List.copyOf(leftOut);
    }

    /**
     * Draws what a change touches.
     *
     * @param numbers of the changes that are drawn, in the order in which they belong together
     * @param id begins the ids within the pictures
     */
    public static PaperPictures ofChange(
            ComparisonQuestion question,
            PlanComparison comparison,
            Map<ItemChange, Integer> numbers,
            String id,
            Progress progress) {
        Compared compared = Compared.of(question, comparison, numbers);
        return new Maker(compared.overlay().all(), compared.emphasis(), compared.names(), id, progress)
                .make(compared.marks());
    }

    /**
     * Draws the whole wiring if there is room, else that of the findings.
     *
     * @param findings of the plan; they are numbered in their order
     * @param id begins the ids within the pictures
     */
    public static PaperPictures ofFindings(Plan plan, List<Finding> findings, String id, Progress progress) {
        List<Mark> marks = new ArrayList<>();
        for (Finding finding : findings) {
            marks.add(new Mark(
                    Mark.Kind.valueOf(finding.severity().name()),
                    marks.size() + 1,
                    finding.code(),
                    finding.ids(),
                    finding.text(),
                    finding.message().shortText()));
        }
        return new Maker(plan, Map.of(), Map.of(), id, progress).makeWhole(marks);
    }

    private static final class Maker {
        private final Plan all;
        private final Map<String, Emphasis> emphasis;
        private final Map<String, String> names;
        private final String id;
        private final Progress progress;
        private final List<Drawing> drawings = new ArrayList<>();
        private final List<Integer> leftOut = new ArrayList<>();
        private final Map<List<Mark>, Drawing> tried = new HashMap<>();

        /** Where the next picture would stand on the page. */
        private double x;

        private double y;
        private double rowHeight;

        Maker(Plan all, Map<String, Emphasis> emphasis, Map<String, String> names, String id, Progress progress) {
            this.all = all;
            this.emphasis = emphasis;
            this.names = names;
            this.id = id;
            this.progress = progress;
        }

        PaperPictures makeWhole(List<Mark> marks) {
            Drawing whole = drawn(all, marks);
            return fits(whole) ? done(List.of(whole)) : make(marks);
        }

        /** Fills each picture with what belongs together for as long as it fits. */
        PaperPictures make(List<Mark> marks) {
            List<Mark> gathered = new ArrayList<>();
            for (List<Mark> circuit : circuits(marks)) {
                if (fits(close(joined(gathered, circuit)))) {
                    gathered.addAll(circuit);
                } else {
                    put(gathered);
                    gathered.clear();
                    gathered.addAll(putAllButLast(circuit));
                }
            }
            put(gathered);
            return done(drawings);
        }

        /** Puts a circuit that may be too large for one picture; gives what the last picture begins with. */
        private List<Mark> putAllButLast(List<Mark> circuit) {
            List<Mark> gathered = new ArrayList<>();
            if (fits(close(circuit))) {
                return circuit;
            }
            for (Mark mark : circuit) {
                if (!gathered.isEmpty() && !fits(close(joined(gathered, List.of(mark))))) {
                    put(gathered);
                    gathered.clear();
                }
                gathered.add(mark);
            }
            return gathered;
        }

        private static List<Mark> joined(List<Mark> some, List<Mark> others) {
            List<Mark> all = new ArrayList<>(some);
            all.addAll(others);
            return all;
        }

        private static boolean fits(Drawing drawing) {
            return drawing.widthPx() <= WIDTH_PX && drawing.heightPx() <= HEIGHT_PX;
        }

        /** Beside the last picture or below; left out where the page is full. */
        private void put(List<Mark> marks) {
            if (marks.isEmpty()) {
                return;
            }
            Drawing drawing = close(marks);
            if (!fits(drawing)) {
                // Smaller writing would not be read.
                marks.forEach(mark -> leftOut.add(mark.number()));
                return;
            }
            boolean beside = x + drawing.widthPx() <= WIDTH_PX;
            double top = beside ? y : y + rowHeight + APART_PX;
            if (!drawings.isEmpty() && top + drawing.heightPx() > HEIGHT_PX) {
                marks.forEach(mark -> leftOut.add(mark.number()));
                return;
            }
            rowHeight = beside ? Math.max(rowHeight, drawing.heightPx()) : drawing.heightPx();
            x = (beside ? x : 0) + drawing.widthPx() + APART_PX;
            y = top;
            drawings.add(drawing);
        }

        private PaperPictures done(List<Drawing> finished) {
            List<Svg> pictures = new ArrayList<>();
            for (Drawing drawing : finished) {
                pictures.add(svg(drawing, id + "-" + (pictures.size() + 1)));
            }
            return new PaperPictures(pictures, emphasis.isEmpty() ? List.of() : List.of(keys()), leftOut);
        }

        private static Svg svg(Drawing drawing, String id) {
            return DrawingSvg.of(
                    new StepDrawings(
                            Step.OFF,
                            Map.of(Step.OFF, drawing),
                            List.of(),
                            List.of(),
                            new PlanReadings(drawing.captions().title(), List.of()),
                            List.of()),
                    id,
                    SCALE);
        }

        private Svg keys() {
            Composition sheet = new Composition();
            double bottom = new Legend(sheet, 0, KEYS_PX, 0).changes().bottom();
            String title = DiagramText.KEYS_TITLE.text();
            return svg(sheet.drawing(KEYS_PX, bottom, title, "", title, List.of()), id + "-keys");
        }

        /** Marks at parts or wires that meet, together; those at the body of the vehicle do not meet there. */
        private List<List<Mark>> circuits(List<Mark> marks) {
            List<List<Mark>> circuits = new ArrayList<>();
            List<Set<String>> parts = new ArrayList<>();
            for (Mark mark : marks) {
                Set<String> here = parts(mark);
                List<Mark> met = new ArrayList<>();
                for (int i = circuits.size() - 1; i >= 0; i--) {
                    Set<String> other = parts.get(i);
                    if (here.stream().anyMatch(other::contains)) {
                        met.addAll(circuits.remove(i));
                        here.addAll(parts.remove(i));
                    }
                }
                met.add(mark);
                met.sort(Comparator.comparingInt(Mark::number));
                circuits.add(met);
                parts.add(here);
            }
            circuits.sort(Comparator.comparingInt(circuit -> circuit.get(0).number()));
            return circuits;
        }

        private Set<String> parts(Mark mark) {
            Set<String> parts = new HashSet<>();
            for (String one : mark.ids()) {
                all.findWire(one).ifPresentOrElse(wire -> addEnds(wire, parts), () -> parts.add(one));
            }
            return parts;
        }

        private void addEnds(Wire wire, Set<String> parts) {
            for (String part : List.of(wire.from().part(), wire.to().part())) {
                if (!(all.findPart(part).orElseThrow() instanceof EarthPoint)) {
                    parts.add(part);
                }
            }
        }

        /** What is marked, with the wires between if there is room. */
        private Drawing close(List<Mark> marks) {
            Drawing known = tried.get(marks);
            if (known == null) {
                known = drawnClose(marks);
                tried.put(List.copyOf(marks), known);
            }
            return known;
        }

        private Drawing drawnClose(List<Mark> marks) {
            progress.at(0, 1);
            Set<String> ids = new LinkedHashSet<>();
            marks.forEach(mark -> ids.addAll(mark.ids()));
            Drawing generous = drawn(Section.withWiresBetween(all, ids), marks);
            return fits(generous) ? generous : drawn(Section.of(all, ids), marks);
        }

        /** In as few layers as possible, or in more where it would be too wide. */
        private Drawing drawn(Plan section, List<Mark> marks) {
            Drawing drawing = drawn(section, marks, Layers.FEWEST);
            for (Layers layers : List.of(Layers.NARROW, Layers.NARROWEST)) {
                if (!fits(drawing)) {
                    Drawing other = drawn(section, marks, layers);
                    drawing = other.widthPx() < drawing.widthPx() ? other : drawing;
                }
            }
            return drawing;
        }

        private Drawing drawn(Plan section, List<Mark> marks, Layers layers) {
            Map<String, Emphasis> here = new HashMap<>();
            section.parts().stream().map(Part::id).forEach(one -> keep(here, one));
            section.wires().forEach(wire -> keep(here, wire.id()));
            section.connectors().forEach(connector -> keep(here, connector.id()));
            Scene scene = Scene.ofWiring(section, marks, here, names);
            Draft draft = Draft.of(scene, Layout.place(List.of(scene), layers, progress));
            Composition sheet = new Composition();
            sheet.add(draft, 0, 0);
            return sheet.drawing(
                    draft.widthPx(),
                    draft.heightPx(),
                    all.name(),
                    "",
                    DiagramText.WIRING_DESCRIPTION
                            .with(texts(
                                    "wires",
                                    section.wires().stream()
                                            .map(wire -> scene.name(wire.id()))
                                            .toList()))
                            .text(),
                    marks.stream().map(Mark::number).toList());
        }

        private void keep(Map<String, Emphasis> here, String one) {
            Emphasis why = emphasis.get(one);
            if (why != null) {
                here.put(one, why);
            }
        }
    }
}
