package loomwright.backfeed;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import loomwright.circuit.Plan;
import loomwright.circuit.Plans;
import loomwright.operation.Mirror;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The same vehicle in 6 V with the other pole earthed, or in 12 V: the same findings. */
class B07_EarthPolarityTest {
    @ParameterizedTest
    @ValueSource(strings = {"sandpiper-unguarded-bypass", "sandpiper-bypass-relay"})
    void findingsAndRemediesAreTheSame(String name) {
        Plan plan = Plans.example(name);
        assertThat(findings(Mirror.of(plan))).isEqualTo(findings(plan));
    }

    private static List<String> findings(Plan plan) {
        return Searched.of(plan).report().unintendedFeeds().stream()
                .map(f -> f.load() + " " + f.severity() + " "
                        + f.occurrences().stream()
                                .map(o -> o.step() + " " + o.level().activity() + " "
                                        + o.level().pulledIn())
                                .toList()
                        + f.remedies().stream()
                                .map(r -> r.kind() + " " + r.at())
                                .toList())
                .toList();
    }
}
