package loomwright.circuit;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.annotation.JsonSubTypes;
import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.Deque;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/** The parts are a closed set, and the document names exactly those. */
class P01_PartKindsTest {
    @Test
    void everyKindOfPartHasATagInTheDocument() {
        Set<String> tagged = Arrays.stream(
                        Part.class.getAnnotation(JsonSubTypes.class).value())
                .map(t -> t.value().getSimpleName())
                .collect(Collectors.toCollection(TreeSet::new));
        assertThat(tagged).isEqualTo(leaves());
    }

    @Test
    void aConsumersFeedAndReturnAreAmongItsTerminals() {
        for (String name : new String[] {"sandpiper-bypass-relay", "sandpiper-electronic-module"}) {
            for (Consumer consumer : Plans.example(name).listParts(Consumer.class)) {
                assertThat(consumer.terminals()).contains(consumer.feedTerminal(), consumer.returnTerminal());
            }
        }
    }

    private static Set<String> leaves() {
        Set<String> names = new TreeSet<>();
        Deque<Class<?>> open = new ArrayDeque<>(Set.of(Part.class));
        while (!open.isEmpty()) {
            Class<?> type = open.pop();
            if (type.isSealed()) {
                open.addAll(Arrays.asList(type.getPermittedSubclasses()));
            } else {
                names.add(type.getSimpleName());
            }
        }
        return names;
    }
}
