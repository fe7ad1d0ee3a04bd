package loomwright.backfeed;

import loomwright.operation.SwitchSettings;

/**
 * Settings of open switches and contacts as numbers. A setting's code is one field of bits for each open part, 0 where it stands
 * as drawn; so one code is within another if all its changes are made there too, which is a mask and a comparison.
 */
final class SettingCodes {
    private final SwitchSettings settings;
    private final int[] shift;
    private final long[] field;

    SettingCodes(SwitchSettings settings) {
        this.settings = settings;
        int parts = settings.open().size();
        shift = new int[parts];
        field = new long[parts];
        int used = 0;
        for (int p = 0; p < parts; p++) {
            int bits = Integer.SIZE
                    - Integer.numberOfLeadingZeros(settings.open().get(p).size() - 1);
            shift[p] = used;
            field[p] = ((1L << bits) - 1) << used;
            used += bits;
        }
    }

    SwitchSettings settings() {
        return settings;
    }

    long code(int[] setting) {
        long code = 0;
        for (int p = 0; p < setting.length; p++) {
            code |= (long) setting[p] << shift[p];
        }
        return code;
    }

    int[] setting(long code) {
        int[] setting = new int[shift.length];
        for (int p = 0; p < setting.length; p++) {
            setting[p] = (int) ((code & field[p]) >>> shift[p]);
        }
        return setting;
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

    /** The number of a setting, the inverse of {@link SwitchSettings#read}. */
    int number(int[] setting) {
        int number = 0;
        for (int p = 0; p < setting.length; p++) {
            number = number * settings.open().get(p).size() + setting[p];
        }
        return number;
    }
}
