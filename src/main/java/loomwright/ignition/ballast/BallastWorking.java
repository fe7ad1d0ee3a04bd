package loomwright.ignition.ballast;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import loomwright.circuit.IgnitionModule;
import loomwright.ignition.SelfHeating;
import loomwright.ignition.WorkingNumber;
import loomwright.ignition.ballast.BallastResult.InCondition;

/** The steps of a feed as in a textbook: the formula, then the numbers in it. */
final class BallastWorking {
    private final IgnitionFeed feed;
    private final List<String> lines = new ArrayList<>();

    private BallastWorking(IgnitionFeed feed) {
        this.feed = feed;
    }

    static List<String> lines(IgnitionFeed feed, BallastResult result) {
        BallastWorking working = new BallastWorking(feed);
        working.resistances();
        for (InCondition in : result.conditions()) {
            String name = words(in);
            working.without(name, in);
            FeedState bypassed = in.withBypass();
            if (bypassed != null) {
                working.with(name, bypassed);
            }
        }
        Warming warming = result.warming();
        if (warming != null) {
            working.warming("Cold start", warming.coldStart());
            working.warming("Hot idle: T = T_ambient + R_th d P(R(T)) settles", warming.hotIdle());
            working.warming("Key left on, contacts closed", warming.keyLeftOn());
        }
        return working.lines;
    }

    static String words(InCondition in) {
        return switch (in.condition()) {
            case RUN -> "Key on";
            case CRANK -> "Cranking";
            case RUNNING -> "Running";
            case OFF, ACCESSORY -> throw new IllegalStateException("no ignition in " + in.condition());
        };
    }

    private void resistances() {
        if (feed.temperatures().coilC() != 20) {
            add(
                    "Coil at %s C: R = R20 (1 + 0.00393 (T - 20)) = %s x (1 + 0.00393 x %s) = %s ohm",
                    feed.temperatures().coilC(),
                    feed.coil20Ohm(),
                    feed.temperatures().coilC() - 20,
                    feed.coilOhm());
        }
        if (feed.thermal().ballastCoefficientPerK() != 0 && feed.temperatures().ballastC() != 20) {
            add(
                    "Ballast at %s C: R = R20 (1 + %s x %s) = R20 x %s",
                    feed.temperatures().ballastC(),
                    feed.thermal().ballastCoefficientPerK(),
                    feed.temperatures().ballastC() - 20,
                    SelfHeating.resistanceOhm(
                            1,
                            feed.thermal().ballastCoefficientPerK(),
                            feed.temperatures().ballastC()));
        }
    }

    private void without(String name, InCondition in) {
        FeedState state = in.withoutBypass();
        String ballast = sum(feed.elementsOhm());
        if (feed.closing().module() && in.supplyV() < feed.closing().deadBelowV()) {
            add(
                    name + ": the module does not work below %s V. It has %s V, so no current flows.",
                    feed.closing().deadBelowV(),
                    in.supplyV());
            return;
        }
        if (feed.closing().module()) {
            add(
                    name + ": I = (U - U_module) / (feed + ballast + coil + transistor + return) = (%s - %s) / (%s + "
                            + ballast + " + %s + %s + %s) = %s A",
                    in.supplyV(),
                    feed.closing().dropV(),
                    feed.feedOhm(),
                    feed.coilOhm(),
                    IgnitionModule.SLOPE_OHM,
                    feed.returnOhm(),
                    state.currentA());
            if (feed.returnOhm() > 0) {
                lines.add("The module's own supply, 0.1 A at nominal voltage, flows in the return too and is counted");
            }
            if (feed.closing().limitA() != null) {
                add(
                        "The module holds the current to %s A at most",
                        feed.closing().limitA());
            }
        } else {
            add(
                    name + ": I = U / (feed + ballast + coil + contacts + return) = %s / (%s + " + ballast
                            + " + %s + %s + %s) = %s A",
                    in.supplyV(),
                    feed.feedOhm(),
                    feed.coilOhm(),
                    feed.closing().contactOhm(),
                    feed.returnOhm(),
                    state.currentA());
        }
        figures(name, state);
    }

    private void with(String name, FeedState state) {
        Integer tap = feed.bypassTap();
        int at = tap == null ? 0 : tap;
        List<Double> after = feed.elementsOhm().subList(at, feed.elementsOhm().size());
        add(
                name
                        + ", bypass joined: solved as a network; the bypass brings %s A, the feed %s A, together %s A through "
                        + (after.isEmpty() ? "the coil alone" : sum(after) + " ohm of ballast and the coil"),
                state.bypassA(),
                state.feedA(),
                state.currentA());
        figures(name + ", bypass joined", state);
    }

    private void figures(String name, FeedState state) {
        add(name + ": U_coil = I R = %s x %s = %s V", state.currentA(), feed.coilOhm(), state.coilV());
        add(
                name + ": heat I^2 R: coil %s W, ballast " + (state.elements().isEmpty() ? "0" : heats(state))
                        + " W, contacts or module %s W, wires %s W; battery %s W",
                state.coilHeatW(),
                state.switchHeatW(),
                state.wireHeatW(),
                state.supplyPowerW());
        add(
                name + ": average over the dwell of %s: %s A, %s V, coil %s W",
                feed.dwellFraction(),
                state.averageA(),
                state.averageCoilV(),
                state.averageCoilHeatW());
    }

    private void warming(String name, Warming.End end) {
        add(
                name + ": ballast %s C, %s ohm, %s W; coil %s C, %s ohm, %s W; %s A, %s V at the coil"
                        + (end.survives() ? "" : " - too hot to survive"),
                end.ballastC(),
                end.ballastOhm(),
                end.ballastHeatW(),
                end.coilC(),
                end.coilOhm(),
                end.coilHeatW(),
                end.currentA(),
                end.coilV());
    }

    private static String heats(FeedState state) {
        return state.elements().stream()
                .map(element -> WorkingNumber.of(element.heatW()))
                .collect(Collectors.joining(" + "));
    }

    private static String sum(List<Double> ohm) {
        return ohm.isEmpty() ? "0" : ohm.stream().map(WorkingNumber::of).collect(Collectors.joining(" + "));
    }

    private void add(String line, double... values) {
        lines.add(WorkingNumber.line(line, values));
    }
}
