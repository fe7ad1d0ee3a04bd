package loomwright.diagnosis;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import loomwright.circuit.fault.SingleFault;
import loomwright.circuit.fault.SizedFault;
import org.jspecify.annotations.Nullable;

/**
 * How severe a fault is: the size that makes the readings most likely.
 *
 * <p>For each of the many faults the plan is solved for sizes a factor 10 apart. In between, a voltage of a linear circuit
 * depends on one branch, of resistance or conductance more by s, as v = v∞ + (v₀ − v∞)/(1 + ks) with the same k everywhere,
 * so between two sizes it is drawn straight over 1/(1 + ks), and the likelihood looked up along that line. From its best place
 * golden-section search climbs to the top, to 2 per cent, with the plan solved at each step (J. Kiefer, Sequential minimax
 * search for a maximum, 1953, from memory).
 *
 * <p>Of a plan's supply there is only one, so that a battery's size is searched at once by {@value #STEPS} solutions and a climb.
 */
final class FaultSize {
    private static final double APART = 10;
    private static final double LITTLE = 0.94;
    private static final int SMALLER = 4;
    /** Places looked up between two sizes. */
    private static final int BETWEEN = 8;

    /** Sizes that a search goes through: less than a factor of two apart in all that is sized (common practice, no source). */
    static final int STEPS = 20;

    /** Steps between two sizes that show a part otherwise. */
    private static final int SEEN_BETWEEN = 4;

    private static final double GOLDEN = (Math.sqrt(5) - 1) / 2;
    /** Natural logarithm of how far the search looks either way, and of how close it ends. */
    static final double REACH = 0.3;

    /** The same where only sizes a factor of three apart have been tried. */
    static final double WIDE_REACH = 0.8;

    private static final double CLOSE = 0.02;

    /** Readings that differ by less do so by nothing that a size depends on, V or ohm. */
    private static final double SAME = 1e-5;
    /** The likelihoods of two faults that show the same differ by no more. */
    private static final double SAME_LOG = 0.02;

    private final Trials trials;
    private final List<Fitted> fitted = new ArrayList<>();
    private final List<Climbed> climbed = new ArrayList<>();

    /** A fault with which two sizes show this fits best by another. */
    private record Fitted(Class<?> kind, PredictedFigures largest, PredictedFigures next, double best) {}

    /** From where a climb began, and where it ended. */
    private record Climbed(FaultCandidate start, FaultCandidate top) {}

    FaultSize(Trials trials) {
        this.trials = trials;
    }

    /**
     * Fits one fault roughly.
     *
     * @param fault of any size
     * @param sound the plan without it; a fault that makes no difference even when it is at its worst is not sized
     * @return empty if the plan has no solution with it, or it does not last at any size
     */
    Optional<FaultCandidate> fit(SizedFault fault, @Nullable FaultCandidate sound) {
        List<FaultCandidate> solved = new ArrayList<>();
        for (double size = fault.largest(); size > fault.smallest() / Math.sqrt(APART); size /= APART) {
            FaultCandidate tried = at(List.of(fault), 0, Set.of(), size);
            if (tried == null) {
                continue;
            } else if (solved.isEmpty() && size < fault.largest()) {
                solved.addAll(lastingAbove(fault, size));
            }
            solved.addAll(seenBetween(fault, solved, tried));
            if (sound != null && trials.likelihood().alike(tried.figures(), sound.figures())) {
                // Smaller ones make even less difference.
                return solved.isEmpty() ? Optional.of(tried) : Optional.of(best(solved, sound));
            }
            solved.add(tried);
            Optional<FaultCandidate> like = solved.size() == 2 ? likeAnother(fault, solved) : Optional.empty();
            if (like.isPresent()) {
                return like;
            }
        }
        return solved.isEmpty() ? Optional.empty() : Optional.of(best(solved, sound));
    }

    /**
     * Between two sizes that show a part otherwise, not only the one or the other: a lamp that works with one joint and only glows with ten
     * times its resistance is weak in between.
     */
    private List<FaultCandidate> seenBetween(SizedFault fault, List<FaultCandidate> solved, FaultCandidate smaller) {
        List<FaultCandidate> found = new ArrayList<>();
        if (solved.isEmpty() || seenAlike(solved.get(solved.size() - 1), smaller)) {
            return found;
        }
        double largest = sized(solved.get(solved.size() - 1).faults(), 0).size();
        double apart = largest / sized(smaller.faults(), 0).size();
        for (int k = 1; k < SEEN_BETWEEN; k++) {
            FaultCandidate tried =
                    at(List.of(fault), 0, Set.of(), largest * Math.pow(apart, -(double) k / SEEN_BETWEEN));
            if (tried != null) {
                found.add(tried);
            }
        }
        return found;
    }

    /** Whether what is seen of the parts that were looked at is the same with both. */
    private boolean seenAlike(FaultCandidate one, FaultCandidate other) {
        List<Measurement> measurements = trials.likelihood().measurements();
        return IntStream.range(0, measurements.size())
                .filter(i -> measurements.get(i).part() != null)
                .allMatch(i -> one.figures().at(i) == other.figures().at(i));
    }

    /** The largest size that lasts, nearly, and one halfway to the size given, which lasts, while the next decade does not. */
    private List<FaultCandidate> lastingAbove(SizedFault fault, double lasting) {
        List<FaultCandidate> found = new ArrayList<>();
        double low = lasting;
        double high = lasting * APART;
        for (int k = 0; k < SMALLER; k++) {
            double middle = Math.sqrt(low * high);
            FaultCandidate tried = at(List.of(fault), 0, Set.of(), middle);
            if (tried == null) {
                high = middle;
            } else {
                low = middle;
                found.add(0, tried);
            }
        }
        return found;
    }

    /**
     * A joint shows what any other in the same path shows: of two that show the same at two sizes the second is sized like the
     * first.
     */
    private Optional<FaultCandidate> likeAnother(SizedFault fault, List<FaultCandidate> two) {
        PredictedFigures largest = two.get(0).figures();
        PredictedFigures next = two.get(1).figures();
        return fitted.stream()
                .filter(f -> f.kind() == fault.getClass() && same(f.largest(), largest) && same(f.next(), next))
                .findFirst()
                .map(f -> {
                    FaultCandidate best =
                            two.stream().min(FaultSearch.LIKELIEST_FIRST).orElseThrow();
                    return higher(best, lasting(best, f.best()));
                });
    }

    private static boolean same(PredictedFigures one, PredictedFigures other) {
        for (int i = 0; i < one.count(); i++) {
            if (Math.abs(one.at(i) - other.at(i)) > SAME || Math.abs(one.open(i) - other.open(i)) > SAME) {
                return false;
            }
        }
        return true;
    }

    /**
     * The same fault with the same fuses blown, of the size that fits best, roughly. Most blown fuses take it out of the circuit,
     * so that smaller sizes show the same.
     *
     * @param worst the fault as large as can be
     */
    FaultCandidate withFusesBlown(FaultCandidate worst) {
        SizedFault fault = sized(worst.faults(), 0);
        FaultCandidate best = worst;
        FaultCandidate last = worst;
        double apart = Math.sqrt(APART);
        for (double size = fault.largest() / apart;
                !worst.fusesBlown().isEmpty() && size > fault.smallest();
                size /= apart) {
            FaultCandidate tried = at(worst.faults(), 0, worst.fusesBlown(), size);
            if (tried == null || trials.likelihood().alike(tried.figures(), last.figures())) {
                break;
            }
            best = higher(best, tried);
            last = tried;
        }
        return best;
    }

    /**
     * Looks for the size anew, at places close together: where a relay or solenoid lets go in between, no line leads there.
     * Cost: some thirty solutions.
     */
    FaultCandidate closer(FaultCandidate rough) {
        return searched(sized(rough.faults(), 0)).map(c -> higher(rough, c)).orElse(rough);
    }

    /**
     * Goes through the sizes of a fault that is alone and blows no fuse, and climbs from the best.
     *
     * @return empty if the plan has no solution with it
     */
    Optional<FaultCandidate> searched(SizedFault fault) {
        double apart = Math.pow(fault.largest() / fault.smallest(), 1.0 / (STEPS - 1));
        FaultCandidate best = null;
        for (int i = 0; i < STEPS; i++) {
            FaultCandidate tried = at(List.of(fault), 0, Set.of(), fault.largest() / Math.pow(apart, i));
            best = best == null ? tried : higher(best, tried);
        }
        return Optional.ofNullable(best).map(c -> climbed(c, 0, Math.log(apart)));
    }

    private FaultCandidate best(List<FaultCandidate> solved, @Nullable FaultCandidate sound) {
        FaultCandidate best = solved.stream().min(FaultSearch.LIKELIEST_FIRST).orElseThrow();
        if (sound == null) {
            return best;
        }
        double most = best.fit().logLikelihood();
        double at = sized(best.faults(), 0).size();
        double perOhm = perOhm(solved, sound);
        for (int i = 0; i < solved.size(); i++) {
            FaultCandidate large = solved.get(i);
            FaultCandidate small = i + 1 < solved.size() ? solved.get(i + 1) : sound;
            double largest = sized(large.faults(), 0).size();
            double apart =
                    small.sound() ? APART : largest / sized(small.faults(), 0).size();
            for (int k = 1; k < BETWEEN; k++) {
                double ohm = largest * Math.pow(apart, -(double) k / BETWEEN);
                double log = trials.likelihood()
                        .of(between(large, small, ohm, perOhm))
                        .logLikelihood();
                if (log > most) {
                    most = log;
                    at = ohm;
                }
            }
        }
        if (most <= sound.fit().logLikelihood()) {
            return best;
        }
        if (solved.size() > 1) {
            fitted.add(new Fitted(
                    best.faults().get(0).getClass(),
                    solved.get(0).figures(),
                    solved.get(1).figures(),
                    at));
        }
        return higher(best, lasting(best, at));
    }

    /** Of a size, or of one a little smaller, if a fuse or a wire goes at that size. */
    private @Nullable FaultCandidate lasting(FaultCandidate best, double size) {
        FaultCandidate tried = null;
        for (int k = 0; k < SMALLER && tried == null; k++) {
            tried = at(best.faults(), 0, Set.of(), size * Math.pow(LITTLE, k));
        }
        return tried;
    }

    /** k of the voltage that changes most, the largest joint taken for an open one. */
    private double perOhm(List<FaultCandidate> solved, FaultCandidate sound) {
        PredictedFigures open = solved.get(0).figures();
        int most = 0;
        for (int i = 0; i < open.count(); i++) {
            if (change(i, open, sound) > change(most, open, sound)) {
                most = i;
            }
        }
        double perOhm = 1;
        double balance = Double.POSITIVE_INFINITY;
        for (FaultCandidate candidate : solved.subList(1, solved.size())) {
            double gone = sound.figures().at(most) - candidate.figures().at(most);
            double left = candidate.figures().at(most) - open.at(most);
            double ratio = gone / left;
            if (ratio > 0 && Double.isFinite(ratio) && Math.abs(Math.log(ratio)) < balance) {
                balance = Math.abs(Math.log(ratio));
                perOhm = ratio / sized(candidate.faults(), 0).size();
            }
        }
        return perOhm;
    }

    private double change(int i, PredictedFigures figures, FaultCandidate sound) {
        return trials.likelihood().predicted().get(i).isVolts()
                ? Math.abs(figures.at(i) - sound.figures().at(i))
                : 0;
    }

    private PredictedFigures between(FaultCandidate large, FaultCandidate small, double ohm, double perOhm) {
        double atLarge = place(sized(large.faults(), 0).size(), perOhm);
        double atSmall = small.sound() ? 1 : place(sized(small.faults(), 0).size(), perOhm);
        double share = (place(ohm, perOhm) - atLarge) / (atSmall - atLarge);
        double[] values = new double[large.figures().count()];
        double[] open = new double[values.length];
        for (int i = 0; i < values.length; i++) {
            PredictedFigures from = large.figures();
            // What is seen of a part, and an open circuit, goes over at once.
            boolean steady = trials.likelihood().predicted().get(i).part() == null
                    && Math.max(from.at(i), small.figures().at(i)) < Bench.OPEN_OHM;
            double part = steady ? share : Math.rint(share);
            values[i] = from.at(i) + part * (small.figures().at(i) - from.at(i));
            open[i] = from.open(i) + part * (small.figures().open(i) - from.open(i));
        }
        return new PredictedFigures(values, open);
    }

    private static double place(double ohm, double perOhm) {
        return 1 / (1 + perOhm * ohm);
    }

    /** Climbs from a size that is near the top, of a fault that is alone; one that shows what another shows ends where that does. */
    FaultCandidate climbedAlone(FaultCandidate start, double reach) {
        SizedFault fault = sized(start.faults(), 0);
        for (Climbed before : climbed) {
            SizedFault other = sized(before.start().faults(), 0);
            if (other.getClass() == fault.getClass()
                    && Math.abs(Math.log(other.size() / fault.size())) < SAME
                    && start.fusesBlown().equals(before.start().fusesBlown())
                    && same(start.figures(), before.start().figures())) {
                double size = sized(before.top().faults(), 0).size();
                FaultCandidate like = higher(start, at(start.faults(), 0, start.fusesBlown(), size));
                double off = like.fit().logLikelihood() - before.top().fit().logLikelihood();
                if (Math.abs(off) < SAME_LOG) {
                    return like;
                }
            }
        }
        FaultCandidate top = climbed(start, 0, reach);
        climbed.add(new Climbed(start, top));
        return top;
    }

    /**
     * Climbs from a size that is near the top.
     *
     * @param which of the faults is sized
     * @param reach how far either way, natural logarithm
     */
    FaultCandidate climbed(FaultCandidate start, int which, double reach) {
        return climbed(start, which, reach, FaultCandidate::logWeight);
    }

    /**
     * The same by least squares: it leads on where every reading is far off and the likelihood says only that they are wrong.
     */
    FaultCandidate closer(FaultCandidate start, int which, double reach) {
        return climbed(start, which, reach, FaultSize::closeness);
    }

    private static double closeness(FaultCandidate candidate) {
        return -candidate.fit().deviations().stream().mapToDouble(d -> d * d).sum();
    }

    private FaultCandidate climbed(
            FaultCandidate start, int which, double reach, ToDoubleFunction<FaultCandidate> height) {
        double middle = Math.log(sized(start.faults(), which).size());
        double low = middle - reach;
        double high = middle + reach;
        FaultCandidate best = start;
        double left = high - GOLDEN * (high - low);
        double right = low + GOLDEN * (high - low);
        FaultCandidate atLeft = at(start.faults(), which, start.fusesBlown(), Math.exp(left));
        FaultCandidate atRight = at(start.faults(), which, start.fusesBlown(), Math.exp(right));
        while (high - low > CLOSE) {
            best = higher(higher(best, atLeft, height), atRight, height);
            if (at(atLeft, height) > at(atRight, height)) {
                high = right;
                right = left;
                atRight = atLeft;
                left = high - GOLDEN * (high - low);
                atLeft = at(start.faults(), which, start.fusesBlown(), Math.exp(left));
            } else {
                low = left;
                left = right;
                atLeft = atRight;
                right = low + GOLDEN * (high - low);
                atRight = at(start.faults(), which, start.fusesBlown(), Math.exp(right));
            }
        }
        return higher(higher(best, atLeft, height), atRight, height);
    }

    private static SizedFault sized(List<SingleFault> faults, int which) {
        return (SizedFault) faults.get(which);
    }

    private @Nullable FaultCandidate at(List<SingleFault> faults, int which, Set<String> fusesBlown, double size) {
        List<SingleFault> sized = new ArrayList<>(faults);
        sized.set(which, sized(faults, which).withSize(size));
        return trials.lasting(sized, fusesBlown).orElse(null);
    }

    private static double at(@Nullable FaultCandidate candidate, ToDoubleFunction<FaultCandidate> height) {
        return candidate == null ? Double.NEGATIVE_INFINITY : height.applyAsDouble(candidate);
    }

    private static FaultCandidate higher(FaultCandidate one, @Nullable FaultCandidate other) {
        return higher(one, other, FaultCandidate::logWeight);
    }

    private static FaultCandidate higher(
            FaultCandidate one, @Nullable FaultCandidate other, ToDoubleFunction<FaultCandidate> height) {
        return at(other, height) > at(one, height) && other != null ? other : one;
    }
}
