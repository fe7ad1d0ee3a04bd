package loomwright.list;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import loomwright.message.Arg;
import loomwright.message.Argument;
import loomwright.message.Message;

/** Puts assumptions that say the same of several parts or wires into one sentence, for readers of many. */
public final class AssumptionGroups {
    /** The arguments that name what an assumption is about. */
    private static final Set<String> SUBJECTS = Set.of("part", "wire");

    private AssumptionGroups() {}

    /** In order of the first of each group; a group has the place of its first. */
    public static List<ListAssumption> of(List<ListAssumption> assumptions) {
        Map<List<Object>, List<ListAssumption>> groups = new LinkedHashMap<>();
        for (ListAssumption each : assumptions) {
            groups.computeIfAbsent(sameness(each), key -> new ArrayList<>()).add(each);
        }
        return groups.values().stream().map(AssumptionGroups::one).toList();
    }

    private static List<Object> sameness(ListAssumption each) {
        Map<String, Argument> rest = new LinkedHashMap<>(each.message().arguments());
        boolean hasSubject = rest.keySet().removeAll(SUBJECTS);
        return List.of(each.message().code(), rest, hasSubject ? "" : each.at());
    }

    private static ListAssumption one(List<ListAssumption> group) {
        ListAssumption first = group.get(0);
        if (group.size() == 1) {
            return first;
        }
        Set<String> about = new LinkedHashSet<>();
        group.forEach(each -> about.addAll(each.about()));
        Arg[] arguments = first.message().arguments().entrySet().stream()
                .map(each -> SUBJECTS.contains(each.getKey())
                        ? Arg.list(each.getKey(), subjects(group, each.getKey()))
                        : Arg.arg(each.getKey(), each.getValue()))
                .toArray(Arg[]::new);
        Message message = first.message().code().with(arguments);
        return new ListAssumption(message, first.instead(), List.copyOf(about), first.basis(), first.at());
    }

    private static Collection<Argument> subjects(List<ListAssumption> group, String argument) {
        Set<Argument> subjects = new LinkedHashSet<>();
        group.forEach(each -> subjects.add(each.message().arguments().get(argument)));
        return subjects;
    }
}
