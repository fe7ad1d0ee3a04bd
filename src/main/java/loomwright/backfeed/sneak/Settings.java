package loomwright.backfeed.sneak;

import java.math.BigInteger;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import loomwright.answer.InputError;
import loomwright.answer.RejectedInput;
import loomwright.backfeed.Situations;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;

/**
 * The settings of all open switches and contacts, numbered; 0 is the plan as drawn.
 *
 * <p>A setting has a code too: one field of bits for each open part, 0 where it stands as drawn. So one code is within
 * another if all its changes are made there too, which is a mask and a comparison.
 */
final class Settings {
    private final Plan plan;
    private final List<List<Part>> open;
    private final int count;
    private final int[] shift;
    private final long[] field;

    private Settings(Plan plan, List<List<Part>> open, int count) {
        this.plan = plan;
        this.open = open;
        this.count = count;
        shift = new int[open.size()];
        field = new long[open.size()];
        int used = 0;
        for (int p = 0; p < shift.length; p++) {
            int bits = Integer.SIZE - Integer.numberOfLeadingZeros(open.get(p).size() - 1);
            shift[p] = used;
            field[p] = ((1L << bits) - 1) << used;
            used += bits;
        }
    }

    /**
     * Counts the settings of a plan.
     *
     * @throws RejectedInput OVER_LIMIT, with their number, if there are more than {@code limit}
     */
    static Settings of(Plan plan, int limit) {
        return of(plan, 0, limit);
    }

    /**
     * Counts the settings of a plan that is gone through without a fault and with each of some.
     *
     * @throws RejectedInput OVER_LIMIT, with their number, if there are more than {@code limit} in all
     */
    static Settings of(Plan plan, int faults, int limit) {
        // A part with a single setting is not open at all.
        List<List<Part>> open =
                Situations.open(plan).stream().filter(s -> s.size() > 1).toList();
        BigInteger count =
                open.stream().map(s -> BigInteger.valueOf(s.size())).reduce(BigInteger.ONE, BigInteger::multiply);
        BigInteger all = count.multiply(BigInteger.valueOf(faults + 1L));
        if (all.compareTo(BigInteger.valueOf(limit)) > 0) {
            throw new RejectedInput(new InputError(
                    InputError.Code.OVER_LIMIT,
                    "/parts",
                    all + " combinations"
                            + (faults == 0 ? "" : ": " + count + " without a fault and with each of " + faults),
                    "a plan whose free switches and breakers make at most " + limit
                            + " combinations; tie switches to the condition that do not matter here"));
        }
        return new Settings(plan, open, count.intValueExact());
    }

    Plan plan() {
        return plan;
    }

    /** The open parts, each in all its settings, that of the plan first. */
    List<List<Part>> open() {
        return open;
    }

    int count() {
        return count;
    }

    /** Sets each open part as in a numbered setting. */
    void read(int number, int[] setting) {
        int rest = number;
        for (int p = setting.length - 1; p >= 0; p--) {
            int size = open.get(p).size();
            setting[p] = rest % size;
            rest /= size;
        }
    }

    long code(int[] setting) {
        long code = 0;
        for (int p = 0; p < setting.length; p++) {
            code |= (long) setting[p] << shift[p];
        }
        return code;
    }

    /** Whether all changes of one code are made in another too. */
    boolean within(long code, long other) {
        if ((code & other) != code) {
            return false;
        }
        for (int p = 0; p < shift.length; p++) {
            long own = code & field[p];
            if (own != 0 && own != (other & field[p])) {
                return false;
            }
        }
        return true;
    }

    int changes(long code) {
        int changes = 0;
        for (long bits : field) {
            changes += (code & bits) == 0 ? 0 : 1;
        }
        return changes;
    }

    /** The plan so set. */
    Plan planAt(long code) {
        Plan set = plan;
        for (int p = 0; p < shift.length; p++) {
            if (at(code, p) != 0) {
                set = set.withPart(open.get(p).get(at(code, p)));
            }
        }
        return set;
    }

    private int at(long code, int part) {
        return (int) ((code & field[part]) >>> shift[part]);
    }

    /** Where the open parts stand, by id: all, or those only that do not stand as drawn. */
    Map<String, String> positions(long code, boolean changedOnly) {
        Map<String, String> positions = new LinkedHashMap<>();
        for (int p = 0; p < shift.length; p++) {
            int at = at(code, p);
            if (at != 0 || !changedOnly) {
                Part part = open.get(p).get(at);
                positions.put(part.id(), Situations.position(part));
            }
        }
        return positions;
    }
}
