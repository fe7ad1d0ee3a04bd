package loomwright.bulk;

import java.io.IOException;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import loomwright.answer.Severity;
import org.jspecify.annotations.Nullable;

/** Counts as answers go out. Its size is that of the list of kinds of finding. */
final class SummaryCounter {
    private static final Comparator<Summary.Count> WORST_FIRST =
            Comparator.comparing(Summary.Count::severity).thenComparing(Summary.Count::code);

    private final Map<Kind, Seen> findings = new HashMap<>();
    private long answers;
    private long problems;
    private long blank;
    private long passedOver;
    private long nextLine;

    private record Kind(Severity severity, String code) {}

    private static final class Seen {
        private long count;
        private long lines;
    }

    SummaryCounter(long firstLine) {
        nextLine = firstLine;
    }

    void read(Line line) {
        nextLine = line.number() + 1;
    }

    void passOver() {
        passedOver++;
    }

    void blank() {
        blank++;
    }

    void answered(LineAnswer answer) {
        if (answer.isProblem()) {
            problems++;
            return;
        }
        answers++;
        Set<Kind> here = new HashSet<>();
        for (LineAnswer.Found found : answer.findings()) {
            Kind kind = new Kind(found.severity(), found.code());
            Seen seen = findings.computeIfAbsent(kind, key -> new Seen());
            seen.count++;
            if (here.add(kind)) {
                seen.lines++;
            }
        }
    }

    Summary summary(boolean complete, @Nullable IOException broken) {
        List<Summary.Count> counts = findings.entrySet().stream()
                .map(e -> new Summary.Count(
                        e.getKey().severity(), e.getKey().code(), e.getValue().count, e.getValue().lines))
                .sorted(WORST_FIRST)
                .toList();
        return new Summary(complete, answers, problems, blank, passedOver, nextLine, counts, broken);
    }
}
