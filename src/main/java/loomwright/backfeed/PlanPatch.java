package loomwright.backfeed;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Function;
import loomwright.backfeed.BackfeedReport.PatchOperation;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.circuit.Wire;
import org.jspecify.annotations.Nullable;

/**
 * The change from one plan to another as a JSON Patch (RFC 6902) of its parts and wires. Before anything is touched its id is
 * tested at its place, what is removed is removed from the highest place down, and what is new is added at the end; so a patch
 * fails as a whole on a plan that is not the one it was made for.
 */
final class PlanPatch {
    private final List<PatchOperation> operations = new ArrayList<>();

    private PlanPatch() {}

    static List<PatchOperation> between(Plan before, Plan after) {
        PlanPatch patch = new PlanPatch();
        patch.list("/parts/", before.parts(), after.parts(), Part::id);
        patch.list("/wires/", before.wires(), after.wires(), Wire::id);
        return List.copyOf(patch.operations);
    }

    /**
     * A plan with a patch of {@link #between} applied.
     *
     * @throws IllegalArgumentException if the patch was made for another plan
     */
    static Plan apply(Plan plan, List<PatchOperation> patch) {
        List<Part> parts = new ArrayList<>(plan.parts());
        List<Wire> wires = new ArrayList<>(plan.wires());
        for (PatchOperation operation : patch) {
            String[] path = operation.path().split("/", -1);
            if (path[1].equals("parts")) {
                apply(operation, path, parts, Part.class, Part::id);
            } else {
                apply(operation, path, wires, Wire.class, Wire::id);
            }
        }
        return plan.with(parts, wires);
    }

    /**
     * A plan with a patch applied that was made for another: each part and wire that it touches must be in the plan as it is in
     * the other, wherever it stands there, and none may bear an id that the patch adds.
     *
     * @param madeFor the plan that the patch was made for
     * @return empty if they have changed the same thing
     */
    static Optional<Plan> applyBeside(Plan madeFor, Plan onto, List<PatchOperation> patch) {
        List<Part> parts = new ArrayList<>(onto.parts());
        List<Wire> wires = new ArrayList<>(onto.wires());
        for (PatchOperation operation : patch) {
            String[] path = operation.path().split("/", -1);
            boolean done = path[1].equals("parts")
                    ? applyBeside(operation, path, madeFor.parts(), parts, Part.class, Part::id)
                    : applyBeside(operation, path, madeFor.wires(), wires, Wire.class, Wire::id);
            if (!done) {
                return Optional.empty();
            }
        }
        return Optional.of(onto.with(parts, wires));
    }

    private static <T> boolean applyBeside(
            PatchOperation operation,
            String[] path,
            List<T> madeFor,
            List<T> list,
            Class<T> type,
            Function<T, String> id) {
        if (operation.op().equals("add")) {
            T added = type.cast(Objects.requireNonNull(operation.value()));
            return find(list, id.apply(added), id) == null && list.add(added);
        }
        int place = list.indexOf(madeFor.get(Integer.parseInt(path[2])));
        if (operation.op().equals("test")) {
            return place >= 0;
        } else if (place >= 0 && operation.op().equals("replace")) {
            list.set(place, type.cast(Objects.requireNonNull(operation.value())));
        } else if (place >= 0) {
            list.remove(place);
        }
        return place >= 0;
    }

    private static <T> void apply(
            PatchOperation operation, String[] path, List<T> list, Class<T> type, Function<T, String> id) {
        switch (operation.op()) {
            case "test" -> {
                if (!id.apply(list.get(Integer.parseInt(path[2]))).equals(operation.value())) {
                    throw new IllegalArgumentException("not the plan that the patch was made for: " + operation);
                }
            }
            case "replace" -> list.set(Integer.parseInt(path[2]), type.cast(operation.value()));
            case "add" -> list.add(type.cast(operation.value()));
            case "remove" -> list.remove(Integer.parseInt(path[2]));
            default -> throw new IllegalArgumentException(operation.op());
        }
    }

    private <T> void list(String pointer, List<? extends T> before, List<? extends T> after, Function<T, String> id) {
        List<Integer> removed = new ArrayList<>();
        for (int i = 0; i < before.size(); i++) {
            T was = before.get(i);
            String wanted = id.apply(was);
            T is = find(after, wanted, id);
            if (is == null || !is.equals(was)) {
                operations.add(new PatchOperation("test", pointer + i + "/id", wanted));
            }
            if (is == null) {
                removed.add(i);
            } else if (!is.equals(was)) {
                operations.add(new PatchOperation("replace", pointer + i, is));
            }
        }
        for (T one : after) {
            if (find(before, id.apply(one), id) == null) {
                operations.add(new PatchOperation("add", pointer + "-", Objects.requireNonNull(one)));
            }
        }
        for (int k = removed.size() - 1; k >= 0; k--) {
            operations.add(new PatchOperation("remove", pointer + removed.get(k), null));
        }
    }

    private static <T> @Nullable T find(List<? extends T> list, String wanted, Function<T, String> id) {
        for (T one : list) {
            if (id.apply(one).equals(wanted)) {
                return one;
            }
        }
        return null;
    }
}
