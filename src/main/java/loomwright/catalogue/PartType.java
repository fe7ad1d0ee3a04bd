package loomwright.catalogue;

import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * A part as an owner calls it: a headlamp, a horn button.
 *
 * @param name its name in the catalogue
 * @param kind the kind of part that it is
 * @param switchType for a switch, the row of terminals and positions that it follows
 * @param words what an owner calls it
 * @param earth where it is usually earthed through its case; absent if a wire must be given
 * @param place where it usually sits
 * @param works the conditions in which it should be live; empty where they follow from the switch that feeds it
 * @param sets properties that follow from what it is called, such as the construction of a glass fuse
 */
public record PartType(
        String name,
        String kind,
        @Nullable String switchType,
        List<String> words,
        @Nullable Earth earth,
        Place place,
        List<String> works,
        Map<String, String> sets) {

    /** Where a part is earthed through its case. */
    public enum Earth {
        BODY,
        ENGINE
    }

    /** Where in a vehicle a part sits. */
    public enum Place {
        ENGINE,
        DASH,
        FRONT,
        REAR
    }

    public PartType {
        words = List.copyOf(words);
        works = List.copyOf(works);
        sets = Map.copyOf(sets);
    }
}
