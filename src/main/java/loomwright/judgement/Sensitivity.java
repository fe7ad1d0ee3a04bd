package loomwright.judgement;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.Supplier;

/**
 * Which of the things that were assumed would turn a verdict. Each is tried alone at its other usual end; what changes no
 * level is not reported.
 */
public final class Sensitivity {
    private final Verdict base;
    private final List<Dependence> found = new ArrayList<>();

    /** Of a verdict that rests on what was assumed. */
    public Sensitivity(Verdict base) {
        this.base = base;
    }

    /**
     * Tries one unknown at its other end.
     *
     * @param unknown which
     * @param assumed what was taken
     * @param other its other usual end
     * @param judged the verdict there
     */
    public Sensitivity with(Dependence.Unknown unknown, double assumed, double other, Supplier<Verdict> judged) {
        Verdict there = judged.get();
        if (there.level() != base.level()) {
            found.add(new Dependence(
                    base.code(),
                    unknown,
                    unknown.with(),
                    assumed,
                    other,
                    there.level(),
                    there.limit(),
                    Double.isFinite(there.ratio()) ? there.ratio() : null));
        }
        return this;
    }

    /** The unknowns that turn the verdict, the one that moves it most first, all of them together last. */
    public List<Dependence> turns() {
        return found.stream()
                .sorted(Comparator.comparing((Dependence one) -> one.unknown() == Dependence.Unknown.ALL_TOGETHER)
                        .thenComparing(Comparator.comparingDouble(this::movedBy).reversed()))
                .toList();
    }

    private double movedBy(Dependence one) {
        Double ratio = one.ratio();
        return ratio == null ? Double.POSITIVE_INFINITY : Math.abs(ratio - base.ratio());
    }
}
