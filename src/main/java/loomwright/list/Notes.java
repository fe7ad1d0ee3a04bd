package loomwright.list;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import loomwright.answer.Basis;
import loomwright.message.Arg;
import org.jspecify.annotations.Nullable;

/** Collects what was assumed and what must be asked, while a list is read. */
final class Notes {
    static final Basis PRACTICE = Basis.commonPractice("usual value where a list states none");

    private final List<ListAssumption> assumptions = new ArrayList<>();
    private final List<Question> questions = new ArrayList<>();

    void assume(
            ListAssumption.Code code,
            CellRef at,
            List<String> about,
            @Nullable Basis basis,
            Map<String, String> arguments) {
        assumptions.add(new ListAssumption(code.with(texts(arguments)), code.instead(), about, basis, at));
    }

    void ask(
            Question.Code code,
            CellRef at,
            List<String> about,
            String written,
            List<String> choices,
            Map<String, String> arguments) {
        questions.add(new Question(code.with(texts(arguments)), about, at, written, choices));
    }

    /** What a list says is its owner's text. */
    private static Arg[] texts(Map<String, String> arguments) {
        return new TreeMap<>(arguments)
                .entrySet().stream()
                        .map(each -> Arg.arg(each.getKey(), each.getValue()))
                        .toArray(Arg[]::new);
    }

    List<ListAssumption> assumptions() {
        return List.copyOf(assumptions);
    }

    List<Question> questions() {
        return List.copyOf(questions);
    }
}
