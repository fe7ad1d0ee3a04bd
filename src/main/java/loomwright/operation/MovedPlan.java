package loomwright.operation;

import static loomwright.message.Arg.arg;
import static loomwright.message.Arg.texts;

import java.util.Arrays;
import java.util.BitSet;
import java.util.List;
import loomwright.answer.InputError;
import loomwright.answer.InputErrors;
import loomwright.answer.RejectedInput;
import loomwright.circuit.Plan;

/**
 * A plan after a sequence of moves. What is set before the key is first turned is how everything stands when the battery is
 * connected. Then the moves happen one after the other, and a relay that is in stays in as long as its voltage holds it. A key
 * that is turned on passes every step on the way; one that is turned back does not.
 */
public final class MovedPlan {
    private static final Step[] STEPS = Step.values();

    private final SettingScan scan;
    private final SwitchSettings settings;
    private final int[] setting;
    private BitSet active = new BitSet();
    private int at = -1;

    private MovedPlan(SettingScan scan) {
        this.scan = scan;
        this.settings = scan.settings();
        this.setting = settings.drawn();
    }

    /**
     * Follows moves.
     *
     * @param moves none for the plan as drawn, with the key off
     * @return the step that they end in
     * @throws RejectedInput UNKNOWN_REFERENCE for a switch, position or step that there is not, with the place of the move
     * @throws loomwright.network.NoConvergence if a network could not be solved within the limits
     */
    public static SolvedStep follow(Plan plan, List<Move> moves, PlanSolver solver) {
        SettingScan scan = new SettingScan(SwitchSettings.of(plan), solver);
        follow(scan, moves);
        return scan.report();
    }

    /**
     * Follows moves in a scan, which then stands at the step that they end in.
     *
     * @throws RejectedInput as the other
     */
    public static void follow(SettingScan scan, List<Move> moves) {
        MovedPlan moved = new MovedPlan(scan);
        moved.check(moves);
        for (Move move : moves) {
            if (move.turnsKey()) {
                moved.turnTo(Step.of(move.to()).orElseThrow());
            } else {
                moved.set(move);
            }
        }
        if (moved.at < 0) {
            moved.turnTo(Step.OFF);
        }
    }

    private void check(List<Move> moves) {
        InputErrors errors = new InputErrors();
        for (int i = 0; i < moves.size(); i++) {
            Move move = moves.get(i);
            String where = "/after/" + i;
            if (move.turnsKey()) {
                errors.check(
                        Step.of(move.to()).isPresent(),
                        InputError.Code.UNKNOWN_REFERENCE,
                        where,
                        move,
                        AcceptedMove.KEY_STEP,
                        texts("steps", Arrays.stream(STEPS).map(Step::code).toList()));
                continue;
            }
            int part = settings.indexOf(move.what());
            errors.check(
                    part >= 0,
                    InputError.Code.UNKNOWN_REFERENCE,
                    where,
                    move,
                    AcceptedMove.SWITCH,
                    texts(
                            "ids",
                            settings.open().stream().map(s -> s.get(0).id()).toList()));
            if (part >= 0) {
                errors.check(
                        settings.findPosition(part, move.to()).isPresent(),
                        InputError.Code.UNKNOWN_REFERENCE,
                        where,
                        move,
                        AcceptedMove.POSITION,
                        arg("switch", move.what()),
                        texts(
                                "positions",
                                settings.open().get(part).stream()
                                        .map(SwitchSettings::position)
                                        .toList()));
            }
        }
        errors.reject();
    }

    private void set(Move move) {
        int part = settings.indexOf(move.what());
        setting[part] = settings.findPosition(part, move.to()).orElseThrow();
        if (at >= 0) {
            solve(STEPS[at]);
        }
    }

    private void turnTo(Step step) {
        if (step.place() > at) {
            while (at < step.place()) {
                at++;
                solve(STEPS[at]);
            }
        } else {
            at = step.place();
            solve(step);
        }
    }

    private void solve(Step step) {
        active = scan.settle(setting.clone(), step, active);
    }
}
