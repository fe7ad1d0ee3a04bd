package loomwright.circuit;

import com.fasterxml.jackson.annotation.JsonTypeName;
import java.util.ArrayList;
import java.util.List;
import loomwright.answer.InputErrors;
import org.jspecify.annotations.Nullable;

/**
 * One or more resistance elements in series: end {@code a}, a tap between each two ({@code tap1}, {@code tap2}, ...),
 * end {@code b}. It has no polarity.
 *
 * @param elementsOhm resistance of each element from a to b, hot
 */
@JsonTypeName("ballast")
public record Ballast(String id, @Nullable String label, List<Double> elementsOhm) implements Part {
    static final int MAX_ELEMENTS = 8;

    public Ballast {
        InputErrors faults = Bounds.part(id, label);
        Bounds.size(faults, "/elementsOhm", elementsOhm, 1, MAX_ELEMENTS);
        if (elementsOhm != null) {
            for (int i = 0; i < elementsOhm.size(); i++) {
                Bounds.resistance(faults, "/elementsOhm/" + i, elementsOhm.get(i));
            }
        }
        faults.reject();
        elementsOhm = List.copyOf(elementsOhm);
    }

    @Override
    public List<String> terminals() {
        List<String> names = new ArrayList<>();
        names.add("a");
        for (int i = 1; i < elementsOhm.size(); i++) {
            names.add("tap" + i);
        }
        names.add("b");
        return names;
    }
}
