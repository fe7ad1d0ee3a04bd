package loomwright.ignition.ballast;

import static loomwright.message.Arg.arg;
import static loomwright.message.Arg.quantities;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import loomwright.circuit.IgnitionModule;
import loomwright.ignition.SelfHeating;
import loomwright.ignition.ballast.BallastResult.InCondition;
import loomwright.message.Arg;
import loomwright.message.Message;

/** The steps of a feed as in a textbook: the formula, then the numbers in it. */
final class BallastWorking {
    private final IgnitionFeed feed;
    private final List<Message> lines = new ArrayList<>();

    private BallastWorking(IgnitionFeed feed) {
        this.feed = feed;
    }

    static List<Message> lines(IgnitionFeed feed, BallastResult result) {
        BallastWorking working = new BallastWorking(feed);
        working.resistances();
        for (InCondition in : result.conditions()) {
            working.without(in);
            FeedState bypassed = in.withBypass();
            if (bypassed != null) {
                working.with(in, bypassed);
            }
        }
        Warming warming = result.warming();
        if (warming != null) {
            working.warming("cold-start", warming.coldStart());
            working.warming("hot-idle", warming.hotIdle());
            working.warming("key-left-on", warming.keyLeftOn());
        }
        return working.lines;
    }

    private void resistances() {
        if (feed.temperatures().coilC() != 20) {
            add(
                    BallastText.COIL_WARM,
                    arg("temperatureC", feed.temperatures().coilC()),
                    arg("coldOhm", feed.coil20Ohm()),
                    arg("resistanceOhm", feed.coilOhm()));
        }
        if (feed.thermal().ballastCoefficientPerK() != 0 && feed.temperatures().ballastC() != 20) {
            add(
                    BallastText.BALLAST_WARM,
                    arg("temperatureC", feed.temperatures().ballastC()),
                    arg(
                            "warmerRatio",
                            SelfHeating.resistanceOhm(
                                    1,
                                    feed.thermal().ballastCoefficientPerK(),
                                    feed.temperatures().ballastC())));
        }
    }

    private void without(InCondition in) {
        FeedState state = in.withoutBypass();
        IgnitionFeed.Closing closing = feed.closing();
        if (closing.module() && in.supplyV() < closing.deadBelowV()) {
            add(BallastText.MODULE_DEAD, when(in), arg("leastV", closing.deadBelowV()), arg("supplyV", in.supplyV()));
            return;
        }
        if (closing.module()) {
            add(
                    BallastText.CURRENT_WITH_MODULE,
                    when(in),
                    arg("supplyV", in.supplyV()),
                    arg("dropV", closing.dropV()),
                    arg("feedOhm", feed.leads().feedOhm()),
                    arg("ballastOhm", sum(feed.elementsOhm())),
                    arg("coilOhm", feed.coilOhm()),
                    arg("transistorOhm", IgnitionModule.SLOPE_OHM),
                    arg("returnOhm", feed.leads().returnOhm()),
                    arg("currentA", state.electric().currentA()));
            if (feed.leads().returnOhm() > 0) {
                add(BallastText.MODULE_SUPPLY_COUNTED);
            }
            Double limitA = closing.limitA();
            if (limitA != null) {
                add(BallastText.MODULE_LIMITS, arg("limitA", limitA));
            }
        } else {
            add(
                    BallastText.CURRENT_WITH_CONTACTS,
                    when(in),
                    arg("supplyV", in.supplyV()),
                    arg("feedOhm", feed.leads().feedOhm()),
                    arg("ballastOhm", sum(feed.elementsOhm())),
                    arg("coilOhm", feed.coilOhm()),
                    arg("contactOhm", closing.contactOhm()),
                    arg("returnOhm", feed.leads().returnOhm()),
                    arg("currentA", state.electric().currentA()));
        }
        figures(in, "no", state);
    }

    private void with(InCondition in, FeedState state) {
        Integer tap = feed.ballast().bypassTap();
        int at = tap == null ? 0 : tap;
        List<Double> after = feed.elementsOhm().subList(at, feed.elementsOhm().size());
        add(
                BallastText.CURRENT_WITH_BYPASS,
                when(in),
                arg("bypassA", state.electric().bypassA()),
                arg("feedA", state.electric().feedA()),
                arg("currentA", state.electric().currentA()),
                quantities("leftOhm", after.isEmpty() ? List.of() : List.of(sum(after))));
        figures(in, "yes", state);
    }

    private void figures(InCondition in, String bypassed, FeedState state) {
        add(
                BallastText.COIL_VOLTAGE,
                when(in),
                arg("bypassed", bypassed),
                arg("currentA", state.electric().currentA()),
                arg("coilOhm", feed.coilOhm()),
                arg("coilV", state.electric().coilV()));
        add(
                BallastText.HEAT,
                when(in),
                arg("bypassed", bypassed),
                arg("coilW", state.heat().coilHeatW()),
                arg("ballastW", state.heat().ballastHeatW()),
                arg("switchW", state.heat().switchHeatW()),
                arg("wiresW", state.heat().wireHeatW()),
                arg("batteryW", state.heat().supplyPowerW()));
        if (in.condition().engineTurns()) {
            average(in, bypassed, state);
        }
    }

    /** With the engine stopped nothing goes on and off, so there is nothing to average. */
    private void average(InCondition in, String bypassed, FeedState state) {
        add(
                BallastText.AVERAGE,
                when(in),
                arg("bypassed", bypassed),
                arg("dwellFraction", feed.dwellFraction()),
                arg("currentA", state.electric().currentA()),
                arg("averageA", state.electric().averageA()),
                arg("closedCoilW", state.heat().coilHeatW()),
                arg("coilW", state.heat().averageCoilHeatW()));
    }

    private void warming(String how, Warming.End end) {
        add(
                BallastText.WARMED,
                arg("how", how),
                arg("ballastC", end.ballastC()),
                arg("ballastOhm", end.ballastOhm()),
                arg("ballastW", end.ballastHeatW()),
                arg("coilC", end.coilC()),
                arg("coilOhm", end.coilOhm()),
                arg("coilW", end.coilHeatW()),
                arg("currentA", end.currentA()),
                arg("coilV", end.coilV()),
                arg("survives", end.survives() ? "yes" : "no"));
    }

    private static double sum(List<Double> ohm) {
        return ohm.stream().mapToDouble(Double::doubleValue).sum();
    }

    private static Arg when(InCondition in) {
        return arg("when", in.condition().name().toLowerCase(Locale.ROOT));
    }

    private void add(BallastText code, Arg... arguments) {
        lines.add(code.with(arguments));
    }
}
