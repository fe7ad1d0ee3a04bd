package loomwright.diagnosis;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.IdentityHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import loomwright.circuit.fault.BatteryFault;
import loomwright.circuit.fault.BlownFuse;
import loomwright.circuit.fault.NotCharging;
import loomwright.circuit.fault.OffValue;
import loomwright.circuit.fault.ShortBetween;
import loomwright.circuit.fault.ShortToEarth;
import loomwright.circuit.fault.SingleFault;
import loomwright.circuit.fault.SingleFaults;
import loomwright.circuit.fault.SizedFault;
import org.jspecify.annotations.Nullable;

/**
 * Tries the plan as drawn, every single fault, and pairs.
 *
 * <p>Pairs are made only of single faults that explain some of the readings, and are tried only when no single one explains all:
 * whoever explains everything with one fault needs no second (J. de Kleer, B. C. Williams, Diagnosing multiple faults,
 * 1987: minimal diagnoses, from memory).
 */
final class FaultSearch {
    /** What differs by no more than rounding is left in the order of the plan. */
    static final Comparator<FaultCandidate> LIKELIEST_FIRST = Comparator.comparingDouble(
                    (FaultCandidate c) -> Math.rint(c.logWeight() * 1e6))
            .reversed();

    /** A fault explains some of the readings if they are e² times as likely with it. */
    private static final double HELPS = 2;

    /** Only joints of about this logarithm of weight below the best are sized to the last per cent. */
    private static final double IN_THE_RUNNING = 12;

    /** What is as likely as anything, but for a factor of this logarithm, gains nothing by another size. */
    private static final double NOTHING_TO_GAIN = 0.5;
    /** These are sized with care in any case. */
    private static final int LEADING = 12;

    private static final int SEARCHED = 8;

    private static final int FOR_EACH_READING = 8;
    /** Pairs whose joints are fitted together, each in turn. */
    private static final int FITTED_PAIRS = 10;
    /** Of which no more are fitted once so many explain all readings. */
    private static final int ENOUGH = 3;

    private static final int ROUNDS = 3;
    /** Sizes that are tried until one lasts. */
    private static final double APART = Math.sqrt(10);
    /** Natural logarithm of how far a size may shift when a second fault comes in. */
    private static final double WIDE = 1.2;

    private final Trials trials;
    private final FaultSize sizes;
    private final DiagnosisLimits limits;
    private final @Nullable FaultCandidate sound;
    private int pairs;

    FaultSearch(Trials trials, DiagnosisLimits limits) {
        this.trials = trials;
        this.sizes = new FaultSize(trials);
        this.limits = limits;
        this.sound = trials.roughlySound();
    }

    /** How many pairs were tried. */
    int pairs() {
        return pairs;
    }

    /** Every single fault with the size and the fuses that fit best, likeliest first. */
    List<FaultCandidate> singles() {
        List<FaultCandidate> found = roughly();
        if (aBlownFuseHelps(found)) {
            List<Measurement> inUse = PossibleReadings.inUse(trials.bench().plan());
            found.replaceAll(c -> afterUse(c, inUse));
            found.sort(LIKELIEST_FIRST);
        }
        double least = found.isEmpty() ? 0 : found.get(0).logWeight() - IN_THE_RUNNING;
        double mostLikely = Stream.concat(Stream.ofNullable(sound), found.stream())
                .mapToDouble(c -> c.fit().logLikelihood())
                .max()
                .orElse(0);
        Set<FaultCandidate> climbed = Collections.newSetFromMap(new IdentityHashMap<>());
        found.replaceAll(c -> {
            boolean gains = c.fit().logLikelihood() < mostLikely - NOTHING_TO_GAIN;
            return c.logWeight() > least && gains ? climbed(c, climbed) : c;
        });
        found.sort(LIKELIEST_FIRST);
        for (int k = 0; k < Math.min(LEADING, found.size()); k++) {
            found.set(k, climbed(found.get(k), climbed));
        }
        found.sort(LIKELIEST_FIRST);
        FaultCandidate closely = trials.sound();
        if (found.stream().noneMatch(c -> c.fit().explains())
                && (closely == null || !closely.fit().explains())) {
            searchSizes(found);
            found.sort(LIKELIEST_FIRST);
        }
        return found;
    }

    /** A fault of the size that fits best, to the last per cent; itself if it has no size, or shows nothing. */
    private FaultCandidate climbed(FaultCandidate c, Set<FaultCandidate> before) {
        boolean climbs = c.faults().get(0) instanceof SizedFault sized
                && (c.fusesBlown().isEmpty() || sized.size() < sized.largest())
                && !before.contains(c)
                && !seemsSound(c);
        FaultCandidate top =
                climbs ? sizes.climbedAlone(c, c.fusesBlown().isEmpty() ? FaultSize.REACH : FaultSize.WIDE_REACH) : c;
        before.add(top);
        return top;
    }

    private List<FaultCandidate> roughly() {
        List<FaultCandidate> found = new ArrayList<>();
        for (SingleFault fault : SingleFaults.listWithinParts(trials.bench().plan())) {
            if (fault instanceof BatteryFault battery) {
                sizes.searched(battery).ifPresent(found::add);
            } else if (fault instanceof SizedFault sized) {
                fitted(sized).ifPresent(found::add);
            } else {
                best(List.of(fault), Set.of()).ifPresent(found::add);
            }
        }
        found.sort(LIKELIEST_FIRST);
        return found;
    }

    /** With all fuses whole and of the size that fits best, or with the fuses blown that it opens at its worst. */
    private Optional<FaultCandidate> fitted(SizedFault fault) {
        Optional<FaultCandidate> whole = sizes.fit(fault, sound);
        boolean opens = !trials.of(List.of(fault.withSize(fault.largest())), Set.of())
                .map(trials::opening)
                .orElse(Set.of())
                .isEmpty();
        return opens
                ? Stream.concat(whole.stream(), largestBlown(fault, Set.of()).map(sizes::withFusesBlown).stream())
                        .min(LIKELIEST_FIRST)
                : whole;
    }

    /** As large as lasts once it has blown what it blows: of a short that melts wires all the same a smaller one. */
    private Optional<FaultCandidate> largestBlown(SizedFault fault, Set<String> fusesBlown) {
        for (double size = fault.largest(); size > fault.smallest(); size /= APART) {
            Optional<FaultCandidate> blown = best(List.of(fault.withSize(size)), fusesBlown);
            if (blown.isPresent()) {
                return blown;
            }
        }
        return Optional.empty();
    }

    private boolean aBlownFuseHelps(List<FaultCandidate> found) {
        return sound != null
                && found.stream()
                        .anyMatch(c -> c.faults().get(0) instanceof BlownFuse
                                && c.fit().logLikelihood() > sound.fit().logLikelihood() + HELPS);
    }

    /**
     * With the fuses blown that a fault opens when something else is switched on than was for the readings, if that goes better
     * with them.
     */
    private FaultCandidate afterUse(FaultCandidate c, List<Measurement> inUse) {
        SingleFault fault = c.faults().get(0);
        boolean carriesMore = fault instanceof ShortToEarth
                || fault instanceof ShortBetween
                || (fault instanceof OffValue off && off.what() != OffValue.What.CONTACTS);
        if (!carriesMore || !(fault instanceof SizedFault sized)) {
            return c;
        }
        Set<String> opening = new LinkedHashSet<>(trials.bench()
                .measure(List.of(sized.withSize(sized.largest())), Set.of(), inUse)
                .map(Bench.Measured::opening)
                .orElse(Set.of()));
        opening.removeAll(c.fusesBlown());
        return opening.isEmpty()
                ? c
                : Stream.concat(Stream.of(c), largestBlown(sized, opening).map(sizes::withFusesBlown).stream())
                        .min(LIKELIEST_FIRST)
                        .orElse(c);
    }

    /** Before two faults are thought of, the likeliest joints are sized with more care. */
    private void searchSizes(List<FaultCandidate> found) {
        int searched = 0;
        for (int k = 0; k < found.size() && searched < SEARCHED; k++) {
            if (found.get(k).faults().get(0) instanceof SizedFault
                    && found.get(k).fusesBlown().isEmpty()
                    && !seemsSound(found.get(k))) {
                found.set(k, sizes.closer(found.get(k)));
                searched++;
            }
        }
    }

    private boolean seemsSound(FaultCandidate candidate) {
        return sound != null && trials.likelihood().alike(candidate.figures(), sound.figures());
    }

    /**
     * With the fuses whole or blown that they open one after the other, whichever goes best with the readings: some were
     * taken before they went, but none before one that opens before any reading could be.
     *
     * @param fusesBlown what is blown to begin with
     * @return empty if the plan has no solution with them
     */
    private Optional<FaultCandidate> best(List<SingleFault> faults, Set<String> fusesBlown) {
        List<FaultCandidate> lasting = new ArrayList<>();
        FaultCandidate next = trials.of(faults, fusesBlown).orElse(null);
        while (next != null) {
            if (trials.lasts(next)) {
                lasting.add(next);
            }
            Set<String> opening = trials.opening(next);
            Set<String> blown = new LinkedHashSet<>(next.fusesBlown());
            next = opening.isEmpty() || !blown.addAll(opening)
                    ? null
                    : trials.of(faults, blown).orElse(null);
        }
        return lasting.stream().min(LIKELIEST_FIRST);
    }

    /** Pairs of what explains some of the readings, likeliest first. */
    List<FaultCandidate> pairs(List<FaultCandidate> singles) {
        List<FaultCandidate> bases = bases(singles);
        List<FaultCandidate> found = new ArrayList<>();
        for (int i = 0; i < bases.size(); i++) {
            for (int j = i + 1; j < bases.size() && pairs < limits.maxPairs(); j++) {
                FaultCandidate one = bases.get(i);
                FaultCandidate other = bases.get(j);
                if (apart(one, other)) {
                    pairs++;
                    both(one, other).ifPresent(found::add);
                }
            }
        }
        // Each sized alone takes all of the sag upon itself: only together do they come to the fore.
        found.replaceAll(c -> c.faults().stream().allMatch(BatteryFault.class::isInstance) ? fitted(c) : c);
        found.sort(LIKELIEST_FIRST);
        int explaining = 0;
        for (int k = 0; k < Math.min(FITTED_PAIRS, found.size()) && explaining < ENOUGH; k++) {
            found.set(k, fitted(found.get(k)));
            explaining += found.get(k).fit().explains() ? 1 : 0;
        }
        found.sort(LIKELIEST_FIRST);
        return found;
    }

    /** Two faults in one place are not looked for, but that a battery is worn, flat and not charged, any two of these. */
    private static boolean apart(FaultCandidate one, FaultCandidate other) {
        return (ofSupply(one) && ofSupply(other)) || Collections.disjoint(ids(one), ids(other));
    }

    private static boolean ofSupply(FaultCandidate single) {
        SingleFault fault = single.faults().get(0);
        return fault instanceof BatteryFault || fault instanceof NotCharging;
    }

    private static Set<String> ids(FaultCandidate candidate) {
        Set<String> ids = new LinkedHashSet<>(candidate.fusesBlown());
        candidate.faults().forEach(f -> ids.addAll(f.ids()));
        return ids;
    }

    private Optional<FaultCandidate> both(FaultCandidate one, FaultCandidate other) {
        List<SingleFault> faults = new ArrayList<>(one.faults());
        faults.addAll(other.faults());
        Set<String> fuses = new LinkedHashSet<>(one.fusesBlown());
        fuses.addAll(other.fusesBlown());
        return best(faults, fuses);
    }

    /** Sizes in turn: two of them first by least squares, which leads there from afar, all by what is likeliest. */
    private FaultCandidate fitted(FaultCandidate pair) {
        FaultCandidate best = climbed(pair);
        if (!best.fit().explains() && pair.faults().stream().allMatch(SizedFault.class::isInstance)) {
            FaultCandidate nearer = pair;
            for (int round = 0; round < ROUNDS; round++) {
                for (int which = 0; which < pair.faults().size(); which++) {
                    nearer = sizes.closer(nearer, which, WIDE);
                }
            }
            best = Stream.of(best, climbed(nearer)).min(LIKELIEST_FIRST).orElseThrow();
        }
        return best;
    }

    private FaultCandidate climbed(FaultCandidate pair) {
        FaultCandidate best = pair;
        for (int round = 0; round < ROUNDS; round++) {
            for (int which = 0; which < pair.faults().size(); which++) {
                if (best.faults().get(which) instanceof SizedFault) {
                    best = sizes.climbed(best, which, round == 0 ? WIDE : WIDE / 4);
                }
            }
        }
        return best;
    }

    /**
     * What pairs are made of: one of each group that the readings cannot tell apart, the likeliest first, and for each
     * deviating reading some that explain it. As many as make no more pairs than allowed.
     */
    private List<FaultCandidate> bases(List<FaultCandidate> singles) {
        if (sound == null) {
            return List.of();
        }
        double least = sound.fit().logLikelihood() + HELPS;
        List<FaultCandidate> helping =
                singles.stream().filter(c -> c.fit().logLikelihood() > least).toList();
        List<FaultCandidate> distinct = Ties.of(helping, trials.likelihood()).stream()
                .map(group -> group.get(0))
                .toList();
        int most = (int) Math.floor((1 + Math.sqrt(1 + 8.0 * limits.maxPairs())) / 2);
        Set<FaultCandidate> bases = new LinkedHashSet<>();
        for (int reading = 0; reading < sound.fit().deviations().size(); reading++) {
            if (sound.fit().deviates(reading)
                    || Math.abs(sound.fit().deviations().get(reading)) > Fit.LIMIT) {
                int r = reading;
                distinct.stream()
                        .filter(c -> !c.fit().deviates(r))
                        .limit(FOR_EACH_READING)
                        .forEach(bases::add);
            }
        }
        // A battery that is flat as well hides what else is wrong with the supply: alone neither helps.
        singles.stream().filter(FaultSearch::ofSupply).forEach(bases::add);
        bases.addAll(distinct);
        return bases.stream().limit(most).sorted(LIKELIEST_FIRST).toList();
    }
}
