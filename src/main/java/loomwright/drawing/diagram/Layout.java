package loomwright.drawing.diagram;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import loomwright.answer.Progress;
import loomwright.circuit.Wire;
import loomwright.drawing.diagram.Cell.End;
import loomwright.drawing.diagram.Cell.Lead;
import org.eclipse.elk.alg.layered.options.EdgeLabelSideSelection;
import org.eclipse.elk.alg.layered.options.LayeredOptions;
import org.eclipse.elk.alg.layered.options.LayeringStrategy;
import org.eclipse.elk.alg.layered.options.NodePlacementStrategy;
import org.eclipse.elk.core.RecursiveGraphLayoutEngine;
import org.eclipse.elk.core.data.LayoutMetaDataService;
import org.eclipse.elk.core.math.ElkPadding;
import org.eclipse.elk.core.options.CoreOptions;
import org.eclipse.elk.core.options.Direction;
import org.eclipse.elk.core.options.EdgeLabelPlacement;
import org.eclipse.elk.core.options.EdgeRouting;
import org.eclipse.elk.core.options.PortConstraints;
import org.eclipse.elk.core.options.PortSide;
import org.eclipse.elk.core.util.BasicProgressMonitor;
import org.eclipse.elk.graph.ElkBendPoint;
import org.eclipse.elk.graph.ElkEdge;
import org.eclipse.elk.graph.ElkEdgeSection;
import org.eclipse.elk.graph.ElkLabel;
import org.eclipse.elk.graph.ElkNode;
import org.eclipse.elk.graph.ElkPort;
import org.eclipse.elk.graph.util.ElkGraphUtil;

/**
 * Places cells in layers from the supply downwards, and the wires between them at right angles (the layered method of
 * Sugiyama, Tagawa and Toda, as in the Eclipse Layout Kernel). The same plan gives the same places.
 *
 * @param cells upper left corner of each, by id
 * @param wires points of each from its {@code from} to its {@code to}, by id
 * @param labels upper left corner of each wire's label, by id
 * @param ends column of each end of a wire
 */
record Layout(
        Map<String, DiagramPoint> cells,
        Map<String, List<DiagramPoint>> wires,
        Map<String, DiagramPoint> labels,
        Map<End, Double> ends,
        double widthPx,
        double heightPx) {
    private static final double MARGIN_PX = 14;
    private static final double APART_PX = 11;
    private static final int LEAST_IN_LAYER = 3;

    /** A picture wider than this many times its height is read neither on a screen nor on paper. */
    private static final double WIDEST = 2;

    /** Of several circuits that nothing joins, beside and below each other. */
    private static final double WIDTH_TO_HEIGHT = 0.8;

    private double widthToHeight() {
        return widthPx / heightPx;
    }

    /** How wide the layers may be. */
    enum Layers {
        /** As short as the longest path. */
        FEWEST,
        /** Narrow where that makes few layers more. */
        NARROW,
        /** Few cells in each. */
        NARROWEST
    }

    /** Lays out; {@code anyOrder} lets the terminals of cells that allow it stand in the order that suits best. */
    static Layout of(
            List<Cell> cells,
            List<Wire> wires,
            Map<String, WireLabel> labels,
            boolean anyOrder,
            Layers layers,
            Progress progress) {
        return new Graph(anyOrder, layers).layout(cells, wires, labels, progress);
    }

    /** Lets the progress end the layout before each of its stages; a stage, once begun, goes on to its end. */
    private static final class Watched extends BasicProgressMonitor {
        private final Progress progress;

        Watched(Progress progress) {
            this.progress = progress;
        }

        @Override
        public boolean isCanceled() {
            progress.at(0, 1);
            return false;
        }

        @Override
        protected BasicProgressMonitor doSubTask(float work, int levels) {
            return new Watched(progress).withMaxHierarchyLevels(levels);
        }
    }

    /** The graph while it is built and laid out. */
    private static final class Graph {
        private final boolean anyOrder;
        private final Layers layers;
        private final ElkNode root = ElkGraphUtil.createGraph();
        private final Map<String, ElkNode> nodes = new LinkedHashMap<>();
        private final Map<End, ElkPort> ports = new HashMap<>();
        private final Map<End, Cell> cellOf = new HashMap<>();
        private final Map<End, Side> sides = new HashMap<>();
        private final Map<String, ElkEdge> edges = new LinkedHashMap<>();
        private final Map<String, Boolean> backwards = new HashMap<>();

        Graph(boolean anyOrder, Layers layers) {
            this.anyOrder = anyOrder;
            this.layers = layers;
            LayoutMetaDataService.getInstance();
            root.setProperty(CoreOptions.ALGORITHM, LayeredOptions.ALGORITHM_ID);
            root.setProperty(CoreOptions.DIRECTION, Direction.DOWN);
            root.setProperty(CoreOptions.EDGE_ROUTING, EdgeRouting.ORTHOGONAL);
            root.setProperty(CoreOptions.RANDOM_SEED, 1);
            root.setProperty(CoreOptions.PADDING, new ElkPadding(MARGIN_PX));
            root.setProperty(CoreOptions.ASPECT_RATIO, WIDTH_TO_HEIGHT);
            root.setProperty(CoreOptions.SPACING_NODE_NODE, APART_PX);
            root.setProperty(LayeredOptions.SPACING_EDGE_NODE, 10.0);
            root.setProperty(LayeredOptions.SPACING_EDGE_EDGE, 11.0);
            root.setProperty(LayeredOptions.SPACING_NODE_NODE_BETWEEN_LAYERS, 12.0);
            root.setProperty(LayeredOptions.SPACING_EDGE_NODE_BETWEEN_LAYERS, 9.0);
            root.setProperty(LayeredOptions.SPACING_EDGE_EDGE_BETWEEN_LAYERS, 10.0);
            root.setProperty(CoreOptions.SPACING_EDGE_LABEL, 0.0);
            root.setProperty(CoreOptions.SPACING_LABEL_NODE, 4.0);
            // What only shows in which order terminals suit need not be straight.
            root.setProperty(
                    LayeredOptions.NODE_PLACEMENT_STRATEGY,
                    anyOrder ? NodePlacementStrategy.BRANDES_KOEPF : NodePlacementStrategy.NETWORK_SIMPLEX);
            root.setProperty(LayeredOptions.EDGE_LABELS_SIDE_SELECTION, EdgeLabelSideSelection.ALWAYS_UP);
            root.setProperty(LayeredOptions.THOROUGHNESS, 20);
        }

        Layout layout(List<Cell> cells, List<Wire> wires, Map<String, WireLabel> labels, Progress progress) {
            cells.forEach(this::addCell);
            switch (layers) {
                case FEWEST -> {}
                case NARROW -> root.setProperty(LayeredOptions.LAYERING_STRATEGY, LayeringStrategy.MIN_WIDTH);
                case NARROWEST -> {
                    root.setProperty(LayeredOptions.LAYERING_STRATEGY, LayeringStrategy.COFFMAN_GRAHAM);
                    root.setProperty(LayeredOptions.LAYERING_COFFMAN_GRAHAM_LAYER_BOUND, Math.max(LEAST_IN_LAYER, (int)
                            Math.round(Math.sqrt(cells.size()))));
                }
            }
            for (Wire wire : wires) {
                WireLabel label = labels.get(wire.id());
                if (label != null) {
                    addWire(wire, label);
                }
            }
            new RecursiveGraphLayoutEngine().layout(root, new Watched(progress));
            return read(wires);
        }

        private void addCell(Cell cell) {
            ElkNode node = ElkGraphUtil.createNode(root);
            node.setDimensions(cell.widthPx(), cell.heightPx());
            node.setProperty(
                    CoreOptions.PORT_CONSTRAINTS,
                    anyOrder && cell.free() ? PortConstraints.FIXED_SIDE : PortConstraints.FIXED_POS);
            nodes.put(cell.named().id(), node);
            for (Lead lead : cell.leads()) {
                ElkPort port = ElkGraphUtil.createPort(node);
                boolean top = lead.side() == Side.TOP;
                port.setProperty(CoreOptions.PORT_SIDE, top ? PortSide.NORTH : PortSide.SOUTH);
                port.setLocation(lead.x(), top ? 0 : cell.heightPx());
                ports.put(lead.end(), port);
                cellOf.put(lead.end(), cell);
                sides.put(lead.end(), lead.side());
            }
        }

        private void addWire(Wire wire, WireLabel label) {
            End from = new End(wire.id(), wire.from());
            End to = new End(wire.id(), wire.to());
            boolean turned = isTurned(from, to);
            ElkEdge edge =
                    ElkGraphUtil.createSimpleEdge(get(ports, turned ? to : from), get(ports, turned ? from : to));
            ElkLabel text = ElkGraphUtil.createLabel(wire.id(), edge);
            text.setDimensions(label.widthPx(), label.heightPx());
            text.setProperty(CoreOptions.EDGE_LABELS_PLACEMENT, EdgeLabelPlacement.CENTER);
            edges.put(wire.id(), edge);
            backwards.put(wire.id(), turned);
        }

        /** Whether the {@code to} of a wire is above its {@code from}. */
        private boolean isTurned(End from, End to) {
            Side fromSide = get(sides, from);
            Side toSide = get(sides, to);
            if (fromSide != toSide) {
                return fromSide == Side.TOP;
            }
            return get(cellOf, to).depth() < get(cellOf, from).depth();
        }

        private Layout read(List<Wire> wires) {
            Map<String, DiagramPoint> cells = new HashMap<>();
            nodes.forEach((id, node) -> cells.put(id, new DiagramPoint(node.getX(), node.getY())));
            Map<End, Double> ends = new HashMap<>();
            ports.forEach((end, port) -> ends.put(end, port.getParent().getX() + port.getX() + port.getWidth() / 2));
            Map<String, List<DiagramPoint>> lines = new HashMap<>();
            Map<String, DiagramPoint> labels = new HashMap<>();
            for (Wire wire : wires) {
                ElkEdge edge = get(edges, wire.id());
                List<DiagramPoint> points = points(edge);
                if (get(backwards, wire.id())) {
                    Collections.reverse(points);
                }
                lines.put(wire.id(), points);
                ElkLabel label = edge.getLabels().get(0);
                labels.put(wire.id(), new DiagramPoint(label.getX(), label.getY()));
            }
            return new Layout(cells, lines, labels, ends, root.getWidth(), root.getHeight());
        }

        private static List<DiagramPoint> points(ElkEdge edge) {
            List<DiagramPoint> points = new ArrayList<>();
            for (ElkEdgeSection section : edge.getSections()) {
                points.add(new DiagramPoint(section.getStartX(), section.getStartY()));
                for (ElkBendPoint bend : section.getBendPoints()) {
                    points.add(new DiagramPoint(bend.getX(), bend.getY()));
                }
                points.add(new DiagramPoint(section.getEndX(), section.getEndY()));
            }
            return points;
        }

        private static <K, V> V get(Map<K, V> map, K key) {
            V value = map.get(key);
            if (value == null) {
                throw new IllegalStateException("nothing drawn for " + key);
            }
            return value;
        }
    }

    /**
     * Places scenes of one circuit together, so that everything stands at the same place in all of them: once to see in
     * which order terminals suit best, then with that order and with room for what stands beside them in any scene.
     */
    static Placed place(Collection<Scene> scenes, Progress progress) {
        Placed placed = place(scenes, Layers.FEWEST, progress);
        for (Layers layers : List.of(Layers.NARROW, Layers.NARROWEST)) {
            if (placed.layout().widthToHeight() > WIDEST) {
                Placed other = place(scenes, layers, progress);
                if (other.layout().widthToHeight() < placed.layout().widthToHeight()) {
                    placed = other;
                }
            }
        }
        return placed;
    }

    static Placed place(Collection<Scene> scenes, Layers layers, Progress progress) {
        Scene any = scenes.iterator().next();
        Flow flow = any.flow();
        List<Wire> wires = any.plan().wires();
        Map<String, WireLabel> labels = new LinkedHashMap<>();
        for (Scene scene : scenes) {
            wires.forEach(wire -> labels.merge(wire.id(), WireLabel.of(wire, scene), WireLabel::wider));
        }
        Layout first = of(Cells.list(any, flow, Map.of()), wires, labels, true, layers, progress);
        IdentityHashMap<Scene, List<Cell>> cells = new IdentityHashMap<>();
        Map<String, Cell> widest = new LinkedHashMap<>();
        for (Scene scene : scenes) {
            List<Cell> here = Cells.list(scene, flow, first.ends());
            cells.put(scene, here);
            here.forEach(cell -> widest.merge(cell.named().id(), cell, Cell::wider));
        }
        return new Placed(cells, of(List.copyOf(widest.values()), wires, labels, false, layers, progress));
    }

    /**
     * Where everything is: the same for all scenes that were placed together.
     *
     * @param cells of each of these scenes
     */
    record Placed(IdentityHashMap<Scene, List<Cell>> cells, Layout layout) {
        List<Cell> cells(Scene scene) {
            List<Cell> here = cells.get(scene);
            if (here == null) {
                throw new IllegalArgumentException("not placed together with these scenes");
            }
            return here;
        }
    }
}
