package loomwright.list;

import java.util.List;
import java.util.Map;

/**
 * What a list was read as.
 *
 * @param plan the plan document, in the form of its JSON
 * @param assumptions all that was filled in
 * @param questions all that must be asked
 * @param places where in the list each wire, its properties and each part of the document come from, by JSON pointer
 * @param readings what a meter showed, in the form of the document that asks for a diagnosis; empty if the list has none
 */
public record ListReading(
        Map<String, Object> plan,
        List<ListAssumption> assumptions,
        List<Question> questions,
        Map<String, CellRef> places,
        MeterTable readings) {
    public ListReading {
        assumptions = List.copyOf(assumptions);
        questions = List.copyOf(questions);
        places = Map.copyOf(places);
    }
}
